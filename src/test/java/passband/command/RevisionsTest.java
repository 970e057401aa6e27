package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Revisions on a disk and in git's keeping: diff, release, the record. */
class RevisionsTest {
  private static final String TEASEL = "procedures/teasel/teasel-output.pband";

  @TempDir Path work;
  private GitFolder git;
  private String out;
  private String err;

  @BeforeEach
  void copyLibrary() throws IOException {
    git = new GitFolder(work);
    git.copyLibraryUnreleased();
  }

  private int run(String... words) {
    int status = git.run(words);
    out = git.out();
    err = git.err();
    return status;
  }

  private int release(String... paths) {
    List<String> words =
        new ArrayList<>(List.of("release", "--by", "A. Ward", "--on", "2026-11-02"));
    words.addAll(List.of(paths));
    return run(words.toArray(String[]::new));
  }

  private void edit(String path, String from, String to) throws IOException {
    git.edit(path, from, to);
  }

  private String git(String... arguments) throws IOException, InterruptedException {
    return git.git(arguments);
  }

  private void commit() throws IOException, InterruptedException {
    git.init();
    git.commit("first");
  }

  @Test
  void exitStatusesOfDiff() throws IOException {
    assertEquals(0, run("diff", "procedures", "procedures"), out + err);
    assertEquals("", out);
    Files.createDirectories(work.resolve("new"));
    Files.copy(work.resolve(TEASEL), work.resolve("procedures/teasel/other.pband"));
    edit("procedures/teasel/other.pband", "410 to 500", "420 to 490");
    edit("procedures/teasel/other.pband", "revision \"B\"", "revision \"C\"");
    assertEquals(1, run("diff", TEASEL, "procedures/teasel/other.pband"), err);
    assertTrue(out.contains("1. limits tightened: tack-output/bipolar/tack/1/40ohm/current"), out);
    edit("procedures/teasel/other.pband", "420 to 490", "420 to 490 Ohms");
    assertEquals(2, run("diff", TEASEL, "procedures/teasel/other.pband"));
    assertTrue(err.contains("other.pband:64"), err);
    assertEquals(2, run("diff", TEASEL));
    assertEquals(2, run("diff", TEASEL, "nothing"));
    assertEquals(2, run("diff", TEASEL, "HEAD:nothing.pband"));
  }

  @Test
  void aCommitIsComparedWithTheWorkTree() throws IOException, InterruptedException {
    commit();
    assertEquals(0, run("diff", "HEAD:procedures", "procedures"), out + err);
    edit("procedures/teasel/teasel.pband", "tack \"Tack\"", "tack \"Tacking\"");
    edit(TEASEL, "revision \"B\"", "revision \"C\"");
    assertEquals(1, run("diff", "HEAD:" + TEASEL, TEASEL), err);
    assertTrue(out.contains("mode tack"), out);
    assertEquals(1, run("diff", "HEAD:procedures", "procedures", "--as", "json"));
    assertTrue(out.contains("\"passband-diff/7\""), out);
    assertEquals(1, run("diff", "HEAD:procedures", "procedures", "--as", "html"));
    assertTrue(out.startsWith("<!DOCTYPE html>"), out);
  }

  // ---- the roots of libraries ----

  /** A library in a folder of the repository has the same root in a commit as on the disk. */
  @Test
  void aCommitsLibraryHasTheRootThatIsMarked() throws IOException, InterruptedException {
    Files.writeString(work.resolve("outside.pband"), "device d \"D\" {\n}\n");
    Files.writeString(work.resolve("procedures/a.pband"), "use \"../outside.pband\"\n");
    Files.writeString(work.resolve("procedures/passband.library"), "");
    commit();
    String refused = "'../outside.pband' is outside the library root ";
    assertEquals(2, run("diff", "HEAD:procedures/a.pband", "procedures/a.pband"));
    assertTrue(err.contains(refused + "HEAD:procedures (set it with --root)"), err);
    assertTrue(err.contains(refused + work.resolve("procedures") + " (set it"), err);
    assertEquals(
        0, run("diff", "HEAD:procedures/a.pband", "procedures/a.pband", "--root", "."), err);
    git("rm", "-q", "procedures/passband.library");
    git("commit", "-q", "-m", "second");
    assertEquals(0, run("diff", "HEAD:procedures/a.pband", "procedures/a.pband"), err);
  }

