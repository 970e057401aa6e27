package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The record of releases as a chain, in real repositories. */
class ReleaseRecordTest {
  private static final String TEASEL = "procedures/teasel/teasel-output.pband";
  private static final String RECORD = "procedures/teasel/released.txt";

  @TempDir Path work;
  private GitFolder git;

  @BeforeEach
  void copyLibrary() throws IOException {
    git = new GitFolder(work);
    git.copyLibraryUnreleased();
  }

  private int run(String... words) {
    return git.run(words);
  }

  private String out() {
    return git.out();
  }

  private void released(String path, String by, String on) {
    assertEquals(0, run("release", path, "--by", by, "--on", on), git.said());
  }

  /** A new revision that replaces the last one as `check` says that it must. */
  private void revise(String path, String from, String to) throws IOException {
    String old = "revision \"" + from + "\" on 2026-10-02";
    String text = Files.readString(work.resolve(path));
    int end = text.indexOf('\n', text.indexOf(old));
    git.write(
        path,
        text.substring(0, text.indexOf(old))
            + "revision \""
            + to
            + "\" on 2026-10-02"
            + text.substring(end));
    run("check", path);
    String hint = "hint: write after the date: ";
    int at = out().indexOf(hint);
    assertTrue(at >= 0, git.said());
    String replaces = out().substring(at + hint.length(), out().indexOf('\n', at));
    git.edit(
        path,
        "revision \"" + to + "\" on 2026-10-02",
        "revision \"" + to + "\" on 2026-10-02 " + replaces);
    assertEquals(0, run("check", path), git.said());
    assertEquals("", out());
  }

  /** Everything of the library approved, and three revisions of one procedure. */
  private void threeRevisions() throws IOException {
    released("procedures", "A. Ward", "2026-11-02");
    git.edit(TEASEL, "410 to 500", "420 to 490");
    revise(TEASEL, "B", "C");
    released(TEASEL, "B. Lind", "2026-11-03");
    git.edit(TEASEL, "420 to 490", "421 to 489");
    revise(TEASEL, "C", "D");
    released(TEASEL, "A. Ward", "2026-11-04");
    assertEquals(0, run("check", "--released", "procedures"), git.said());
  }

  private List<String> lines() throws IOException {
    return new ArrayList<>(Files.readAllLines(work.resolve(RECORD)));
  }

  private void assertRefused(String code) {
    assertEquals(1, run("check", "--released", "procedures"), git.said());
    assertTrue(out().contains("[" + code + "]"), git.said());
  }

  @Test
  void itSaysWhoApprovedItWhenAndAfterWhat() throws IOException {
    threeRevisions();
    List<String> lines = lines();
    assertEquals(4, lines.size());
    assertTrue(lines.get(1).endsWith(" approved \"A. Ward\" 2026-11-02 first"), lines.get(1));
    assertTrue(lines.get(2).contains(" approved \"B. Lind\" 2026-11-03 after "), lines.get(2));
  }

  /** Whatever is done to a line that another follows: taken out, changed, moved. */
  @Test
  void noLineBeforeTheLastCanBeTouched() throws IOException {
    threeRevisions();
    List<String> whole = lines();
    for (int i = 1; i < whole.size() - 1; i++) {
      List<String> without = new ArrayList<>(whole);
      without.remove(i);
      git.write(RECORD, String.join("\n", without) + "\n");
      assertRefused("record-gap");
      assertEquals(1, run("build", TEASEL), git.said());
      List<String> swapped = new ArrayList<>(whole);
      Collections.swap(swapped, i, i + 1);
      git.write(RECORD, String.join("\n", swapped) + "\n");
      assertRefused("record-gap");
      for (int at : positions(whole.get(i))) {
        List<String> changed = new ArrayList<>(whole);
        String line = whole.get(i);
        char other = line.charAt(at) == '1' ? '2' : '1';
        changed.set(i, line.substring(0, at) + other + line.substring(at + 1));
        git.write(RECORD, String.join("\n", changed) + "\n");
        assertEquals(1, run("check", "--released", "procedures"), changed.get(i));
      }
    }
  }

