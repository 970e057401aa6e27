package passband.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.build.CompilationUnit;
import passband.build.Findings;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.evidence.BadInput;
import passband.evidence.ItemNames;
import passband.evidence.LimitsReader;
import passband.plan.Meaning;
import passband.source.SourceFile;
import passband.source.Span;
import passband.testing.Records;
import passband.testing.Repository;

/**
 * The command line on a file system in memory: exit statuses, messages, and what is left in {@code
 * out}.
 */
class CommandTest {
  private FileSystem fileSystem;
  private Path work;
  private String out;
  private String err;

  private String program;
  private boolean terminal;

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
    Call call = Call.of(work, program, terminal, words);
    out = call.out();
    err = call.err();
    assertFalse((out + err).contains("\tat "), "a stack trace:\n" + out + err);
    return call.status();
  }

  private void write(String path, String text) throws IOException {
    Path file = work.resolve(path);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private void edit(String path, String from, String to) throws IOException {
    String text = Files.readString(work.resolve(path));
    assertTrue(text.contains(from), path + " has no " + from);
    write(path, text.replace(from, to));
  }

  private void copyLibrary() {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  private void copyDemo() {
    Repository.copy(Repository.PROCEDURES, work.resolve("procedures"));
  }

  private TreeMap<String, String> tree(String folder) throws IOException {
    TreeMap<String, String> files = new TreeMap<>();
    Path root = work.resolve(folder);
    if (!Files.exists(root)) {
      return files;
    }
    try (Stream<Path> walk = Files.walk(root)) {
      for (Path path : walk.filter(CommandTest::isOutput).toList()) {
        files.put(
            root.relativize(path).toString(), Files.readString(path, StandardCharsets.ISO_8859_1));
      }
    }
    return files;
  }

  /** What a build wrote, without its note of what it was made from. */
  private static boolean isOutput(Path path) {
    return Files.isRegularFile(path) && !path.endsWith(".built");
  }

  // ---- the demo library ----

  @Test
  void theDemoHasNoFaults() {
    copyDemo();
    assertEquals(0, run("check", "procedures"), out + err);
    assertEquals("", out);
    assertEquals("", err);
  }

  @Test
  void outIsWhatTheDemoBuildsTo() throws IOException {
    copyDemo();
    assertEquals(0, run("build", "procedures"), out + err);
    TreeMap<String, String> committed = new TreeMap<>();
    for (Path file : Repository.files(Repository.ROOT.resolve("out"), "")) {
      if (isOutput(file)) {
        committed.put(
            Repository.ROOT.resolve("out").relativize(file).toString(),
            Files.readString(file, StandardCharsets.ISO_8859_1));
      }
    }
    assertEquals(committed.keySet(), tree("out").keySet());
    committed.forEach(
        (name, text) ->
            assertEquals(
                text,
                treeQuietly().get(name),
                name + " is stale: run ./passband build procedures"));
  }

  private TreeMap<String, String> treeQuietly() {
    try {
      return tree("out");
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  // ---- the library of the tests ----

  @Test
  void sameBytesUnderAnotherLocaleTimeZoneAndOrder() throws IOException {
    copyLibrary();
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    assertEquals(0, run("build", "procedures", "-o", "one"));
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
      assertEquals(
          0,
          run(
              "build",
              "procedures/teasel/teasel-output.pband",
              "procedures/yarrow/yarrow-service.pband",
              "procedures/sundew/sundew-energy.pband",
              "--out=two"),
          out + err);
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
    assertEquals(tree("one"), tree("two"));
  }

  @Test
  void theProcedureRetargets() throws IOException {
    copyLibrary();
    assertEquals(
        0,
        run(
            "build",
            "procedures/teasel",
            "procedures/analyzers",
            "--root",
            "procedures",
            "--analyzer",
            "gravel"),
        out + err);
    String html = tree("out").get("teasel-output/checklist.html");
    assertTrue(html.contains("Gravel generator tester, ACTIVE IN"));
    assertFalse(html.contains("Shale"));
    assertTrue(
        tree("out")
            .get("teasel-output/limits.csv")
            .contains("slit-output/mono-1/slit/20W/400ohm/current"));
  }

  @Test
  void anAnalyzerThatCannotSaysWhy() throws IOException {
    copyLibrary();
    assertEquals(1, run("check", "procedures", "--analyzer", "gravel"));
    assertTrue(
        out.contains("the analyzer 'gravel' does not measure patient-leakage [not-measured]"), out);
    assertEquals(1, run("check", "procedures", "--analyzer", "gravle"));
    assertTrue(out.contains("did you mean 'gravel'?"), out);
  }

  // ---- bad input ----

  @Test
  void whatCannotBeRunIsStatusTwo() throws IOException {
    Files.createDirectories(work.resolve("empty"));
    write("only-device.pband", "device d \"D\" {\n}\n");
    assertEquals(2, run());
    assertEquals(2, run("chek"));
    assertTrue(err.contains("did you mean 'check'?"));
    assertEquals(2, run("check"));
    assertEquals(2, run("check", "nowhere.pband"));
    assertTrue(err.contains("no such file or folder: nowhere.pband"));
    assertEquals(2, run("check", "empty"));
    assertTrue(err.contains("no .pband file in empty"));
    assertEquals(2, run("check", "--analyser", "x", "empty"));
    assertTrue(err.contains("did you mean --analyzer?"));
    assertEquals(2, run("check", "empty", "--root"));
    assertEquals(2, run("build", "only-device.pband"));
    assertEquals(2, run("check", "empty", "--root", "elsewhere", "only-device.pband"));
    assertFalse(Files.exists(work.resolve("out")));
  }

  @Test
  void helpIsStatusZero() {
    assertEquals(0, run("help"));
    assertTrue(out.contains("passband build"));
    assertEquals(0, run("help", "build"));
    assertEquals(0, run("check", "--help"));
    assertTrue(out.contains("--analyzer"));
    assertEquals(0, run("--version"));
    assertTrue(out.startsWith("passband "));
  }

  @Test
  void bytesThatAreNoTextAreOneError() throws IOException {
    byte[] bytes = new byte[4096];
    new java.util.Random(3).nextBytes(bytes);
    Files.write(work.resolve("noise.pband"), bytes);
    assertEquals(1, run("check", "noise.pband"));
    assertEquals(1, out.lines().filter(l -> l.contains("error:")).count());
    assertTrue(out.contains("[not-utf-8]"));
  }

  @Test
  void aByteOrderMarkAndCarriageReturnsChangeNothing() throws IOException {
    copyLibrary();
    assertEquals(0, run("build", "procedures", "-o", "one"));
    for (Path file : Repository.files(Repository.LIBRARY, ".pband")) {
      write(
          "procedures/" + Repository.LIBRARY.relativize(file),
          "\uFEFF" + Repository.text(file).replace("\n", "\r\n"));
    }
    assertEquals(0, run("build", "procedures", "-o", "two"), out);
    assertEquals(tree("one"), tree("two"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"device ", "#", "\"", "x", "device d \"D\" {\n  outlet ", "1 ", "{", "accept "})
  void aLineOfTenMegabytesIsTaken(String start) throws IOException {
    write("long.pband", start + "a".repeat(10_000_000));
    int status = run("check", "long.pband");
    assertTrue(status == 0 || status == 1);
    assertTrue(out.length() < 4000, "the message repeats the line");
  }

  @Test
  void aFileThatIsTooLargeIsRefused() throws IOException {
    write("large.pband", "#".repeat((16 << 20) + 1));
    assertEquals(2, run("check", "large.pband"));
    assertTrue(err.contains("larger than 16 MiB"), err);
  }

  @Test
  void usesInACircleAndOutOfTheLibrary() throws IOException {
    write("lib/a.pband", "use \"b.pband\"\n");
    write("lib/b.pband", "use \"sub/../a.pband\"\n");
    write(
        "lib/c.pband",
        "use \"../secret.pband\"\nuse \"/etc/passwd\"\nuse \"none.pband\"\nuse \"\"\nuse \"..\\\\x\"\n");
    write("secret.pband", "device d \"D\" {\n}\n");
    write("lib/passband.library", "");
    assertEquals(1, run("check", "lib/a.pband"));
    assertTrue(
        out.startsWith(
            "lib/b.pband:1:5: error: circular use: lib/a.pband → lib/b.pband → lib/a.pband [use-cycle]"),
        out);
    assertEquals(1, run("check", "lib"));
    assertEquals(4, out.lines().filter(l -> l.contains("[use-outside-root]")).count(), out);
    assertEquals(1, out.lines().filter(l -> l.contains("[file-not-found]")).count(), out);
  }

  @Test
  void aLinkOutOfTheLibraryIsNotFollowed() throws IOException {
    write("secret/x.pband", "device d \"D\" {\n}\n");
    write("lib/a.pband", "use \"link.pband\"\n");
    Files.createSymbolicLink(work.resolve("lib/link.pband"), work.resolve("secret/x.pband"));
    assertEquals(1, run("check", "lib/a.pband", "--root", "lib"));
    assertTrue(out.contains("[use-outside-root]"), out);
  }

  @Test
  void nothingIsWrittenWhereThereIsAnError() throws IOException {
    copyLibrary();
    assertEquals(0, run("build", "procedures"));
    TreeMap<String, String> before = tree("out");
    String path = "procedures/yarrow/yarrow.pband";
    write(path, Files.readString(work.resolve(path)).replace("250 ohm", "250 Ohms"));
    assertEquals(1, run("build", "procedures"));
    assertTrue(err.contains("nothing was written"));
    assertEquals(before, tree("out"));
  }

  @Test
  void nothingIsLeftBesideTheResults() throws IOException {
    copyLibrary();
    assertEquals(0, run("build", "procedures"));
    assertEquals(0, run("build", "procedures"));
    List<String> names = new ArrayList<>();
    try (Stream<Path> list = Files.list(work.resolve("out"))) {
      list.forEach(p -> names.add(p.getFileName().toString()));
    }
    names.sort(null);
    assertArrayEquals(
        new String[] {".built", "index.html", "sundew-energy", "teasel-output", "yarrow-service"},
        names.toArray());
  }

  @Test
  void anOutThatIsAFileIsAnErrorAndStays() throws IOException {
    copyLibrary();
    write("taken", "mine");
    assertEquals(2, run("build", "procedures", "-o", "taken"));
    assertEquals("mine", Files.readString(work.resolve("taken")));
  }

  @Test
  void twoProceduresOfOneNameAreAnError() throws IOException {
    copyLibrary();
    write(
        "other/teasel.pband",
        Repository.text(Repository.LIBRARY.resolve("teasel/teasel-output.pband"))
            .replace("../", "")
            .replace("analyzers/", "")
            .replace("teasel.pband", "teasel.p"));
    Files.copy(work.resolve("procedures/teasel/teasel.pband"), work.resolve("other/teasel.p"));
    Files.copy(work.resolve("procedures/analyzers/shale.pband"), work.resolve("other/shale.pband"));
    Files.copy(work.resolve("procedures/leads.pband"), work.resolve("other/leads.pband"));
    assertEquals(1, run("build", "procedures", "other"));
    assertTrue(out.contains("procedure 'teasel-output' is declared twice"), out);
  }

  // ---- format ----

  @Test
  void formatLaysOutInPlaceOrOnlyChecks() throws IOException {
    copyLibrary();
    assertEquals(0, run("format", "procedures", "--check"), out + err);
    String path = "procedures/leads.pband";
    String laid = Files.readString(work.resolve(path));
    write(path, laid.replace("  lead", "\tlead").replace("\n", "\r\n"));
    assertEquals(1, run("format", "procedures", "--check"));
    assertEquals(path + "\n", out);
    assertEquals(0, run("format", "procedures"), out + err);
    assertEquals(path + "\n", out);
    assertEquals(laid, Files.readString(work.resolve(path)));
    assertEquals(0, run("format", path));
    assertEquals("", out);
  }

  @Test
  void formatLeavesAFaultyFileAlone() throws IOException {
    write("bad.pband", "device  gen {\n  pole pole pole\n}\n");
    assertEquals(1, run("format", "bad.pband"));
    assertTrue(out.contains("bad.pband:2"), out);
    assertEquals(
        "device  gen {\n  pole pole pole\n}\n", Files.readString(work.resolve("bad.pband")));
    assertEquals(2, run("format", "none.pband"));
  }

  // ---- judge and history ----

  private static final String POINT = "bipolar-output/bipolar/thin/5W/125ohm/current";

  private void readings(String path, String value) throws IOException {
    write(
        path,
        "point,reading,unit,kind\n"
            + POINT
            + ","
            + value
            + ",mA,reading\nsheet/generator-serial,S 1,,record\n");
  }

  /** A complete good record, but for these rows. */
  private String complete(String limits, Map<String, String> other) throws IOException {
    try {
      Records records =
          Records.of(LimitsReader.read(Files.readString(work.resolve(limits))), false);
      other.forEach(records::with);
      return records.csv();
    } catch (BadInput e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void judgeGivesVerdicts() throws IOException {
    copyLibrary();
    assertEquals(0, run("build", "procedures"), out + err);
    String limits = "out/teasel-output/limits.json";
    readings("r.csv", "200.0");
    assertEquals(1, run("judge", limits, "r.csv"), err);
    String passes = "PASS  1. Bipolar output: Current, thin, 5 W, 125 Ω: 200.0 mA, accepted: ";
    assertTrue(out.contains(passes + "179.0 to 219.0 mA"), out);
    assertTrue(out.startsWith("teasel-output, revision B"), out);
    assertEquals(2, run("judge", "out/teasel-output/limits.csv", "r.csv"));
    assertEquals(1, run("judge", limits, "r.csv", "--as", "json"));
    assertTrue(out.contains("\"overall\": \"incomplete\""), out);
    assertEquals(1, run("judge", limits, "r.csv", "--as", "html", "--date", "2026-11-25"));
    assertTrue(out.startsWith("<!DOCTYPE html>"));
    assertTrue(out.contains("<th scope=\"row\">Analyzer</th><td>shale</td>"), out);
    write("all.csv", complete(limits, Map.of()));
    assertEquals(0, run("judge", limits, "all.csv"), out);
    assertEquals(2, run("judge", limits, "none.csv"));
    assertEquals(2, run("judge", limits, "r.csv", "--date", "today"));
    assertEquals(2, run("judge", "r.csv", "r.csv"));
    assertEquals(2, run("judge", limits));
  }

  @Test
  void historyWarnsOfACrossing() throws Exception {
    copyLibrary();
    assertEquals(0, run("build", "procedures"), out + err);
    String limits = "out/teasel-output/limits.json";
    readings("2024-05-01.csv", "200.0");
    readings("2025-05-01.csv", "206.0");
    readings("2026-05-01.csv", "212.0");
    assertEquals(
        0, run("history", limits, "2024-05-01.csv", "2026-05-01.csv", "2025-05-01.csv"), err);
    String name = ItemNames.of(LimitsReader.read(Files.readString(work.resolve(limits)))).of(POINT);
    assertTrue(out.contains(name + ": 200.0 206.0 212.0 mA, +6"), out);
    assertEquals(
        1,
        run(
            "history",
            limits,
            "2024-05-01.csv",
            "2026-05-01.csv",
            "2025-05-01.csv",
            "--interval",
            "800"));
    assertTrue(out.contains("warning: " + name), out);
    assertEquals(2, run("history", limits, "2024-05-01.csv"));
    readings("undated.csv", "200.0");
    assertEquals(2, run("history", limits, "2024-05-01.csv", "undated.csv"));
  }

  /** Everything in the output folder, as a rule has it: the sheets first. */
  private String written() throws IOException {
    List<String> files = new ArrayList<>(tree("out").keySet());
    files.sort(Comparator.comparing(f -> !f.endsWith("checklist.html")));
    return String.join(" \\\n", files.stream().map(f -> "out/" + f).toList());
  }

  @Test
  void aDepfileNamesEveryFileThatWasReadAndWritten() throws IOException {
    copyLibrary();
    assertEquals(
        0, run("build", "procedures/yarrow", "--root", "procedures", "--depfile", "d.mk"), err);
    String rule = Files.readString(work.resolve("d.mk"));
    assertEquals(
        written()
            + ": \\\n"
            + "  procedures/analyzers/shale.pband \\\n"
            + "  procedures/leads.pband \\\n"
            + "  procedures/rules.pband \\\n"
            + "  procedures/yarrow/carve-limits.csv \\\n"
            + "  procedures/yarrow/yarrow-service.pband \\\n"
            + "  procedures/yarrow/yarrow.pband\n",
        rule);
  }

  @Test
  void whatThePdfCannotPrintIsSaid() throws IOException {
    copyLibrary();
    assertEquals(0, run("build", "procedures"), out + err);
    assertEquals("", err);
    String path = "procedures/teasel/teasel-output.pband";
    write(
        path,
        Files.readString(work.resolve(path))
            .replace("Flare reaches", "\u8b66\u544a \u2264 \u03a9: flare reaches"));
    assertEquals(0, run("build", "procedures"), out + err);
    assertTrue(
        Pattern.compile(
                "teasel-output\\.pband:\\d+:\\d+: warning: the PDF's type does not have \u544a \u8b66: an"
                    + " empty box")
            .matcher(out + err)
            .find(),
        out + err);
  }

  // ---- what has not changed ----

  /** When each written file was last changed, by path. */
  private TreeMap<String, String> times() throws IOException {
    TreeMap<String, String> times = new TreeMap<>();
    for (String file : tree("out").keySet()) {
      times.put(file, Files.getLastModifiedTime(work.resolve("out/" + file)).toString());
    }
    return times;
  }

  /** The procedures of which some file is newer than it was. */
  private List<String> rewritten(TreeMap<String, String> before) throws IOException {
    List<String> procedures = new ArrayList<>();
    times()
        .forEach(
            (file, time) -> {
              String procedure = file.substring(0, Math.max(0, file.indexOf('/')));
              if (!procedure.isEmpty()
                  && !time.equals(before.get(file))
                  && !procedures.contains(procedure)) {
                procedures.add(procedure);
              }
            });
    return procedures;
  }

  @Test
  void whatHasNotChangedIsLeftAsItStands() throws IOException {
    copyLibrary();
    program = "one";
    assertEquals(0, run("build", "procedures"), err);
    String said = out;
    TreeMap<String, String> before = times();
    assertEquals(0, run("build", "procedures"), err);
    assertEquals(said, out);
    assertEquals(List.of(), rewritten(before));

    String yarrow = "yarrow-service";
    String teasel = "teasel-output";
    edit("procedures/yarrow/carve-limits.csv", "\n", "\r\n");
    assertEquals(0, run("build", "procedures"), err);
    assertEquals(List.of(yarrow), rewritten(before));

    before = times();
    edit("procedures/analyzers/shale.pband", "Shale RF", "Shale A RF");
    assertEquals(0, run("build", "procedures"), err);
    assertTrue(rewritten(before).contains(teasel));

    before = times();
    write("out/" + teasel + "/limits.csv", "someone's notes");
    assertEquals(0, run("build", "procedures"), err);
    assertEquals(List.of(teasel), rewritten(before));
    assertTrue(tree("out").get(teasel + "/limits.csv").startsWith("procedure,"));

    before = times();
    assertEquals(0, run("build", "procedures", "--paper", "letter"), err);
    assertEquals(List.of("sundew-energy", teasel, yarrow), rewritten(before));

    before = times();
    program = "another";
    assertEquals(0, run("build", "procedures", "--paper", "letter"), err);
    assertEquals(List.of("sundew-energy", teasel, yarrow), rewritten(before));
  }

  @Test
  void aDamagedNoteOfTheLastBuildIsNoTrouble() throws IOException {
    copyLibrary();
    program = "one";
    assertEquals(0, run("build", "procedures"), err);
    String note = Files.readString(work.resolve("out/.built"));
    TreeMap<String, String> whole = tree("out");
    for (String bad :
        List.of(
            "",
            note.substring(0, note.length() / 2),
            note.replace("\t", "\n"),
            note.replace("group\t", "name\t"),
            note.replaceAll("\\d", "x"),
            note.replaceAll("(?m)^group.*\n", ""))) {
      write("out/.built", bad);
      assertEquals(0, run("build", "procedures"), err);
      assertEquals(whole, tree("out"));
    }
  }

  /** A record of releases that turns up is a file that was asked for in vain before. */
  @Test
  void aRecordThatTurnsUpIsLookedAt() throws IOException {
    copyLibrary();
    program = "one";
    assertEquals(0, run("build", "procedures"), err);
    write(
        "procedures/teasel/released.txt",
        "teasel-output \"B\" 2026-10-02 " + "0".repeat(64) + " meaning " + Meaning.VERSION + "\n");
    assertEquals(1, run("build", "procedures"));
    assertTrue(out.contains("[revision-reused]"), out);
  }

  @Test
  void aWarningIsSaidEachTime() throws IOException {
    copyLibrary();
    program = "one";
    edit("procedures/teasel/teasel-output.pband", "179 to 219", "180 to 217");
    assertEquals(0, run("build", "procedures"), err);
    String said = out;
    assertTrue(said.contains("[stated-tighter]"), said);
    assertEquals(0, run("build", "procedures"), err);
    assertEquals(said, out);
  }

  @Test
  void twoProceduresOfOneNameAreFoundThoughNothingChanged() throws IOException {
    copyLibrary();
    program = "one";
    assertEquals(0, run("build", "procedures"), err);
    Path first = work.resolve("procedures/teasel/teasel-output.pband");
    write("procedures/teasel/twin.pband", Files.readString(first));
    assertEquals(1, run("build", "procedures"));
    assertTrue(out.contains("procedure 'teasel-output' is declared twice"), out);
    assertTrue(err.contains("nothing was written"), err);
  }

  @Test
  void partsCanBeLeftOut() throws IOException {
    copyLibrary();
    assertEquals(0, run("build", "procedures", "--without", "pdf,pictures,xlsx"), err);
    assertEquals(
        List.of(
            "teasel-output/checklist.html",
            "teasel-output/limits.csv",
            "teasel-output/limits.csv-metadata.json",
            "teasel-output/limits.json"),
        tree("out").keySet().stream().filter(f -> f.startsWith("teasel")).toList());
    assertEquals(2, run("build", "procedures", "--without", "html"));
    assertEquals("passband: --without must be a list of pdf, pictures and xlsx, not 'html'\n", err);
  }

  /** A shared file's allow is unused only where no group has a use for it, and all is well. */
  @Test
  void anAllowOfASharedFileIsUsedByOneOfTwo() {
    SourceFile shared = new SourceFile("shared.pband", "allow x because \"y\"");
    Span allow = new Span(shared, 0, 7);
    Diagnostics unused = new Diagnostics();
    unused.say(Code.ALLOW_UNUSED, allow, "this suppresses nothing");
    CompilationUnit.Found one =
        new CompilationUnit.Found(List.of(), unused, Set.of(), Set.of(), false, Set.of());
    CompilationUnit.Found other =
        new CompilationUnit.Found(
            List.of(), new Diagnostics(), Set.of(allow), Set.of(), false, Set.of());
    Findings without = new Findings();
    without.take(one);
    assertEquals(1, without.diagnostics().list().size());
    Findings with = new Findings();
    with.take(one);
    with.take(other);
    assertEquals(0, with.diagnostics().list().size());
    Diagnostics fault = new Diagnostics();
    fault.say(Code.SYNTAX, allow, "a fault");
    Findings faulty = new Findings();
    faulty.take(one);
    faulty.take(new CompilationUnit.Found(List.of(), fault, Set.of(), Set.of(), false, Set.of()));
    assertEquals(
        List.of(Code.SYNTAX), faulty.diagnostics().list().stream().map(d -> d.code()).toList());
  }

  // ---- no room ----

  @Test
  void aFullDiskLosesNothing() throws IOException {
    fileSystem.close();
    fileSystem =
        Jimfs.newFileSystem(
            Configuration.unix().toBuilder().setMaxSize(8_000_000).setBlockSize(512).build());
    work = Files.createDirectories(fileSystem.getPath("/bench"));
    copyLibrary();
    assertEquals(0, run("build", "procedures"), err);
    TreeMap<String, String> before = tree("out");
    edit("procedures/analyzers/shale.pband", "Shale RF", "Shale A RF");
    long room = Files.getFileStore(work).getUsableSpace();
    write("ballast", "x".repeat((int) room - 100_000));
    assertEquals(2, run("build", "procedures"));
    assertTrue(err.contains("space"), err);
    assertEquals(before, tree("out"));
    Files.delete(work.resolve("ballast"));
    assertEquals(0, run("build", "procedures"), err);
    assertEquals(before.keySet(), tree("out").keySet());
  }

  // ---- shells and terminals ----

  @Test
  void coloursAreForTerminalsAndSayNothingMore() throws IOException {
    copyLibrary();
    edit("procedures/teasel/teasel-output.pband", "setup  bipolar-load\n", "setup  bipolar-lod\n");
    assertEquals(1, run("check", "procedures"));
    String plain = out;
    assertFalse(plain.contains("\u001b"));
    terminal = true;
    assertEquals(1, run("check", "procedures"));
    assertTrue(out.contains("\u001b[1;31merror\u001b[0m"), out);
    assertEquals(plain, out.replaceAll("\u001b\\[[0-9;]*m", ""));
    assertEquals(1, run("check", "procedures", "--as", "json"));
    assertFalse(out.contains("\u001b"));
  }

  @Test
  void editorFilesArePrinted() {
    for (String name : List.of("textmate", "language-configuration", "neovim", "emacs")) {
      assertEquals(0, run("editor", name));
      assertTrue(out.length() > 100, name);
    }
    assertEquals(2, run("editor"));
    assertEquals(2, run("server", "x"));
    assertEquals("passband: 'server' takes no arguments: 'x' (see 'passband help server')\n", err);
  }
}
