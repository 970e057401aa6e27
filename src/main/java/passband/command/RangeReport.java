package passband.command;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.build.SnapshotDiff;
import passband.diff.PlanDiff;
import passband.plan.Plan;

/** Which procedures' meaning changed from one commit to another, through which file; which not. */
final class RangeReport {
  private final SnapshotDiff diff;
  private final List<PlanDiff> diffs;

  RangeReport(SnapshotDiff diff, List<PlanDiff> diffs) {
    this.diff = diff;
    this.diffs = diffs;
  }

  /** As text, a line each. */
  String text() throws IOException {
    List<String> changed = new ArrayList<>();
    for (PlanDiff one : diffs) {
      changed.add(line(one));
    }
    List<String> same = new ArrayList<>();
    for (Plan plan : diff.now().plans()) {
      if (!isChanged(plan)) {
        same.add(line(plan.name().text(), path(plan)));
      }
    }
    StringBuilder out = new StringBuilder();
    out.append(diff.was().name() + " to " + diff.now().name() + "\n");
    list(out, "meaning changed", changed);
    list(out, "same meaning, though a file that they use changed", same);
    list(out, "not compared, because of errors", diff.failed());
    list(out, "not affected: they use no file that changed", diff.unaffected());
    return out.toString();
  }

  private static void list(StringBuilder out, String title, Collection<String> lines) {
    out.append(title + ": " + (lines.isEmpty() ? "none" : lines.size() + "") + "\n");
    lines.forEach(line -> out.append("  " + line + "\n"));
  }

  private boolean isChanged(Plan plan) {
    for (PlanDiff one : diffs) {
      if (one.now() != null && one.now().plan() == plan) {
        return true;
      }
    }
    return false;
  }

  private String line(PlanDiff one) {
    Plan plan = one.subject().plan();
    String state = one.was() == null ? " (new)" : one.now() == null ? " (removed)" : "";
    return plan == null
        ? one.subject().kind() + " " + one.name() + state + ", which no procedure uses"
        : line(one.name() + state, path(plan));
  }

  private String line(String name, String path) {
    return name + ", " + path + through(path);
  }

  private String through(String path) {
    @Nullable TreeSet<String> files = diff.dependents().get(diff.newPath(path));
    List<String> shared = new ArrayList<>(files == null ? List.of() : files);
    boolean own = shared.remove(diff.newPath(path));
    String itself = own ? ", itself changed" : "";
    return itself + (shared.isEmpty() ? "" : ", through " + String.join(", ", shared));
  }

  private static String path(Plan plan) {
    return plan.name().span().file().path();
  }
}
