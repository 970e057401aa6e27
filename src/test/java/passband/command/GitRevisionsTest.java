package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What git shows of a commit is that commit's meaning: no other revision of a used file counts,
 * least of all the one in the work tree.
 */
class GitRevisionsTest {
  private static final String TEASEL = "procedures/teasel/teasel-output.pband";
  private static final String SHALE = "procedures/analyzers/shale.pband";

  private static final String YARROW = "procedures/yarrow/yarrow-service.pband";
  private static final String CARVE = "procedures/yarrow/carve-limits.csv";

  @TempDir Path work;
  private GitFolder folder;

  /** The first commit, one that changes an analyzer, one that changes a procedure. */
  private String first;

  private String second;
  private String third;

  @BeforeEach
  void threeCommits() throws IOException, InterruptedException {
    folder = new GitFolder(work);
    folder.copyLibraryUnreleased();
    folder.init();
    folder.write(".gitattributes", "*.pband diff=passband\n*.csv diff=passband\n");
    folder.write("procedures/broken.pband", "procedure broken {\n");
    first = folder.commit("first");
    folder.edit(SHALE, "resolution 10 V", "resolution 20 V");
    second = folder.commit("second");
    folder.edit(TEASEL, "410 to 500", "400 to 500");
    third = folder.commit("third");
    folder.git("config", "diff.passband.command", GitFolder.command("git-diff"));
  }

  private void breakTheWorkTree() throws IOException {
    folder.edit(SHALE, "resolution 20 V", "resolution 20 miles");
  }

  /** What {@code passband diff} says of two commits, with plain paths. */
  private String compared(String was, String now, String path) {
    assertEquals(1, folder.run("diff", was + ":" + path, now + ":" + path), folder.said());
    return folder.out().replace(was + ":", "").replace(now + ":", "");
  }

  private static String head(String path, String was, String now) {
    return "passband "
        + path
        + ": used files from "
        + was.substring(0, 10)
        + " and "
        + now.substring(0, 10)
        + "\n";
  }

  @Test
  void aCommitIsShownWithItsOwnUsedFiles() throws IOException, InterruptedException {
    breakTheWorkTree();
    String meaning = head(TEASEL, second, third) + compared(second, third, TEASEL);
    assertEquals(meaning, folder.git("show", "--ext-diff", "--format=", "HEAD"));
    assertEquals(meaning, folder.git("diff", "HEAD~1", "HEAD"));
    assertEquals(meaning, folder.git("diff", "HEAD~1..HEAD", "--", TEASEL));
    assertEquals(meaning, folder.git("diff", "HEAD~1...HEAD"));
    assertEquals(
        head(TEASEL, third, second) + compared(third, second, TEASEL),
        folder.git("diff", "-R", "HEAD~1", "HEAD"));
  }

  @Test
  void aLogShowsEachCommitWithItsOwnUsedFiles() throws IOException, InterruptedException {
    breakTheWorkTree();
    String said = folder.git("log", "-p", "-2", "--ext-diff", "--format=%s");
    assertTrue(said.contains(head(TEASEL, second, third) + compared(second, third, TEASEL)), said);
    assertTrue(said.contains(head(SHALE, first, second)), said);
    assertTrue(said.contains("analyzer changed: measured peak-voltage"), said);
    assertFalse(said.contains("not compared"), said);
  }

  /** A change that was taken back and made again is in two commits: git does not say which. */
  @Test
  void theSameChangeInTwoCommitsIsSaid() throws IOException, InterruptedException {
    folder.edit(TEASEL, "400 to 500", "410 to 500");
    folder.commit("back");
    folder.edit(TEASEL, "410 to 500", "400 to 500");
    folder.commit("again");
    String said = folder.git("log", "-p", "-1", "--ext-diff", "--format=%s");
    assertTrue(said.contains("(one of 2 commits with this change)"), said);
    said = folder.git("show", "--ext-diff", "--format=%s");
    assertFalse(said.contains("one of"), said);
  }

