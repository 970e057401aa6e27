package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.testing.Repository;

/** A build replaces and removes what a build wrote, and nothing else. */
class HarmlessBuildTest {
  private static final String TEASEL = "procedures/teasel/teasel-output.pband";

  @TempDir Path work;
  private String said = "";

  @BeforeEach
  void copyLibrary() {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  private int run(String... words) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    int status = Main.run(new Invocation(work, stream, stream, 0, "one", false), List.of(words));
    said = bytes.toString(StandardCharsets.UTF_8);
    return status;
  }

  private int build(String... more) {
    return run(
        Stream.concat(Stream.of("build", "procedures", "--without=pdf"), Stream.of(more))
            .toArray(String[]::new));
  }

  private void write(String path, String text) throws IOException {
    Files.createDirectories(work.resolve(path).getParent());
    Files.writeString(work.resolve(path), text);
  }

  private void changeCaution() throws IOException {
    for (Path source : Repository.files(work.resolve("procedures"), ".pband")) {
      String text = Files.readString(source);
      Files.writeString(source, text.replace("output burns", "output may burn"));
    }
  }

  /** Everything below the working folder: a file's text, a link's aim. */
  private Map<String, String> everything() throws IOException {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(work)) {
      for (Path path : walk.toList()) {
        String name = work.relativize(path).toString();
        if (Files.isSymbolicLink(path)) {
          all.put(name, "-> " + Files.readSymbolicLink(path));
        } else if (Files.isRegularFile(path) && !name.endsWith(".built")) {
          all.put(name, Files.readString(path, StandardCharsets.ISO_8859_1));
        }
      }
    }
    return all;
  }

  // ---- folders that hold sources ----

  @ParameterizedTest
  @ValueSource(strings = {"procedures", ".", "procedures/teasel", "procedures/../procedures"})
  void aFolderThatHoldsSourcesIsRefused(String folder) throws IOException {
    Map<String, String> before = everything();
    assertEquals(2, build("--out", folder), said);
    assertTrue(said.contains("holds sources; nothing was written"), said);
    assertTrue(said.contains("--out"), said);
    assertEquals(before, everything());
  }

  @ParameterizedTest
  @ValueSource(strings = {"passband.library", ".git/HEAD", ".git", "old.pband", "below/old.pband"})
  void soIsOneThatHoldsASignOfThem(String sign) throws IOException {
    write("elsewhere/" + sign, "mine");
    Map<String, String> before = everything();
    assertEquals(2, build("--out", "elsewhere"), said);
    assertTrue(said.startsWith("passband: " + work.resolve("elsewhere")), said);
    assertEquals(before, everything());
    assertFalse(Files.exists(work.resolve("elsewhere/.built")));
  }

  @Test
  void soIsOneThatHoldsATableThatIsRead() throws IOException {
    write("tables/deep/down/rows.csv", "mode,setting/W\n");
    String text = Files.readString(work.resolve(TEASEL));
    Path source = work.resolve(TEASEL);
    Files.writeString(
        source, text.replaceFirst("table \\{[^}]*}", "table \"../../tables/deep/down/rows.csv\""));
    run("check", "--root", ".", TEASEL);
    assertTrue(said.contains("rows.csv"), said);
    Files.createDirectories(work.resolve("tables"));
    Map<String, String> before = everything();
    // Whether the table is good or not, nothing is written beside it.
    assertTrue(run("build", "--root", ".", TEASEL, "--out", "tables") > 0, said);
    assertEquals(before, everything());
  }

  // ---- what others put beside the output ----

  @Test
  void whatLiesBesideTheOutputStays() throws IOException {
    assertEquals(0, build(), said);
    Map<String, String> mine = new TreeMap<>();
    for (String path :
        List.of(
            "out/notes.txt",
            "out/.old-backup/notes.txt",
            "out/.new-ideas/notes.txt",
            "out/teasel-output/readings.csv",
            "out/teasel-output/setups/photo.jpg",
            "out/teasel-output/2026/signed.pdf",
            "out/teasel-output/.hidden")) {
      write(path, "mine");
      mine.put(path, "mine");
    }
    Files.createSymbolicLink(work.resolve("out/teasel-output/link"), work.resolve("procedures"));
    mine.put("out/teasel-output/link", "-> " + work.resolve("procedures"));
    Map<String, String> before = everything();
    changeCaution();
    assertEquals(0, build(), said);
    Map<String, String> after = everything();
    mine.forEach((path, text) -> assertEquals(text, after.get(path), path));
    assertEquals(before.keySet(), after.keySet());
    assertFalse(
        before
            .get("out/teasel-output/checklist.html")
            .equals(after.get("out/teasel-output/checklist.html")));
    assertEquals(0, run("build", "procedures", "--without", "pdf,pictures"), said);
    assertEquals("mine", everything().get("out/teasel-output/setups/photo.jpg"));
    try (Stream<Path> setups = Files.list(work.resolve("out/teasel-output/setups"))) {
      assertEquals(1, setups.count(), "the drawings, which Passband wrote, are gone");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "out/teasel-output",
        "out/teasel-output/limits.csv",
        "out/teasel-output/setups",
        "out/teasel-output/checklist.html/x",
        "out/.built",
        "out/.new-build/x",
        "out/.old-build/x"
      })
  void aFileInTheWayIsAnErrorAndStays(String path) throws IOException {
    write(path, "mine");
    Map<String, String> before = everything();
    assertEquals(2, build(), said);
    assertTrue(said.contains("passband: " + work.resolve("out")), said);
    assertTrue(said.contains("--out"), said);
    assertEquals(1, said.lines().count(), said);
    assertEquals(before, everything());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"out/teasel-output", "out/teasel-output/setups", "out/teasel-output/limits.csv"})
  void aLinkIsNotFollowed(String link) throws IOException {
    assertEquals(0, build(), said);
    Path place = work.resolve(link);
    Files.createDirectories(work.resolve("precious"));
    Files.move(place, work.resolve("precious/moved"));
    Files.createSymbolicLink(place, work.resolve("precious/moved"));
    changeCaution();
    Map<String, String> before = everything();
    assertEquals(2, build(), said);
    assertTrue(said.startsWith("passband: " + place + ": "), said);
    assertEquals(before, everything());
    Files.delete(work.resolve(TEASEL));
    build("--prune");
    before.entrySet().removeIf(e -> !e.getKey().startsWith("precious"));
    Map<String, String> after = everything();
    before.forEach((path, text) -> assertEquals(text, after.get(path), path));
  }

  @Test
  void aRecordThatIsALinkIsNotWrittenTo() throws IOException {
    write("precious", "");
    Files.createDirectories(work.resolve("out"));
    Files.createSymbolicLink(work.resolve("out/.built"), work.resolve("precious"));
    assertEquals(2, build(), said);
    assertEquals("", Files.readString(work.resolve("precious")));
  }

  /** A copy, say from a repository, that came without the record is built into again. */
  @Test
  void aCopyWithoutTheRecordIsKnownByItsLimits() throws IOException {
    assertEquals(0, build(), said);
    Files.delete(work.resolve("out/.built"));
    write("out/teasel-output/readings.csv", "mine");
    changeCaution();
    assertEquals(0, build(), said);
    assertEquals("mine", everything().get("out/teasel-output/readings.csv"));
  }

  @Test
  void aDependencyFileReplacesNoOtherFile() throws IOException {
    String before = Files.readString(work.resolve(TEASEL));
    assertEquals(2, build("--depfile", TEASEL), said);
    assertEquals(before, Files.readString(work.resolve(TEASEL)));
    assertFalse(Files.exists(work.resolve("out")));
    assertEquals(0, build("--depfile", "deps.d"), said);
    assertEquals(0, build("--depfile", "deps.d"), said);
  }

  // ---- procedures that are gone ----

  @Test
  void theOutputOfAGoneProcedureIsNamedAndPruned() throws IOException {
    assertEquals(0, build(), said);
    Files.delete(work.resolve(TEASEL));
    assertEquals(0, build(), said);
    assertTrue(
        said.contains(
            "warning: "
                + work.resolve("out/teasel-output")
                + ": no source declares the procedure 'teasel-output' any more"),
        said);
    assertTrue(Files.exists(work.resolve("out/teasel-output/checklist.html")));
    assertEquals(0, build("--prune"), said);
    assertTrue(said.contains("removed " + work.resolve("out/teasel-output")), said);
    assertFalse(Files.exists(work.resolve("out/teasel-output"), LinkOption.NOFOLLOW_LINKS));
    assertEquals(0, build(), said);
    assertFalse(said.contains("teasel-output"), said);
  }

  @Test
  void pruningKeepsWhatOthersWroteAndWhatWasChanged() throws IOException {
    assertEquals(0, build(), said);
    write("out/teasel-output/readings.csv", "mine");
    write("out/teasel-output/limits.csv", "changed by hand");
    Files.delete(work.resolve(TEASEL));
    assertEquals(0, build("--prune"), said);
    assertTrue(said.contains("other or changed files stay"), said);
    try (Stream<Path> left = Files.list(work.resolve("out/teasel-output"))) {
      assertEquals(
          List.of("limits.csv", "readings.csv"),
          left.map(p -> p.getFileName().toString()).sorted().toList());
    }
  }

  /** A build of some of the sources says nothing of the others. */
  @Test
  void whatThisBuildDoesNotLookAtStays() throws IOException {
    assertEquals(0, build(), said);
    assertEquals(0, run("build", "procedures/yarrow", "--root", "procedures", "--prune"), said);
    assertFalse(said.contains("teasel"), said);
    assertTrue(Files.exists(work.resolve("out/teasel-output/checklist.html")));
  }

  @Test
  void aProcedureUnderAnotherNameLeavesTheOldOutput() throws IOException {
    assertEquals(0, build(), said);
    String text = Files.readString(work.resolve(TEASEL));
    Files.writeString(
        work.resolve(TEASEL), text.replace("procedure teasel-output", "procedure teasel-test"));
    assertEquals(0, build(), said);
    assertTrue(said.contains("the procedure 'teasel-output' any more"), said);
    assertTrue(Files.exists(work.resolve("out/teasel-test/checklist.html")));
    assertEquals(0, build("--prune"), said);
    assertFalse(Files.exists(work.resolve("out/teasel-output")));
  }

  // ---- stopped halfway ----

  /** A build stopped between two moves: the next one keeps the strange file and the new output. */
  @Test
  void whatAStoppedBuildLeftIsSortedOut() throws IOException {
    assertEquals(0, build(), said);
    Map<String, String> whole = everything();
    write("out/.old-build/teasel-output/readings.csv", "mine");
    Files.copy(
        work.resolve("out/teasel-output/limits.csv"),
        work.resolve("out/.old-build/teasel-output/limits.csv"));
    Files.createDirectories(work.resolve("out/.old-build"));
    Files.move(work.resolve("out/yarrow-service"), work.resolve("out/.old-build/yarrow-service"));
    assertEquals(0, build(), said);
    whole.put("out/teasel-output/readings.csv", "mine");
    assertEquals(whole, everything());
  }
}