  /** Some places of a line: within its name, label, dates, digest, approver and chain. */
  private static int[] positions(String line) {
    return IntStream.iterate(1, i -> i < line.length(), i -> i + 23).toArray();
  }

  /** Without its last line the revision is not released, without any nothing is. */
  @Test
  void aLineThatIsMissingAtTheEndIsMissed() throws IOException {
    threeRevisions();
    List<String> whole = lines();
    for (int keep = whole.size() - 1; keep >= 0; keep--) {
      git.write(RECORD, String.join("\n", whole.subList(0, keep)) + "\n");
      assertRefused("not-released");
    }
    Files.delete(work.resolve(RECORD));
    assertRefused("not-released");
    assertTrue(out().contains("there is no released.txt beside its source"), out());
  }

  /** What was released once stays in the record, whatever goes with it. */
  @Test
  void noEntryOfAnEarlierCommitCanGo() throws Exception {
    git.init();
    threeRevisions();
    git.commit("three revisions");
    String[] check = {"check", "--released", "--since", "HEAD", "procedures"};
    assertEquals(0, run(check), git.said());
    git.edit(TEASEL, "421 to 489", "422 to 488");
    revise(TEASEL, "D", "E");
    released(TEASEL, "A. Ward", "2026-11-05");
    assertEquals(0, run(check), git.said());
    git.git("checkout", "-q", "HEAD", "--", TEASEL);
    List<String> whole = lines();
    for (int keep = 3; keep > 0; keep--) {
      git.write(RECORD, String.join("\n", whole.subList(0, keep)) + "\n");
      assertEquals(1, run(check), git.said());
      for (int gone = keep + 1; gone <= 4; gone++) {
        assertTrue(out().contains("HEAD:" + RECORD + ":" + gone + ":1: error: "), out());
      }
    }
    Files.delete(work.resolve(TEASEL));
    Files.delete(work.resolve(RECORD));
    assertEquals(0, run("check", "--released", "procedures"), git.said());
    assertEquals(1, run(check), git.said());
    assertTrue(out().contains("[record-gap]"), out());
    assertEquals(2, run("check", "--released", "--since", "none", "procedures"));
    assertEquals(2, run("check", "--since", "HEAD", "procedures"));
  }

  /** Line ends, comments and empty lines are nobody's approval. */
  @Test
  void whatIsNoEntryMayChange() throws IOException {
    threeRevisions();
    String text = Files.readString(work.resolve(RECORD));
    git.write(RECORD, "# a remark\r\n\r\n" + text.replace("\n", "  \r\n"));
    assertEquals(0, run("check", "--released", "procedures"), git.said());
  }

  @Test
  void aRevisionOverAGapIsNotReleased() throws IOException {
    released("procedures", "A. Ward", "2026-11-02");
    String record = Files.readString(work.resolve(RECORD));
    git.edit(TEASEL, "revision \"B\" on 2026-10-02", "revision \"C\" on 2026-10-02");
    assertEquals(0, run("check", TEASEL), git.said());
    assertTrue(out().contains("[revision-gap]"), out());
    assertEquals(1, run("release", TEASEL, "--by", "A. Ward", "--on", "2026-11-03"));
    assertTrue(git.err().contains("it does not replace revision \"B\""), git.err());
    assertEquals(record, Files.readString(work.resolve(RECORD)));
    String unknown = " replaces \"A\" digest \"" + "0".repeat(64) + "\"";
    git.edit(TEASEL, "\"C\" on 2026-10-02", "\"C\" on 2026-10-02" + unknown);
    assertEquals(1, run("release", TEASEL, "--by", "A. Ward", "--on", "2026-11-03"));
    assertTrue(git.err().contains("\"A\", which is not in the record"), git.err());
    // signed by hand all the same
    run("check", "--as", "json", TEASEL);
    assertRefused("not-released");
  }

