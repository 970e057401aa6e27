package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.evidence.LimitsReader;
import passband.testing.Records;
import passband.testing.Repository;

/** The command line on Windows' kind of file system: drives, shares, backslashes, line ends. */
class WindowsTest {
  private static final List<String> FOLDERS = List.of("C:\\bench", "D:\\", "\\\\server\\share\\qa");

  private FileSystem windows;
  private Path work;
  private String out;
  private String err;

  @BeforeEach
  void open() throws IOException {
    windows =
        Jimfs.newFileSystem(
            Configuration.windows().toBuilder()
                .setRoots("C:\\", "D:\\", "\\\\server\\share\\")
                .build());
    work = Files.createDirectories(windows.getPath("C:\\bench"));
  }

  @AfterEach
  void close() throws IOException {
    windows.close();
  }

  private int run(String... words) {
    Call call = Call.of(work, words);
    out = call.out();
    err = call.err();
    assertFalse((out + err).contains("\tat "), "a stack trace:\n" + out + err);
    assertFalse(err.contains("fault of Passband"), err);
    return call.status();
  }

  private void edit(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertTrue(text.contains(from), file + " has no " + from);
    Files.writeString(file, text.replace(from, to));
  }

  private static TreeMap<String, String> tree(Path folder) throws IOException {
    TreeMap<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        if (!name.equals(".built")) {
          files.put(name, new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
        }
      }
    }
    return files;
  }

  /** What a Unix system builds from the same library. */
  private static TreeMap<String, String> elsewhere() throws IOException {
    try (FileSystem unix = Jimfs.newFileSystem(Configuration.unix())) {
      Path bench = Files.createDirectories(unix.getPath("/bench"));
      Repository.copy(Repository.LIBRARY, bench.resolve("procedures"));
      PrintStream nobody = new PrintStream(PrintStream.nullOutputStream());
      Invocation invocation = new Invocation(bench, nobody, nobody, 0, null, false);
      assertEquals(0, Main.run(invocation, List.of("build", "procedures")));
      return tree(bench.resolve("out"));
    }
  }

  /** Gives every source and table the line ends of Windows. */
  private static void carriageReturns(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        Files.writeString(file, Files.readString(file).replace("\n", "\r\n"));
      }
    }
  }

  /** Called from one drive or share, the library on another, with other line ends: the same. */
  @Test
  void theSameIsBuiltFromEveryDriveAndShare() throws IOException {
    TreeMap<String, String> built = elsewhere();
    for (String library : FOLDERS) {
      Path procedures = windows.getPath(library).resolve("procedures");
      Repository.copy(Repository.LIBRARY, procedures);
      carriageReturns(procedures);
      for (String from : FOLDERS) {
        work = Files.createDirectories(windows.getPath(from));
        assertEquals(0, run("check", procedures.toString()), out + err);
        assertEquals("", out + err);
        Path to = windows.getPath("C:\\out");
        assertEquals(0, run("build", procedures.toString(), "-o", to.toString()), out + err);
        assertEquals(built, tree(to));
        assertEquals(0, run("build", procedures.toString(), "-o", to.toString()), out + err);
        try (Stream<Path> all = Files.walk(to)) {
          for (Path one : all.sorted((a, b) -> b.compareTo(a)).toList()) {
            Files.delete(one);
          }
        }
      }
    }
  }

  /** Messages write paths in one way, which every editor's problem matcher reads. */
  @Test
  void messagesNameFilesWithOneKindOfStroke() throws IOException {
    for (String library : FOLDERS) {
      Path procedures = windows.getPath(library).resolve("procedures");
      Repository.copy(Repository.LIBRARY, procedures);
      edit(procedures.resolve("teasel\\teasel-output.pband"), "bipolar-load\n", "bipolar-lod\n");
      for (String from : FOLDERS) {
        work = Files.createDirectories(windows.getPath(from));
        assertEquals(1, run("check", procedures.toString()), err);
        String shown =
            from.equals(library)
                ? "procedures/teasel/"
                : procedures.toString().replace('\\', '/') + "/teasel/";
        assertTrue(out.startsWith(shown + "teasel-output.pband:"), shown + "\n" + out);
        assertEquals(1, run("check", procedures.toString(), "--as", "sarif"));
        assertFalse(out.contains("\\\\"), out);
      }
    }
  }

  /** A drive's letter is no revision, and a revision is no path. */
  @Test
  void aRevisionIsToldFromADrive() throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    Repository.copy(Repository.LIBRARY, windows.getPath("D:\\old"));
    assertEquals(0, run("diff", "D:\\old", "procedures"), out + err);
    assertEquals(0, run("diff", "D:/old", "C:\\bench\\procedures"), out + err);
    assertEquals(2, run("diff", "D:\\older", "procedures"));
    assertTrue(err.startsWith("passband: no such file or folder: D:\\older"), err);
    assertEquals(2, run("diff", "HEAD~1:procedures", "procedures"));
    assertEquals("passband: no .pband file at HEAD~1:procedures\n", err); // there is no repository
  }

  @ParameterizedTest
  @ValueSource(strings = {"a?b.pband", "a*.pband", "a|b", "a<b>", "\"a\"", "a:b:c", "x:y"})
  void whatNoPathCanBeIsSaidInALine(String path) throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    assertEquals(0, run("build", "procedures", "--without", "pdf,xlsx"));
    String limits = "out\\teasel-output\\limits.json";
    for (List<String> line :
        List.of(
            List.of("check", path),
            List.of("build", path),
            List.of("build", "procedures", "-o", path),
            List.of("build", "procedures", "--depfile", path),
            List.of("check", "procedures", "--root", path),
            List.of("format", path),
            List.of("steps", path),
            List.of("detect", path),
            List.of("diff", "procedures", path),
            List.of("diff", path, "procedures"),
            List.of("release", path, "--by", "A. Ward", "--on", "2026-11-02"),
            List.of("readings", path),
            List.of("judge", limits, path),
            List.of("record", limits, path),
            List.of("verify", path),
            List.of("history", limits, path, path),
            List.of("fleet", path),
            List.of("transcribe", path),
            List.of("new", path))) {
      assertEquals(2, run(line.toArray(String[]::new)), line + "\n" + out + err);
      assertTrue(err.startsWith("passband: "), line + "\n" + err);
      assertEquals(1, err.lines().count(), line + "\n" + err);
    }
  }

  /** In a source such a name is an error at its place, and what else is wrong is said too. */
  @Test
  void aUseOfANameThatNoFileCanHaveIsAnErrorAtItsPlace() throws IOException {
    Files.writeString(work.resolve("a.pband"), "use \"a?b.pband\"\nuse \"none.pband\"\n");
    assertEquals(1, run("check", "a.pband"), err);
    assertTrue(out.contains("a.pband:1:5: error:"), out);
    assertTrue(out.contains("a.pband:2:5: error:"), out);
    Files.writeString(work.resolve("b.pband"), "use \"x.pband\"\n");
    assertEquals(1, run("check", "."), err);
    assertTrue(out.contains("a.pband:1:5: error:"), out);
  }

  /** A visit from the library to the fleet, with paths as Windows' people write them. */
  @Test
  void aVisitFromBeginningToEnd() throws IOException, BadInput {
    assertEquals(0, run("new", "own"), err);
    assertEquals(0, run("build", "own", "-o", "own-out"), out + err);
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    carriageReturns(work.resolve("procedures"));
    String source = "procedures\\teasel\\teasel-output.pband";
    assertEquals(0, run("steps", source), err);
    assertEquals(0, run("detect", ".\\procedures"), err);
    assertEquals(
        0, run("release", "procedures\\", "--by", "A. Ward", "--on", "2026-11-02"), out + err);
    assertEquals(0, run("check", "--released", "procedures"), out + err);
    assertEquals(
        0, run("build", "procedures", "--root", ".\\procedures", "--depfile", "d.mk"), out + err);
    String rule = Files.readString(work.resolve("d.mk"));
    assertTrue(rule.contains("out/teasel-output/setups/"), rule);
    assertFalse(rule.replace("\\\n", "").contains("\\"), rule);
    String limits = "out\\teasel-output\\limits.json";
    assertEquals(0, run("readings", limits), err);
    String readings =
        Records.of(LimitsReader.read(Files.readString(work.resolve(limits))), false).csv();
    Files.writeString(work.resolve("r.csv"), readings.replace("\n", "\r\n"));
    assertEquals(0, run("judge", limits, "r.csv"), out + err);
    Files.writeString(
        work.resolve("r16.csv"),
        "\uFEFF" + readings.replace("\n", "\r\n"),
        StandardCharsets.UTF_16LE);
    assertEquals(0, run("judge", limits, "r16.csv"), out + err);
    assertEquals(0, run("record", limits, "r.csv"), out + err);
    Path records = Files.createDirectories(windows.getPath("D:\\records"));
    Files.writeString(records.resolve("1.json"), out.replace("\n", "\r\n"));
    assertEquals(0, run("verify", "D:\\records\\1.json"), out + err);
    assertEquals(0, run("fleet", "D:\\records"), out + err);
  }

  /** Formatting leaves LF behind, whatever was there; and means the same. */
  @Test
  void formatReadsCarriageReturns() throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    Map<String, String> laid = tree(work.resolve("procedures"));
    carriageReturns(work.resolve("procedures"));
    assertEquals(0, run("format", "procedures"), out + err);
    Map<String, String> again = tree(work.resolve("procedures"));
    laid.keySet().removeIf(name -> !name.endsWith(".pband"));
    again.keySet().removeIf(name -> !name.endsWith(".pband"));
    assertEquals(laid, again);
  }

  /** A spreadsheet's file in the code page of Windows is refused at its place, not misread. */
  @ParameterizedTest
  @ValueSource(strings = {"windows-1252", "windows-1250", "IBM850"})
  void aCodePageIsNoUtf8(String charset) throws IOException {
    Files.write(
        work.resolve("a.pband"),
        "# Prüfung\r\ndevice d \"D\" {\r\n}\r\n".getBytes(Charset.forName(charset)));
    assertEquals(1, run("check", "a.pband"), err);
    assertTrue(out.startsWith("a.pband:1:5: error: "), out);
  }
}
