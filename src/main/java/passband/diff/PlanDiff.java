package passband.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.plan.Fact;
import passband.plan.FactText;
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
    Map<String, Fact> old = Meaning.of(was, Renames.between(was, now)).byKey();
    Map<String, Fact> fresh = Meaning.of(now).byKey();
    List<Difference> differences = Differences.between(old, fresh);
    if (differences.isEmpty()) {
      return List.of();
    }
    ChangeClassifier judge = new ChangeClassifier(was.decision(), now.decision());
    Causes causes = new Causes(was, old.values(), now, fresh.values());
    for (Difference difference : differences) {
      causes.add(withLimits(judge.judge(difference), difference, old, fresh), difference);
    }
    if (was.revision().label().equals(now.revision().label())) {
      causes.add(sameRevision(was, now));
    }
    return causes.groups();
  }

  private static Change sameRevision(Plan was, Plan now) {
    return new Change(
        Kind.SAME_REVISION,
        "revision " + now.revision().label(),
        was.digest(),
        now.digest(),
        now.source().revision(),
        List.of(),
        List.of(),
        List.of());
  }

  /** A point that came or went is shown by its limits. */
  private static Change withLimits(
      Change change, Difference difference, Map<String, Fact> old, Map<String, Fact> fresh) {
    if (difference.area() != Fact.Area.POINT || difference.isChange()) {
      return change;
    }
    boolean gone = difference.now() == null;
    List<Fact> limits = limits(difference.fact().key(), gone ? old : fresh);
    List<Ends> ends = limits.stream().flatMap(fact -> Ends.of(fact).stream()).toList();
    String shown = shown(limits);
    return new Change(
        change.kind(),
        change.subject(),
        gone ? shown : null,
        gone ? null : shown,
        change.cause(),
        List.of(),
        gone ? ends : List.of(),
        gone ? List.of() : ends);
  }

  private static List<Fact> limits(String point, Map<String, Fact> facts) {
    return facts.values().stream()
        .filter(fact -> fact.limit() != null && point.equals(fact.owner()))
        .toList();
  }

  private static String shown(List<Fact> limits) {
    List<String> shown = new ArrayList<>();
    for (Fact fact : limits) {
      Limit limit = Objects.requireNonNull(fact.limit());
      shown.add(limit.quantity() + " " + FactText.limit(limit));
    }
    return String.join("; ", shown);
  }

  /** The name of the procedure. */
  public String name() {
    Plan plan = now != null ? now : Objects.requireNonNull(was, "a comparison of nothing");
    return plan.name().text();
  }
}
