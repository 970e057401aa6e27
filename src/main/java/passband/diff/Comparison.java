package passband.diff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.plan.Fact;
import passband.plan.FactText;
import passband.plan.Plan;

/** What changed between two sides, from their facts to the groups that a reviewer is told of. */
final class Comparison {
  private final Map<String, Fact> old;
  private final Map<String, Fact> fresh;
  private final ChangeClassifier judge;
  private final Causes causes;

  /** Differences that say nothing by themselves. */
  private final Set<String> silent = new HashSet<>();

  private Comparison(
      @Nullable Plan was, Map<String, Fact> old, @Nullable Plan now, Map<String, Fact> fresh) {
    this.old = old;
    this.fresh = fresh;
    this.judge = new ChangeClassifier(was, now);
    this.causes = new Causes(was, old.values(), now, fresh.values());
  }

  /**
   * The groups, the one with the worst first; empty exactly where every fact is the same.
   *
   * @param was null, likewise {@code now}, for a profile or a rule by itself
   * @param old the facts by key, by the names that they have now
   * @param fresh the facts by key
   */
  static List<ChangeGroup> groups(
      @Nullable Plan was, Map<String, Fact> old, @Nullable Plan now, Map<String, Fact> fresh) {
    List<Difference> differences = Differences.between(old, fresh);
    if (differences.isEmpty()) {
      return List.of();
    }
    Comparison comparison = new Comparison(was, old, now, fresh);
    List<Difference> points = new ArrayList<>();
    for (Difference difference : differences) {
      comparison.add(difference);
      if (difference.area() == Fact.Area.POINT && !difference.isChange()) {
        points.add(difference);
      }
    }
    if (was != null && now != null) {
      comparison.acceptances(new AcceptanceClassifier(was, now));
      TestedParts.changes(points, old.values(), fresh.values())
          .forEach(one -> comparison.causes.add(one.change(), one.difference(), Aspect.ITSELF));
      if (was.revision().label().equals(now.revision().label())) {
        comparison.causes.add(sameRevision(was, now));
      }
    }
    return comparison.causes.groups();
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

  private void add(Difference difference) {
    Change change = judge.judge(difference);
    if (change != null) {
      causes.add(withLimits(change, difference), difference, Aspect.ITSELF);
    } else {
      silent.add(difference.fact().key());
    }
  }

  // ---- acceptance ----

  /** Of every limit that is on both sides, whether the limit itself changed or not. */
  private void acceptances(AcceptanceClassifier acceptance) {
    for (Fact after : fresh.values()) {
      Fact before = old.get(after.key());
      if (after.limit() != null && before != null && before.limit() != null) {
        Difference both = new Difference(before, after);
        boolean told = told(acceptance.guard(before, after), both, Aspect.DECISION);
        told |= told(acceptance.uncertainty(before, after), both, Aspect.UNCERTAINTY);
        if (!told && silent.contains(after.key())) {
          causes.add(accepted(before, after), both, Aspect.DECISION);
        }
      }
    }
  }

  private boolean told(@Nullable Change change, Difference difference, Aspect aspect) {
    if (change != null) {
      causes.add(change, difference, aspect);
    }
    return change != null;
  }

  /** The acceptance differs, and neither the decision rule nor the uncertainty says why. */
  private static Change accepted(Fact before, Fact after) {
    Limit old = Objects.requireNonNull(before.limit());
    Limit fresh = Objects.requireNonNull(after.limit());
    Kind moved = LimitChangeClassifier.moved(old.accept(), fresh.accept());
    boolean tighter = moved == Kind.TIGHTENED || moved == null;
    return new Change(
        tighter ? Kind.GUARD_MORE : Kind.GUARD_LESS,
        after.subject(),
        FactText.limit(old),
        FactText.limit(fresh),
        after.span(),
        List.of(),
        Ends.of(before),
        Ends.of(after));
  }

  // ---- points ----

  /** A point that came or went is shown by its limits. */
  private Change withLimits(Change change, Difference difference) {
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
}
