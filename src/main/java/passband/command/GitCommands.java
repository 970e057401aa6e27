package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import passband.build.WorkTree;
import passband.diagnostic.Diagnostics;
import passband.diff.PlanDiff;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.DiffReport;

/**
 * What git calls: {@code passband git-diff} as an external diff, {@code passband git-text} as a
 * textconv. Git gives one file in two versions; what it uses is taken from the work tree.
 */
final class GitCommands {
  /** What git names a version that is not there. */
  private static final String ABSENT = "/dev/null";

  private final Path workingDirectory;
  private final WorkTree workTree;
  private final PrintStream out;

  GitCommands(Invocation invocation) {
    this.workingDirectory = invocation.workingDirectory();
    this.workTree = new WorkTree(workingDirectory);
    this.out = invocation.out();
  }

  /**
   * {@code PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE …}, run at the top of the work
   * tree.
   */
  int diff(Arguments arguments) throws UsageException, IOException {
    List<String> words = arguments.operands();
    if (words.size() < 7) {
      throw new UsageException("git-diff is for git's diff.<driver>.command");
    }
    String path = words.get(0);
    Diagnostics oldFaults = new Diagnostics();
    Diagnostics newFaults = new Diagnostics();
    out.println("passband " + path);
    boolean came = words.get(1).equals(ABSENT);
    boolean went = words.get(4).equals(ABSENT);
    List<Plan> was = came ? List.of() : plans(path, words.get(1), went, oldFaults);
    List<Plan> now = went ? List.of() : plans(path, words.get(4), came, newFaults);
    if ((came || went) && was.isEmpty() && now.isEmpty() && !oldFaults.hasErrors()) {
      out.println(came ? "  new, with no procedure of its own" : "  gone; it had no procedure");
    } else if (oldFaults.hasErrors() || newFaults.hasErrors()) {
      out.println(
          "  not compared: "
              + oldFaults.errorCount()
              + " errors before, "
              + newFaults.errorCount()
              + " now");
    } else {
      List<PlanDiff> diffs = PlanDiff.between(was, now);
      out.print(diffs.isEmpty() ? "  the meaning is the same\n" : DiffReport.text(diffs, false));
    }
    return ExitStatus.FINE;
  }

  private List<Plan> plans(String path, String version, boolean ownOnly, Diagnostics faults)
      throws UsageException, IOException {
    return UnforeseenException.at(
        path, () -> workTree.plans(path, workingDirectory.resolve(version), ownOnly, faults));
  }

  /** {@code FILE}: the facts of its procedures, a line each. */
  int text(Arguments arguments) throws UsageException, IOException {
    Path file = workingDirectory.resolve(arguments.operands().get(0));
    Diagnostics faults = new Diagnostics();
    String path = workTree.home(file);
    List<Plan> own = new ArrayList<>();
    if (path != null) {
      own.addAll(plans(path, arguments.operands().get(0), true, faults));
      own.removeIf(plan -> !plan.name().span().file().path().equals(path));
    }
    if (own.isEmpty() || faults.hasErrors()) {
      out.write(Files.readAllBytes(file));
    } else {
      own.forEach(plan -> out.print(DiffReport.facts(plan)));
    }
    return ExitStatus.FINE;
  }
}
