package passband.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.build.Compilation;
import passband.build.Revision;
import passband.build.SnapshotDiff;
import passband.diagnostic.Diagnostics;
import passband.diff.PlanDiff;
import passband.library.CommitRange;
import passband.library.Git;
import passband.library.GitObjects;
import passband.library.Paths;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.DiffPage;
import passband.render.DiffReport;
import passband.render.RangeLists;

/** {@code passband diff}: what changed in meaning. */
final class DiffCommand implements Verb {
  private final Invocation invocation;

  DiffCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String analyzer = arguments.valueOrNull("--analyzer");
    List<String> paths = arguments.operands();
    boolean retargeted = paths.size() == 1;
    String root = arguments.valueOrNull("--root");
    if (retargeted && paths.get(0).contains("..") && !isThere(paths.get(0))) {
      if (analyzer != null || root != null) {
        throw new UsageException("two commits are compared without --analyzer and --root");
      }
      return commits(paths.get(0), arguments);
    }
    if (retargeted && analyzer == null) {
      throw new UsageException(
          "diff needs OLD and NEW, or one of them and --analyzer, or COMMIT..COMMIT");
    }
    Compilation<Plan> was = side(paths.get(0), root, retargeted ? null : analyzer);
    Compilation<Plan> now = side(paths.get(retargeted ? 0 : 1), root, analyzer);
    if (was.diagnostics().stopComparison() || now.diagnostics().stopComparison()) {
      for (Diagnostics faults : List.of(was.diagnostics(), now.diagnostics())) {
        faults.removeIf(d -> !d.isError());
        DiagnosticPrinter.printText(faults, invocation.err());
      }
      return ExitStatus.CANNOT_RUN;
    }
    List<PlanDiff> diffs =
        PlanDiff.between(was.procedures(), was.declared(), now.procedures(), now.declared());
    if (retargeted) {
      diffs.replaceAll(PlanDiff::ofOneRevision);
    }
    invocation.out().print(shown(diffs, null, arguments));
    return diffs.isEmpty() ? ExitStatus.FINE : ExitStatus.FAULTS;
  }

  private boolean isThere(String path) {
    Path place = Paths.resolveWritten(invocation.workingDirectory(), path);
    return place != null && Files.exists(place);
  }

  /** On a system with drives {@code C:} is one, and no commit's name. */
  private boolean isOnADrive(String path) {
    Path place = Paths.resolveWritten(invocation.workingDirectory(), path);
    return place != null
        && path.length() > 1
        && path.charAt(1) == ':'
        && place.startsWith(path.substring(0, 2) + "\\");
  }

  /** Two commits: what depends on the files that differ, compiled on both sides. */
  private int commits(String written, Arguments arguments) throws UsageException, IOException {
    Path folder = invocation.workingDirectory();
    CommitRange range = CommitRange.of(folder, written);
    if (range == null) {
      throw new UsageException("git knows no commits '" + written + "' here");
    }
    try (GitObjects objects = new GitObjects(folder)) {
      SnapshotDiff diff =
          new SnapshotDiff(
              new Git(folder, Git.shortened(folder, range.was()), objects),
              range.wasPaths(),
              new Git(folder, Git.shortened(folder, range.now()), objects),
              range.nowPaths(),
              range.renamed());
      List<PlanDiff> diffs =
          PlanDiff.between(
              diff.was().plans(), diff.was().declared(), diff.now().plans(), diff.now().declared());
      invocation.out().print(shown(diffs, new RangeReport(diff, diffs).lists(), arguments));
      for (SnapshotDiff.Side side : List.of(diff.was(), diff.now())) {
        side.errors().forEach(error -> invocation.err().print("in " + side.name() + ": " + error));
      }
      return !diff.failed().isEmpty()
          ? ExitStatus.CANNOT_RUN
          : diffs.isEmpty() ? ExitStatus.FINE : ExitStatus.FAULTS;
    }
  }

  /**
   * @param range of two commits; null where two files or folders are compared
   */
  private static String shown(
      List<PlanDiff> diffs, @Nullable RangeLists range, Arguments arguments) {
    return switch (arguments.value("--as")) {
      case "markdown" -> DiffReport.markdown(diffs, range);
      case "json" -> DiffReport.json(diffs, range);
      case "html" -> DiffPage.of(diffs, range);
      default -> {
        String shown = DiffReport.text(diffs, arguments.has("--full"));
        yield range == null ? shown : range.text() + (shown.isEmpty() ? "" : "\n" + shown);
      }
    };
  }

  private Compilation<Plan> side(String path, @Nullable String root, @Nullable String analyzer)
      throws UsageException, IOException {
    Path workingDirectory = invocation.workingDirectory();
    int colon = path.indexOf(':');
    if (isThere(path) || colon <= 0 || isOnADrive(path)) {
      return Compilation.of(List.of(path), workingDirectory, root, analyzer);
    }
    return new Revision(workingDirectory, path.substring(0, colon))
        .compiled(path.substring(colon + 1), root, analyzer);
  }
}
