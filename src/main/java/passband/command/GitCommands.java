package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.build.SnapshotDiff;
import passband.diff.PlanDiff;
import passband.library.CallingGit;
import passband.library.DiskSnapshot;
import passband.library.EditedSnapshot;
import passband.library.Git;
import passband.library.GitObjects;
import passband.library.ShownRevisions;
import passband.library.ShownRevisions.Origin;
import passband.library.ShownRevisions.Version;
import passband.library.Snapshot;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.DiffReport;

/**
 * What git calls: {@code passband git-diff} as an external diff, {@code passband git-text} as a
 * textconv. Git gives one file in two versions; what either uses is taken from the revision that it
 * is from.
 */
final class GitCommands {
  /** What git names a version that is not there. */
  private static final String ABSENT = "/dev/null";

  private static final int ARGUMENTS = 7;

  private final Path top;
  private final PrintStream out;

  GitCommands(Invocation invocation) {
    this.top = invocation.workingDirectory();
    this.out = invocation.out();
  }

  /** One version of a file: what git calls it, and its bytes; null for none. */
  private record Given(Version version, byte @Nullable [] bytes) {
    private String path() {
      return version.path();
    }

    private List<String> changed() {
      return bytes == null ? List.of() : List.of(path());
    }
  }

  /**
   * {@code PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE [NEW-PATH …]}, run at the top
   * of the work tree; the path alone for one that is not merged.
   */
  int diff(Arguments arguments) throws UsageException, IOException {
    List<String> words = arguments.operands();
    String path = words.get(0);
    if (words.size() == 1) {
      out.println("passband " + path + ": not merged; nothing is compared until it is");
      return ExitStatus.FINE;
    }
    if (words.size() < ARGUMENTS) {
      throw new UsageException("git-diff is for git's diff.<driver>.command");
    }
    List<String> calling = CallingGit.words(top);
    String prefix = CallingGit.relativeTo(calling, System.getenv("GIT_PREFIX"));
    path = prefix + path;
    Given was = given(path, words.get(1), words.get(2));
    Given now =
        given(
            words.size() > ARGUMENTS ? prefix + words.get(ARGUMENTS) : path,
            words.get(4),
            words.get(5));
    ShownRevisions.Pair shown = new ShownRevisions(top, calling).of(was.version, now.version);
    try (GitObjects objects = new GitObjects(top)) {
      Snapshot old = snapshot(shown.was(), was.path(), was.bytes, objects);
      Snapshot fresh = snapshot(shown.now(), now.path(), now.bytes, objects);
      out.println(
          "passband "
              + (was.path().equals(now.path()) ? path : path + " -> " + now.path())
              + ": used files from "
              + named(old, shown.was())
              + " and "
              + named(fresh, shown.now()));
      Map<String, String> renamed =
          was.path().equals(now.path()) ? Map.of() : Map.of(was.path(), now.path());
      show(new SnapshotDiff(old, was.changed(), fresh, now.changed(), renamed), was, now);
    }
    return ExitStatus.FINE;
  }

  private void show(SnapshotDiff diff, Given was, Given now) {
    List<PlanDiff> diffs =
        PlanDiff.between(
            diff.was().plans(), diff.was().declared(), diff.now().plans(), diff.now().declared());
    if (!diff.failed().isEmpty()) {
      out.println("  not compared: " + String.join(", ", diff.failed()));
      for (SnapshotDiff.Side side : List.of(diff.was(), diff.now())) {
        side.errors().forEach(error -> out.print("  in " + side.name() + ": " + error));
      }
    } else if (diffs.isEmpty()) {
      out.println(same(diff, was, now));
    }
    out.print(DiffReport.text(diffs, false));
    if (!diff.failed().isEmpty()) {
      out.print(TextDiff.of(was.path(), was.bytes, now.path(), now.bytes));
    }
  }

  private static String same(SnapshotDiff diff, Given was, Given now) {
    String what = was.bytes == null ? "  new" : now.bytes == null ? "  deleted" : "  changed";
    if (diff.dependents().isEmpty()) {
      return what + "; no source uses it";
    }
    return was.bytes == null || now.bytes == null
        ? what + ", with no change of meaning"
        : "  the meaning is the same";
  }

  private Given given(String path, String file, String hex) throws IOException {
    if (file.equals(ABSENT)) {
      return new Given(new Version(path, true, null), null);
    }
    byte[] bytes = Files.readAllBytes(top.resolve(file));
    boolean onDisk = hex.chars().allMatch(c -> c == '0') || file.equals(path) && hex.length() < 2;
    String blob = onDisk ? null : hex.length() > 1 ? hex : Git.blobOf(top, file);
    return new Given(new Version(path, false, blob), bytes);
  }

  private Snapshot snapshot(Origin origin, String path, byte @Nullable [] bytes, GitObjects objects)
      throws IOException {
    String revision = origin.revision();
    Snapshot others =
        revision == null
            ? new DiskSnapshot(top)
            : new Git(
                top, revision.equals(Git.INDEX) ? revision : Git.shortened(top, revision), objects);
    return new EditedSnapshot(others, path, bytes);
  }

  private static String named(Snapshot snapshot, Origin origin) {
    return snapshot.name() + (origin.doubt().isEmpty() ? "" : " (" + origin.doubt() + ")");
  }

  /** {@code FILE}: the facts of its procedures, a line each. */
  int text(Arguments arguments) throws UsageException, IOException {
    String file = arguments.operands().get(0);
    byte[] bytes = Files.readAllBytes(top.resolve(file));
    ShownRevisions.Found found =
        new ShownRevisions(top, CallingGit.words(top)).of(file, Git.blobOf(top, file));
    List<Plan> own = List.of();
    if (found != null) {
      try (GitObjects objects = new GitObjects(top)) {
        Snapshot snapshot = snapshot(found.origin(), found.path(), bytes, objects);
        own = SnapshotDiff.own(snapshot, found.path());
        if (!own.isEmpty()) {
          out.println("used files: " + named(snapshot, found.origin()));
        }
      }
    }
    if (own.isEmpty()) {
      out.write(bytes);
    }
    own.forEach(plan -> out.print(DiffReport.facts(plan)));
    return ExitStatus.FINE;
  }
}
