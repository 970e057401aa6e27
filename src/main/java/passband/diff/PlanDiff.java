package passband.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.plan.Meaning;
import passband.plan.Plan;

/**
 * What changed in meaning between two revisions of a procedure.
 *
 * @param was null for a procedure that is new
 * @param now null for a procedure that is gone
 * @param groups the changes by what brought them about, the group with the worst first
 */
public record PlanDiff(@Nullable Plan was, @Nullable Plan now, List<ChangeGroup> groups) {

  /** Compares the procedures of two libraries by name; those without a change are left out. */
  public static List<PlanDiff> between(List<Plan> was, List<Plan> now) {
    List<PlanDiff> diffs = new ArrayList<>();
    Set<String> names = new TreeSet<>();
    was.forEach(p -> names.add(p.name().text()));
    now.forEach(p -> names.add(p.name().text()));
    for (String name : names) {
      Plan old = find(was, name);
      Plan fresh = find(now, name);
      if (old == null || fresh == null) {
        diffs.add(new PlanDiff(old, fresh, List.of()));
        continue;
      }
      List<ChangeGroup> groups = groups(old, fresh);
      if (!groups.isEmpty()) {
        diffs.add(new PlanDiff(old, fresh, groups));
      }
    }
    return diffs;
  }

  private static @Nullable Plan find(List<Plan> plans, String name) {
    return plans.stream().filter(p -> p.name().text().equals(name)).findFirst().orElse(null);
  }

  /** All changes, what can hurt most first, then in the order of the bench. */
  public List<Change> changes() {
    List<Change> changes = new ArrayList<>();
    groups.forEach(group -> changes.addAll(group.changes()));
    changes.sort(Comparator.comparing(Change::kind));
    return changes;
  }

  private static List<ChangeGroup> groups(Plan was, Plan now) {
    return Comparison.groups(
        was, Meaning.of(was, Renames.between(was, now)).byKey(), now, Meaning.of(now).byKey());
  }

  /** The name of the procedure. */
  public String name() {
    Plan plan = now != null ? now : Objects.requireNonNull(was, "a comparison of nothing");
    return plan.name().text();
  }
}