  @Test
  void anOldRevisionIsNotTheReleasedOne() throws IOException {
    released("procedures", "A. Ward", "2026-11-02");
    String old = Files.readString(work.resolve(TEASEL));
    git.edit(TEASEL, "410 to 500", "420 to 490");
    revise(TEASEL, "B", "C");
    released(TEASEL, "A. Ward", "2026-11-03");
    git.write(TEASEL, old);
    assertRefused("not-released");
    assertTrue(out().contains("revision \"C\" was released after it"), out());
  }

  @Test
  void aSourceAndItsRecordBelongTogether() throws IOException {
    threeRevisions();
    Files.move(work.resolve(TEASEL), work.resolve("procedures/yarrow/teasel-output.pband"));
    git.edit(
        "procedures/yarrow/teasel-output.pband",
        "use \"teasel.pband\"",
        "use \"../teasel/teasel.pband\"");
    assertRefused("release-missing");
    assertTrue(out().contains("[not-released]"), out());
    assertTrue(out().contains("note: it is declared here"), out());
    Files.delete(work.resolve("procedures/yarrow/teasel-output.pband"));
    assertRefused("release-missing");
    assertTrue(out().contains("release --withdraw teasel-output procedures/teasel"), out());
    String[] withdraw = {
      "release",
      "--withdraw",
      "teasel-output",
      "procedures/teasel",
      "--by",
      "A. Ward",
      "--on",
      "2026-11-05"
    };
    assertEquals(0, run(withdraw), git.said());
    assertEquals(0, run("check", "--released", "procedures"), git.said());
    assertEquals(2, run(withdraw), git.said());
    assertTrue(git.err().contains("it cannot be withdrawn"), git.err());
  }

  @Test
  void aRecordOfTheOlderFormSaysWhatToDo() throws IOException {
    released("procedures", "A. Ward", "2026-11-02");
    String chained = Files.readString(work.resolve(RECORD));
    String older = "teasel-output \"A\" 2025-01-01 " + "0".repeat(64) + " meaning 4\n";
    git.write(RECORD, older + chained.replaceAll("(?m)^#.*\n| approved .*$", ""));
    assertEquals(0, run("check", TEASEL), git.said());
    assertTrue(out().contains("[release-unapproved]"), out());
    assertTrue(out().contains("passband release"), out());
    assertRefused("not-released");
    // the older form took a revision without 'replaces'; that gap cannot be signed again
    assertEquals(1, run("release", TEASEL, "--by", "A. Ward", "--on", "2026-11-03"), git.said());
    git.write(RECORD, chained.replaceAll("(?m)^#.*\n| approved .*$", ""));
    released(TEASEL, "A. Ward", "2026-11-03");
    assertEquals(0, run("check", "--released", "procedures"), git.said());
    git.edit(RECORD, "2026-10-02", "2026-10-03");
    assertEquals(1, run("check", "--released", "procedures"), git.said());
  }

  @Test
  void whatIsBuiltForAnotherInstrumentIsNotReleased() throws IOException {
    released("procedures", "A. Ward", "2026-11-02");
    assertEquals(1, run("check", "--released", "--analyzer", "shale", TEASEL), git.said());
    assertTrue(out().contains("another instrument"), out());
  }

  @Test
  void itAsksWhoAndWhen() {
    for (String[] words :
        List.of(
            new String[] {"release", TEASEL},
            new String[] {"release", TEASEL, "--by", "A. Ward"},
            new String[] {"release", TEASEL, "--on", "2026-11-02"},
            new String[] {"release", TEASEL, "--on", "2026-11-31", "--by", "A. Ward"},
            new String[] {"release", TEASEL, "--on", "2026-11-02", "--by", "A \" Ward"})) {
      assertEquals(2, run(words), git.said());
      assertFalse(Files.exists(work.resolve(RECORD)));
    }
  }