  /** Unstaged, staged, and against a commit: each side has its own. */
  @Test
  void theIndexAndTheWorkTreeAreToldApart() throws IOException, InterruptedException {
    folder.edit(TEASEL, "400 to 500", "390 to 500");
    folder.git("add", TEASEL);
    breakTheWorkTree();
    String said = folder.git("diff", "--cached");
    assertTrue(said.startsWith("passband " + TEASEL + ": used files from "), said);
    assertTrue(said.contains(" and the index\n"), said);
    assertTrue(said.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), said);
    said = folder.git("diff");
    assertTrue(
        said.startsWith("passband " + SHALE + ": used files from the index and the work tree\n"),
        said);
    assertTrue(said.contains("in the work tree: " + SHALE), said);
    assertTrue(said.contains("unknown unit"), said);
    assertTrue(said.contains("\n--- a/" + SHALE + "\n+++ b/" + SHALE + "\n"), said);
    assertTrue(said.contains("resolution 20 miles\n"), said);
  }

  @Test
  void aRenamedFileIsComparedWithWhatItWas() throws IOException, InterruptedException {
    String renamed = "procedures/teasel/tack.pband";
    folder.git("mv", TEASEL, renamed);
    folder.edit(renamed, "400 to 500", "390 to 500");
    String fourth = folder.commit("renamed");
    breakTheWorkTree();
    String said = folder.git("show", "--ext-diff", "--format=", "-M");
    assertTrue(said.startsWith(head(TEASEL + " -> " + renamed, third, fourth)), said);
    assertTrue(said.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), said);
    assertFalse(said.contains("removed"), said);
    assertFalse(said.contains(": new"), said);
  }

  @Test
  void aDeletedFileIsGone() throws IOException, InterruptedException {
    Files.delete(work.resolve(TEASEL));
    assertTrue(folder.git("diff").contains("teasel-output: removed, was revision B"));
    String fourth = folder.commit("deleted");
    breakTheWorkTree();
    String said = folder.git("show", "--ext-diff", "--format=");
    assertTrue(said.startsWith(head(TEASEL, third, fourth)), said);
    assertTrue(said.contains("teasel-output: removed, was revision B"), said);
  }

  /** A conflict is one line; the merge, shown against each parent, has the parents' files. */
  @Test
  void aMerge() throws IOException, InterruptedException {
    folder.git("checkout", "-q", "-b", "side", second);
    folder.edit(TEASEL, "410 to 500", "390 to 500");
    String side = folder.commit("side");
    folder.git("checkout", "-q", "main");
    assertEquals(1, folder.status("merge", "side"));
    String said = folder.git("diff", "--ours");
    assertTrue(said.contains("passband " + TEASEL + ": not merged"), said);
    folder.git("checkout", "--theirs", TEASEL);
    String merge = folder.commit("merge");
    breakTheWorkTree();
    said = folder.git("show", "-m", "--ext-diff", "--format=");
    assertTrue(said.contains(head(TEASEL, third, merge)), said);
    assertFalse(said.contains(head(TEASEL, side, merge)), said);
    assertTrue(said.contains("limits loosened"), said);
  }

  /** A table of limits is a used file like any other. */
  @Test
  void aTableIsShownByWhatItMeans() throws IOException, InterruptedException {
    folder.edit(CARVE, "253 to 309", "260 to 309");
    String fourth = folder.commit("table");
    breakTheWorkTree();
    folder.edit(CARVE, "260 to 309", "none");
    String said = folder.git("show", "--ext-diff", "--format=");
    assertTrue(said.startsWith(head(CARVE, third, fourth)), said);
    assertTrue(said.contains("limits tightened (2): carve-output/hand/carve/20W/"), said);
    assertFalse(said.contains("not compared"), said);
  }

  @Test
  void aDifftoolShowsTheSame() throws IOException, InterruptedException {
    folder.git(
        "config",
        "difftool.passband.cmd",
        GitFolder.command("git-diff") + " \"$MERGED\" \"$LOCAL\" . . \"$REMOTE\" . .");
    breakTheWorkTree();
    String meaning = head(TEASEL, second, third) + compared(second, third, TEASEL);
    assertEquals(meaning, folder.git("difftool", "-y", "-t", "passband", "HEAD~1", "HEAD"));
    String said = folder.git("difftool", "-y", "-t", "passband");
    assertTrue(
        said.startsWith("passband " + SHALE + ": used files from the index and the work tree\n"),
        said);
  }

  @Test
  void aTextconvHasTheUsedFilesOfItsRevision() throws IOException, InterruptedException {
    folder.git("config", "--unset", "diff.passband.command");
    folder.git("config", "diff.passband.textconv", GitFolder.command("git-text"));
    breakTheWorkTree();
    String said = folder.git("show", "--format=", "-U0");
    assertTrue(said.contains("\n-used files: " + second.substring(0, 10) + "\n"), said);
    assertTrue(said.contains("\n+used files: " + third.substring(0, 10) + "\n"), said);
    String limit = "limit/tack-output/bipolar/tack/1/40ohm/current: ";
    assertTrue(said.contains("\n-" + limit + "410.0 to 500.0 mA"), said);
    assertTrue(said.contains("\n+" + limit + "400.0 to 500.0 mA"), said);
    assertFalse(said.contains("resolution"), said);
  }

  /** A rebase gives a change new parents: it is shown with the used files of those. */
  @Test
  void aRebasedCommitHasTheUsedFilesOfItsNewParent() throws IOException, InterruptedException {
    folder.git("checkout", "-q", "-b", "side", first);
    folder.edit(TEASEL, "410 to 500", "390 to 500");
    String before = folder.commit("side");
    String unbased = head(TEASEL, first, before) + compared(first, before, TEASEL);
    assertEquals(unbased, folder.git("show", "--ext-diff", "--format="));
    folder.git("rebase", "-q", second);
    String after = folder.git("rev-parse", "HEAD").strip();
    String based = head(TEASEL, second, after) + compared(second, after, TEASEL);
    assertEquals(based, folder.git("show", "--ext-diff", "--format="));
    assertEquals(unbased, folder.git("show", "--ext-diff", "--format=", before));
  }

  /** Where git's command line tells nothing, a commit with this version is taken, and that said. */
  @Test
  void aGuessIsSaidToBeOne() throws IOException, InterruptedException {
    folder.edit(TEASEL, "400 to 500", "390 to 500");
    folder.git("stash");
    breakTheWorkTree();
    String said = folder.git("stash", "show", "-p", "--ext-diff");
    assertTrue(said.contains("has this version of the file)"), said);
    assertTrue(said.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), said);
  }

  /** Paths from a folder, and a command of one's own: git shows the same, so does this. */
  @Test
  void aRelativeDiffAndAnAliasShowTheSame() throws IOException, InterruptedException {
    breakTheWorkTree();
    String meaning = head(TEASEL, second, third) + compared(second, third, TEASEL);
    String procedures = work.resolve("procedures").toString();
    assertEquals(meaning, folder.git("-C", procedures, "diff", "--relative", "HEAD~1", "HEAD"));
    assertEquals(meaning, folder.git("diff", "--relative=procedures", "HEAD~1", "HEAD"));
    folder.git("config", "alias.last", "diff HEAD~1 HEAD");
    assertEquals(meaning, folder.git("last"));
  }

  // ---- two commits ----

  private static String list(String said, String title) {
    int from = said.indexOf(title + ": ");
    assertTrue(from >= 0, said);
    int to = from + said.substring(from).indexOf('\n') + 1;
    while (said.startsWith("  ", to)) {
      to = said.indexOf('\n', to) + 1;
    }
    return said.substring(said.indexOf('\n', from) + 1, to);
  }

  @Test
  void twoCommitsListWhatChangedThroughWhat() throws IOException, InterruptedException {
    folder.edit(SHALE, "# An RF output analyzer", "# An analyzer of RF output");
    String remark = folder.commit("remark");
    breakTheWorkTree();
    assertEquals(1, folder.run("diff", "HEAD~3..HEAD~2"), folder.said());
    assertEquals(
        "  teasel-output, "
            + TEASEL
            + ", through "
            + SHALE
            + "\n"
            + "  yarrow-service, "
            + YARROW
            + ", through "
            + SHALE
            + "\n",
        list(folder.out(), "meaning changed"));
    assertTrue(
        list(folder.out(), "not affected: they use no file that changed").contains("sundew"));
    assertEquals(1, folder.run("diff", second + ".." + third), folder.said());
    assertEquals(
        "  teasel-output, " + TEASEL + ", itself changed\n", list(folder.out(), "meaning changed"));
    assertTrue(folder.out().endsWith("\n\n" + compared(second, third, TEASEL)), folder.out());
    assertEquals(0, folder.run("diff", third + ".." + remark), folder.said());
    assertEquals("", list(folder.out(), "meaning changed"));
    assertEquals(
        2, list(folder.out(), "same meaning, though a file that they use changed").lines().count());
    assertEquals(0, folder.run("diff", "HEAD..HEAD"), folder.said());
  }

  @Test
  void everyFormListsThem() throws IOException, InterruptedException {
    String range = second + ".." + third;
    assertEquals(1, folder.run("diff", range), folder.said());
    List<String> lines =
        List.of(
            "teasel-output, " + TEASEL + ", itself changed",
            list(folder.out(), "not affected: they use no file that changed")
                .lines()
                .toList()
                .get(0)
                .strip());
    for (String form : List.of("json", "html", "markdown")) {
      assertEquals(1, folder.run("diff", range, "--as", form), folder.said());
      String shown = folder.out().replace("<wbr>", "").replace("\\-", "-");
      lines.forEach(line -> assertTrue(shown.contains(line), shown));
      assertEquals("", folder.err());
    }
  }

  /** What depends on the changed files is all that can differ: as if all were compiled. */
  @Test
  void twoCommitsDifferAsTheirWholeLibrariesDo() throws IOException, InterruptedException {
    folder.git("rm", "-q", "procedures/broken.pband");
    String fourth = folder.commit("mended");
    folder.git("mv", TEASEL, "procedures/teasel/tack.pband");
    folder.edit(SHALE, "resolution 20 V", "resolution 10 V");
    folder.edit(CARVE, "253 to 309", "260 to 309");
    String fifth = folder.commit("more");
    String whole = compared(fourth, fifth, "procedures");
    assertEquals(1, folder.run("diff", fourth + ".." + fifth), folder.said());
    assertTrue(folder.out().endsWith("\n\n" + whole), folder.out() + "\n----\n" + whole);
  }

  /** What a change does to what was released is seen before the revision gets another label. */
  @Test
  void aReleasedRevisionIsComparedWithWhatItMeansNow() throws IOException, InterruptedException {
    String[] approved = {"release", TEASEL, "--by", "A. Ward", "--on", "2026-11-02"};
    assertEquals(0, folder.run(approved), folder.said());
    folder.commit("released");
    folder.edit(TEASEL, "400 to 500", "420 to 490");
    assertEquals(1, folder.run("check", TEASEL), folder.said());
    assertTrue(folder.said().contains("[revision-reused]"), folder.said());
    assertEquals(1, folder.run("diff", "HEAD:" + TEASEL, TEASEL), folder.said());
    assertEquals("", folder.err());
    String compared = folder.out();
    assertTrue(compared.contains("same revision, other meaning"), compared);
    assertTrue(compared.contains("limits tightened"), compared);
    folder.commit("changed");
    assertEquals(1, folder.run("diff", "HEAD~1..HEAD"), folder.said());
    assertTrue(folder.out().endsWith("\n\n" + compared), folder.out());
  }

  @Test
  void anErrorInACommitIsNamedAndTheRestCompared() throws IOException, InterruptedException {
    folder.edit(CARVE, "253 to 309", "none");
    folder.edit(TEASEL, "400 to 500", "390 to 500");
    folder.commit("error");
    assertEquals(2, folder.run("diff", "HEAD~1..HEAD"), folder.said());
    assertEquals("  " + YARROW + "\n", list(folder.out(), "not compared, because of errors"));
    assertTrue(folder.out().contains("limits loosened: tack-output/"), folder.out());
    assertTrue(folder.err().contains(CARVE + ":2:"), folder.err());
    assertEquals(2, folder.run("diff", "nothing..HEAD"));
    assertEquals("passband: git knows no commits 'nothing..HEAD' here\n", folder.err());
    assertEquals(2, folder.run("diff", "HEAD~1..HEAD", "--analyzer", "shale"));
  }
}
