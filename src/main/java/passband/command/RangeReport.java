package passband.command;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.build.SnapshotDiff;
import passband.diff.PlanDiff;
import passband.plan.Plan;
import passband.render.RangeLists;

/** Which procedures' meaning changed from one commit to another, through which file; which not. */
final class RangeReport {
  private final SnapshotDiff diff;
  private final List<PlanDiff> diffs;

  RangeReport(SnapshotDiff diff, List<PlanDiff> diffs) {
    this.diff = diff;
    this.diffs = diffs;
  }

  RangeLists lists() throws IOException {
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
    return new RangeLists(
        diff.was().name(),
        diff.now().name(),
        changed,
        same,
        List.copyOf(diff.failed()),
        List.copyOf(diff.unaffected()));
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
