package passband.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.plan.Plan;

/**
 * What changed in meaning between two revisions of a procedure.
 *
 * @param was null for a procedure that is new
 * @param now null for a procedure that is gone
 * @param changes what can hurt most first, then in the order of the bench
 */
public record PlanDiff(Plan was, Plan now, List<Change> changes) {

  /** Compares the procedures of two libraries by name; those without a change are left out. */
  public static List<PlanDiff> between(List<Plan> was, List<Plan> now) {
    List<PlanDiff> diffs = new ArrayList<>();
    Set<String> names = new LinkedHashSet<>();
    was.forEach(p -> names.add(p.name().text()));
    now.forEach(p -> names.add(p.name().text()));
    for (String name : names.stream().sorted().toList()) {
      Plan old = find(was, name);
      Plan fresh = find(now, name);
      if (old == null || fresh == null || !old.digest().equals(fresh.digest())) {
        diffs.add(
            new PlanDiff(
                old, fresh, old == null || fresh == null ? List.of() : changes(old, fresh)));
      }
    }
    return diffs;
  }

  private static Plan find(List<Plan> plans, String name) {
    return plans.stream().filter(p -> p.name().text().equals(name)).findFirst().orElse(null);
  }

  private static List<Change> changes(Plan was, Plan now) {
    Map<String, Fact> old = Facts.of(was, Names.of(was, now));
    Map<String, Fact> fresh = Facts.of(now, Names.SAME);
    ChangeClassifier judge = new ChangeClassifier(was.decision(), now.decision());
    List<Change> changes = new ArrayList<>();
    if (was.revision().label().equals(now.revision().label())) {
      changes.add(
          new Change(
              Kind.SAME_REVISION,
              "revision " + now.revision().label(),
              was.digest(),
              now.digest(),
              now.tree().revision() == null ? now.name().span() : now.tree().revision().span(),
              List.of("give the new meaning a revision of its own")));
    }
    for (Difference difference : differences(old, fresh)) {
      changes.add(withLimits(judge.judge(difference), difference, old, fresh));
    }
    if (changes.isEmpty()) {
      changes.add(
          new Change(
              Kind.RENAMED,
              "a note of an earlier name",
              was.digest(),
              now.digest(),
              now.name().span(),
              List.of()));
    }
    changes.sort(Comparator.comparing(Change::kind));
    return changes;
  }

  /** A point that came or went is shown by its limits. */
  private static Change withLimits(
      Change change, Difference difference, Map<String, Fact> old, Map<String, Fact> fresh) {
    boolean gone = change.kind() == Kind.POINT_REMOVED;
    boolean came = change.kind() == Kind.POINT_ADDED;
    if (difference.area() != Fact.Area.POINT || !gone && !came) {
      return change;
    }
    String start = "limit/" + change.subject() + "/";
    List<String> limits =
        (gone ? old : fresh)
            .values().stream()
                .filter(f -> f.key().startsWith(start))
                .map(f -> f.key().substring(start.length()) + " " + Facts.limitText(f.limit()))
                .toList();
    String shown = String.join("; ", limits);
    return new Change(
        change.kind(),
        change.subject(),
        gone ? shown : null,
        came ? shown : null,
        change.cause(),
        List.of());
  }

  private static List<Difference> differences(Map<String, Fact> old, Map<String, Fact> fresh) {
    Set<String> keys = new LinkedHashSet<>(fresh.keySet());
    keys.addAll(old.keySet());
    List<Difference> differences = new ArrayList<>();
    for (String key : keys) {
      Fact was = old.get(key);
      Fact now = fresh.get(key);
      boolean same = was != null && now != null && was.value().equals(now.value());
      if (!same && !impliedElsewhere(key, was, now, old, fresh)) {
        differences.add(new Difference(was, now));
      }
    }
    return differences;
  }

  /**
   * Whether another difference says it already: the steps, times and limits of a point that came or
   * went, the parts of a run that did, and an order that is the same but for those.
   */
  private static boolean impliedElsewhere(
      String key, Fact was, Fact now, Map<String, Fact> old, Map<String, Fact> fresh) {
    if (was != null && now != null) {
      return now.area() == Fact.Area.ORDER && sameOrder(was.value(), now.value());
    }
    int slash = key.indexOf('/');
    String rest = slash < 0 ? "" : key.substring(slash + 1);
    return switch (slash < 0 ? "" : key.substring(0, slash)) {
      case "times", "stop", "steps" ->
          old.containsKey("point/" + rest) != fresh.containsKey("point/" + rest);
      case "limit", "reading" -> {
        String point = "point/" + rest.substring(0, rest.lastIndexOf('/'));
        yield old.containsKey(point) != fresh.containsKey(point);
      }
      case "run" -> key.endsWith("/order");
      default -> false;
    };
  }

  private static boolean sameOrder(String was, String now) {
    List<String> old = new ArrayList<>(List.of(was.split(", ")));
    List<String> fresh = new ArrayList<>(List.of(now.split(", ")));
    Set<String> common = new HashSet<>(old);
    common.retainAll(fresh);
    old.retainAll(common);
    fresh.retainAll(common);
    return old.equals(fresh);
  }

  /** The name of the procedure. */
  public String name() {
    return (now == null ? was : now).name().text();
  }
}