  /** As seen from a folder of the work tree, {@code --root} is a folder on the disk. */
  @Test
  void theGivenRootCountsForACommitToo() throws IOException, InterruptedException {
    commit();
    String old = "HEAD:" + TEASEL;
    assertEquals(2, run("diff", old, TEASEL, "--root", "procedures/teasel"));
    assertTrue(
        err.contains("is outside the library root HEAD:procedures/teasel (set it with --root)"),
        err);
    assertEquals(0, run("diff", old, TEASEL, "--root", "procedures"), err);
    assertEquals(2, run("diff", old, TEASEL, "--root", "procedures/yarrow"));
    assertEquals(
        "passband: '"
            + old
            + "' is outside the library root HEAD:procedures/yarrow (set it with --root)\n",
        err);
    assertEquals(2, run("diff", old, TEASEL, "--root", ".."));
    assertEquals("passband: the library root .. is outside the repository\n", err);
  }

  /** Git's calls find the root by the same rule. */
  @Test
  void gitsCallsFindTheMarkedRoot() throws IOException, InterruptedException {
    Files.writeString(work.resolve(".gitattributes"), "*.pband diff=passband\n");
    Files.writeString(work.resolve("procedures/teasel/passband.library"), "");
    commit();
    git("config", "diff.passband.command", GitFolder.command("git-diff"));
    edit(TEASEL, "410 to 500", "400 to 500");
    String said = git("diff");
    assertTrue(said.contains("not compared: "), said);
    Files.move(
        work.resolve("procedures/teasel/passband.library"),
        work.resolve("procedures/passband.library"));
    said = git("diff", "--", TEASEL);
    assertTrue(said.contains("in the index: "), said);
    git("add", "-A", "*passband.library");
    said = git("diff", "--", TEASEL);
    assertTrue(said.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), said);
  }

  /** The two lines of the README, with real git. */
  @Test
  void gitCallsItAsExternalDiff() throws IOException, InterruptedException {
    Files.writeString(work.resolve(".gitattributes"), "*.pband diff=passband\n");
    commit();
    git("config", "diff.passband.command", GitFolder.command("git-diff"));
    edit(TEASEL, "410 to 500", "400 to 500");
    String said = git("diff");
    assertTrue(said.contains("passband " + TEASEL), said);
    assertTrue(said.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), said);
    git("checkout", "-q", "--", ".");
    edit("procedures/analyzers/shale.pband", "resolution 10 V", "resolution 20 V");
    said = git("diff");
    assertTrue(said.contains("teasel-output"), said);
    assertTrue(said.contains("analyzer changed: measured peak-voltage"), said);
    git("checkout", "-q", "--", ".");
    edit(TEASEL, "  test tack-output", "  # a remark\n  test tack-output");
    said = git("diff");
    assertTrue(said.contains("the meaning is the same"), said);
    git("checkout", "-q", "--", ".");
    String copy = "procedures/teasel/copy.pband";
    Files.copy(work.resolve(TEASEL), work.resolve(copy));
    edit(copy, "procedure teasel-output", "procedure teasel-copy");
    Files.writeString(
        work.resolve("procedures/more.pband"), "leads more {\n  lead one \"one\"\n}\n");
    git("add", "-N", copy, "procedures/more.pband");
    said = git("diff");
    assertTrue(said.contains("teasel-copy: new, revision B"), said);
    assertTrue(said.contains("leads more: new, "), said);
    assertTrue(!said.contains("gone"), said);
  }

  @Test
  void gitCallsItAsTextconv() throws IOException, InterruptedException {
    Files.writeString(work.resolve(".gitattributes"), "*.pband diff=passband\n");
    commit();
    git("config", "diff.passband.textconv", GitFolder.command("git-text"));
    edit(TEASEL, "410 to 500", "400 to 500");
    edit(TEASEL, "  test tack-output", "  # a remark\n  test tack-output");
    String said = git("diff", "-U0");
    assertTrue(
        said.contains("\n-limit/tack-output/bipolar/tack/1/40ohm/current: 410.0 to 500.0 mA"),
        said);
    assertTrue(
        said.contains("\n+limit/tack-output/bipolar/tack/1/40ohm/current: 400.0 to 500.0 mA"),
        said);
    assertTrue(!said.contains("a remark"), said);
  }

  // ---- the record ----

  /** A digest of another version of the meaning says neither that it is the same nor another. */
  @Test
  void aReleaseOfAnotherMeaningIsApprovedAgain() throws IOException {
    Path record = work.resolve("procedures/teasel/released.txt");
    Files.writeString(record, "teasel-output \"B\" 2026-10-02 " + "0".repeat(64) + "\n");
    assertEquals(0, run("check", TEASEL), out);
    assertTrue(out.contains("[release-not-comparable]"), out);
    assertEquals(0, release(TEASEL), out + err);
    assertTrue(out.contains("\nreleased: teasel-output \"B\""), out);
    assertEquals(0, run("check", TEASEL), out);
    assertEquals("", out);
    edit(TEASEL, "410 to 500", "420 to 490");
    assertEquals(1, run("check", TEASEL));
    assertTrue(out.contains("[revision-reused]"), out);
  }

  @Test
  void aReleasedRevisionKeepsItsMeaning() throws IOException {
    assertEquals(0, release(TEASEL), out + err);
    assertTrue(out.startsWith("released: teasel-output \"B\" 2026-10-02 "), out);
    String digest = out.strip().split(" ")[4];
    assertEquals(0, run("check", "procedures"), out + err);
    assertEquals(0, release(TEASEL));
    assertTrue(out.startsWith("already released"), out);
    edit(TEASEL, "410 to 500", "420 to 490");
    assertEquals(1, run("check", TEASEL));
    assertTrue(out.contains("[revision-reused]"), out);
    assertEquals(1, run("build", TEASEL));
    assertEquals(1, release(TEASEL));
    edit(
        TEASEL,
        "revision \"B\" on 2026-10-02",
        "revision \"C\" on 2026-11-02 replaces \"B\" on 2026-10-02 digest \"" + digest + "\"");
    assertEquals(0, run("check", TEASEL), out);
    assertEquals("", out);
    edit(TEASEL, "digest \"" + digest, "digest \"" + "0".repeat(64));
    assertEquals(1, run("check", TEASEL));
    assertTrue(out.contains("[replaced-digest]"), out);
    assertEquals(0, run("check", TEASEL, "--analyzer", "shale"), out);
  }

  @Test
  void aBrokenRecordIsAnError() throws IOException {
    Files.writeString(work.resolve("procedures/teasel/released.txt"), "teasel-output B\n");
    assertEquals(1, run("check", "procedures"));
    assertTrue(out.contains("procedures/teasel/released.txt:1:1: error"), out);
  }

  // ---- watch ----

  @Test
  void aSaveIsChecked() throws Exception {
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    Invocation invocation =
        new Invocation(
            work,
            new PrintStream(outBytes, true, StandardCharsets.UTF_8),
            new PrintStream(errBytes, true, StandardCharsets.UTF_8),
            3,
            null,
            false);
    Thread watching =
        new Thread(() -> Main.run(invocation, List.of("check", "procedures", "--watch")));
    watching.start();
    awaited(() -> count(errBytes, "watching ") == 1);
    edit(
        "procedures/teasel/teasel.pband",
        "peak-voltage at most 240 V",
        "peak-voltage at most 240 Volts");
    awaited(() -> count(outBytes, "[unknown-unit]") == 1);
    awaited(() -> count(errBytes, "watching ") == 2);
    edit("procedures/teasel/teasel.pband", "240 Volts", "240 V");
    watching.join(10_000);
    assertTrue(!watching.isAlive(), "the third run ends it");
    assertEquals(1, count(outBytes, "[unknown-unit]"));
  }

  private static int count(ByteArrayOutputStream bytes, String text) {
    return bytes
            .toString(StandardCharsets.UTF_8)
            .split(java.util.regex.Pattern.quote(text), -1)
            .length
        - 1;
  }

  private static void awaited(java.util.function.BooleanSupplier condition)
      throws InterruptedException {
    for (int i = 0; i < 500 && !condition.getAsBoolean(); i++) {
      Thread.sleep(20);
    }
    assertTrue(condition.getAsBoolean());
  }
}
