package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** {@code new} and {@code transcribe} on a file system in memory. */
class StartCommandsTest {
  private static final String TABLE =
      """
      Mode,Power (W),Load (ohm),Limits (mA)
      Cut,10,100,291 - 339
      Cut,20,100,412 - 497
      Cut,40,100,583 - 678
      Cut,60,100,714 - 830
      Cut,80,100,824 - 959
      """;

  private FileSystem fileSystem;
  private Path work;
  private String out = "";
  private String err = "";

  @BeforeEach
  void open() throws IOException {
    fileSystem = Jimfs.newFileSystem(Configuration.unix());
    work = Files.createDirectories(fileSystem.getPath("/bench"));
  }

  @AfterEach
  void close() throws IOException {
    fileSystem.close();
  }

  private int run(String... words) {
    Call call = Call.of(work, words);
    out = call.out();
    err = call.err();
    return call.status();
  }

  private TreeMap<String, String> files() throws IOException {
    TreeMap<String, String> files = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(work)) {
      for (Path path : walk.filter(Files::isRegularFile).toList()) {
        files.put(work.relativize(path).toString(), Files.readString(path));
      }
    }
    return files;
  }

  // ---- new ----

  @Test
  void aNewLibraryIsSilentlySoundAndInTheOneLayout() throws IOException {
    assertEquals(0, run("new", "lib"), err);
    assertEquals(
        "lib/generator.pband\nlib/bench.pband\nlib/output.pband\nlib/passband.library\n", out);
    assertEquals(0, run("check", "lib"));
    assertEquals("", out + err);
    assertEquals(0, run("format", "--check", "lib"), out);
    assertEquals(0, run("build", "lib", "--without", "pdf,pictures,xlsx"), err);
    assertTrue(Files.exists(work.resolve("out/output-check/checklist.html")));
  }

  @Test
  void aNewLibraryReplacesNothing() throws IOException {
    Files.writeString(work.resolve("bench.pband"), "# mine\n");
    TreeMap<String, String> before = files();
    assertEquals(2, run("new"));
    assertEquals("passband: there is already a file bench.pband; nothing was written\n", err);
    assertEquals(before, files());
    assertEquals(2, run("new", "bench.pband"));
    assertEquals(before, files());
  }

  // ---- transcribe ----

  @Test
  void aDraftIsWrittenOnceAndBuilds() throws IOException {
    Files.writeString(work.resolve("table.csv"), TABLE);
    assertEquals(0, run("transcribe", "table.csv", "-o", "drafts"), err);
    assertTrue(out.endsWith("written: drafts/table.pband\n"), out);
    assertTrue(out.contains("412 to 497 mA, the rule gives 412 to 479 mA"), out);
    assertEquals(0, run("format", "--check", "drafts"), out);
    assertEquals(0, run("build", "drafts", "--without", "pdf,pictures,xlsx"), err);
    String sheet = Files.readString(work.resolve("out/table-output/checklist.html"));
    assertTrue(sheet.contains("To settle before this draft is used"));
    assertTrue(sheet.contains("two digits are transposed"));
    TreeMap<String, String> before = files();
    assertEquals(2, run("transcribe", "table.csv", "-o", "drafts"));
    assertEquals(
        "passband: there is already a file drafts/table.pband; nothing was written\n", err);
    assertEquals(before, files());
  }

  /** The same table from spreadsheets of other countries and in other encodings. */
  @Test
  void everySpreadsheetsFormIsTheSameTable() throws IOException {
    Files.writeString(work.resolve("point.csv"), TABLE.replace(" - ", " to "));
    assertEquals(0, run("transcribe", "point.csv", "--as", "json"), err);
    String expected = out.replace("point.", "x.");
    String german =
        TABLE
            .replace(',', ';')
            .replace(
                "Mode;Power (W);Load (ohm);Limits (mA)", "Betriebsart;Leistung/W;Last/Ω;Strom/mA")
            .replace("\n", "\r\n");
    for (Charset charset : List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16)) {
      Files.write(work.resolve("x.csv"), german.getBytes(charset));
      Files.deleteIfExists(work.resolve("x.pband"));
      assertEquals(0, run("transcribe", "x.csv", "--decimal", "comma", "--as", "json"), err);
      assertEquals(expected, out);
    }
  }

  static Stream<Arguments> damaged() {
    String head = "power/W,load/ohm,limits/mA\n";
    return Stream.of(
        Arguments.of("", "this file is empty: its first line must name the columns"),
        Arguments.of(
            "Power (horse),load/ohm,limits/mA\n",
            "the heading 'Power (horse)': unknown unit 'horse' (known here: W, mW, kW, mA, A, V, kV,"
                + " mJ, J, ohm, kohm, %)"),
        Arguments.of("power/W,load/ohm,limits/ma\n", "unknown unit 'ma'"),
        Arguments.of("power/W,load/ohm,colour\n", "the heading 'colour' is none that is known"),
        Arguments.of("power/W,load/ohm\n", "there is no column of limits"),
        Arguments.of("load/ohm,limits/mA\n", "there is no column of settings"),
        Arguments.of("power/W,limits/mA\n", "there is no column of loads"),
        Arguments.of(head, "there is no row below the headings"),
        Arguments.of(
            "power/W,load,limits/mA\n10,100,291 - 339\n",
            "line 2, 'load': a number without a unit; put it into the heading or the cell"),
        Arguments.of(
            "power/W;load/ohm;limits/A\n10;100;0,082 - 0,1\n",
            "line 2, 'limits/A': '0,082' has a comma; say --decimal comma or write it without"),
        Arguments.of(
            head + "10,100,120 ± 15 %\n",
            "line 2, 'limits/mA': '120 ± 15 %' is a rule, not limits: write it under 'tolerance'"
                + " beside 'nominal'"),
        Arguments.of(
            head + "10,100,291\n", "line 2, 'limits/mA': '291' is one number, not two limits"),
        Arguments.of(
            head + "10,100,> 291\n", "line 2, 'limits/mA': '> 291' leaves out the limit itself"),
        Arguments.of(
            head + "10,100,291 - 339\n,100,1 - 2\n", "line 3, 'power/W': this row has no setting"),
        Arguments.of(head + "10,,291 - 339\n", "line 2, 'load/ohm': this row has no load"),
        Arguments.of(head + "10,0,291 - 339\n", "line 2, 'load/ohm': a load of zero"),
        Arguments.of(head + "10,100,\n", "line 2: this row has no limits"),
        Arguments.of(head + "10,100,291 - 339,5\n", "line 2 has 4 cells, the heading has 3"),
        Arguments.of(head + "ten,100,291 - 339\n", "line 2, 'power/W': 'ten' is no number"),
        Arguments.of(head + "10,100,2.9.1 - 339\n", "line 2, 'limits/mA': '2.9.1' is no number"),
        Arguments.of(head + "10,100,291 V - 339 V\n", "is in V, the heading in mA"),
        Arguments.of(head + "10,100,\"291 - 339\n", "this is not a CSV file"),
        Arguments.of("power/W,load/ohm,min/mA,max/mA,limits/mA\n", "in one column or in two"),
        Arguments.of("power/W,load/ohm,limits/mA,range/V\n", "transcribe one table at a time"));
  }

  @ParameterizedTest
  @MethodSource("damaged")
  void aDamagedTableIsSaidAtItsPlace(String table, String said) throws IOException {
    Files.writeString(work.resolve("table.csv"), table);
    assertEquals(2, run("transcribe", "table.csv"), out);
    assertTrue(err.startsWith("passband: table.csv: "), err);
    assertTrue(err.contains(said), err);
    assertEquals("", out);
    assertFalse(Files.exists(work.resolve("table.pband")));
  }

  @Test
  void bytesThatAreNoTextAreSaid() throws IOException {
    Files.write(work.resolve("table.csv"), "power/W,load/Ω\n".getBytes(Charset.forName("IBM437")));
    assertEquals(2, run("transcribe", "table.csv"));
    assertTrue(err.contains("this is not UTF-8 text"), err);
    assertEquals(2, run("transcribe", "nowhere.csv"));
    assertEquals("passband: there is no file nowhere.csv\n", err);
  }

  /** Texts of a table are never more than text in the draft. */
  @Test
  void hostileTextsStayTexts() throws IOException {
    Files.writeString(
        work.resolve("table.csv"), TABLE.replace("Cut,", "\"Cut {x} \"\"} \\ procedure\nq\","));
    assertEquals(0, run("transcribe", "table.csv"), err);
    assertEquals(0, run("check", "table.pband"), err);
  }

  /** Every cell cut out, doubled or turned over: a draft that compiles, or a message. */
  @Test
  void noDamageIsAFaultOfTheProgram() throws IOException {
    for (int at = 0; at < TABLE.length(); at += 3) {
      for (String with : List.of("", "\"", ",", "9", "\n")) {
        Files.writeString(
            work.resolve("table.csv"), TABLE.substring(0, at) + with + TABLE.substring(at + 1));
        Files.deleteIfExists(work.resolve("table.pband"));
        int status = run("transcribe", "table.csv");
        assertEquals(status == 0, Files.exists(work.resolve("table.pband")), err);
        assertFalse(err.contains("fault of Passband"), at + " " + with + " " + err);
      }
    }
  }
}