  // ---- branches ----

  /** What a person does with a record that git could not merge. */
  private void takeMarkersOut() throws IOException {
    String text = Files.readString(work.resolve(RECORD));
    git.write(RECORD, text.replaceAll("(?m)^(<<<<<<<|=======|>>>>>>>).*\n", ""));
  }

  /** Two people release on two branches; git cannot merge the record. */
  @Test
  void aMergeOfTwoReleasesIsApprovedAgain() throws Exception {
    git.init();
    released("procedures/teasel", "A. Ward", "2026-11-02");
    released("procedures/yarrow", "A. Ward", "2026-11-02");
    String copy = "procedures/teasel/second.pband";
    git.write(
        copy,
        Files.readString(work.resolve(TEASEL))
            .replace("procedure teasel-output", "procedure second"));
    git.commit("one");
    git.git("checkout", "-q", "-b", "other");
    released(copy, "B. Lind", "2026-11-03");
    git.commit("the second procedure");
    git.git("checkout", "-q", "main");
    git.edit(TEASEL, "410 to 500", "420 to 490");
    revise(TEASEL, "B", "C");
    released(TEASEL, "A. Ward", "2026-11-03");
    git.commit("revision C");
    assertEquals(1, git.status("merge", "-q", "other"));
    assertEquals(1, run("check", "procedures"), git.said());
    assertTrue(out().contains("[record-conflict]"), out());
    assertEquals(1, run("release", TEASEL, "--by", "A. Ward", "--on", "2026-11-04"), git.said());
    takeMarkersOut();
    assertEquals(1, run("check", "procedures"), git.said());
    assertTrue(out().contains("[record-fork]"), out());
    assertFalse(out().contains("[record-gap]"), out());
    released(TEASEL, "C. Mora", "2026-11-05");
    assertTrue(Files.readString(work.resolve(RECORD)).contains(" and "));
    assertEquals(0, run("check", "--released", "procedures/teasel"), git.said());
    git.commit("merged");
  }

  /** Two branches give the same revision two meanings. */
  @Test
  void oneRevisionOfTwoBranchesNeedsANewOne() throws Exception {
    git.init();
    released("procedures", "A. Ward", "2026-11-02");
    git.commit("one");
    git.git("checkout", "-q", "-b", "other");
    git.edit(TEASEL, "410 to 500", "415 to 495");
    revise(TEASEL, "B", "C");
    released(TEASEL, "B. Lind", "2026-11-03");
    git.commit("C of the other");
    git.git("checkout", "-q", "main");
    git.edit(TEASEL, "410 to 500", "420 to 490");
    revise(TEASEL, "B", "C");
    released(TEASEL, "A. Ward", "2026-11-03");
    git.commit("C");
    assertEquals(1, git.status("merge", "-q", "other"));
    git.git("checkout", "-q", "--ours", TEASEL);
    takeMarkersOut();
    assertEquals(1, run("check", TEASEL), git.said());
    assertTrue(out().contains("released on two branches with different meanings"), out());
    released(TEASEL, "C", "D", digest());
    assertEquals(0, run("check", "--released", "procedures"), git.said());
  }

  /** The digest of the last entry. */
  private String digest() throws IOException {
    List<String> lines = lines();
    return lines.get(lines.size() - 1).split(" ")[3];
  }

  private void released(String path, String from, String to, String digest) throws IOException {
    String text = Files.readString(work.resolve(path));
    git.write(
        path,
        text.replaceAll(
            "revision \"" + from + "\" on 2026-10-02 replaces .*",
            "revision \""
                + to
                + "\" on 2026-10-02 replaces \""
                + from
                + "\" digest \""
                + digest
                + "\""));
    released(path, "C. Mora", "2026-11-05");
  }
}
