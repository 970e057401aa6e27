package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.testing.Repository;

/**
 * What git shows of a commit is that commit's meaning: no other revision of a used file counts,
 * least of all the one in the work tree.
 */
class GitRevisionsTest {
  private static final String TEASEL = "procedures/teasel/teasel-output.pband";
  private static final String SHALE = "procedures/analyzers/shale.pband";

  @TempDir Path work;
  private GitFolder folder;

  /** The first commit, one that changes an analyzer, one that changes a procedure. */
  private String first;

  private String second;
  private String third;

  @BeforeEach
  void threeCommits() throws IOException, InterruptedException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    for (Path record : Repository.files(work, "released.txt")) {
      Files.delete(record);
    }
    folder = new GitFolder(work);
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
}
