package passband.diff;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.plan.Fact;

/** Outlets and modes that no point tests any more, or that none tested before. */
final class TestedParts {
  /** Where a point's identity has the outlet and the mode. */
  private static final int OUTLET = 1;

  private static final int MODE = 2;

  private final Collection<Fact> was;
  private final Collection<Fact> now;
  private final List<Found> found = new ArrayList<>();

  private TestedParts(Collection<Fact> was, Collection<Fact> now) {
    this.was = was;
    this.now = now;
  }

  /** A change with the difference that brings it about. */
  record Found(Change change, Difference difference) {}

  /**
   * What they are; the names are the same on both sides.
   *
   * @param points that came or went
   */
  static List<Found> changes(List<Difference> points, Collection<Fact> was, Collection<Fact> now) {
    TestedParts parts = new TestedParts(was, now);
    parts.compare(points, OUTLET, "outlet ", Kind.OUTLET_UNTESTED);
    parts.compare(points, MODE, "mode ", Kind.MODE_UNTESTED);
    return parts.found;
  }

  private void compare(List<Difference> points, int part, String what, Kind untested) {
    Map<String, Integer> old = counts(was, part);
    Map<String, Integer> fresh = counts(now, part);
    Map<String, Difference> first = new LinkedHashMap<>();
    points.forEach(point -> first.putIfAbsent(name(point.fact(), part), point));
    first.forEach(
        (name, point) -> {
          boolean gone = old.containsKey(name) && !fresh.containsKey(name);
          boolean came = fresh.containsKey(name) && !old.containsKey(name);
          if (!name.equals("-") && (gone || came)) {
            String tested = count(gone ? old : fresh, name);
            Kind kind = gone ? untested : Kind.POINT_ADDED;
            Change change =
                Change.of(
                    kind, what + name, gone ? tested : null, gone ? null : tested, point.fact());
            found.add(new Found(change, point));
          }
        });
  }

  private static String count(Map<String, Integer> counts, String name) {
    int points = counts.getOrDefault(name, 0);
    return points == 1 ? "1 point" : points + " points";
  }

  private static Map<String, Integer> counts(Collection<Fact> facts, int part) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Fact fact : facts) {
      if (fact.area() == Fact.Area.POINT) {
        counts.merge(name(fact, part), 1, Integer::sum);
      }
    }
    return counts;
  }

  /** A part of the point's identity, {@code TEST/OUTLET/MODE/…}. */
  private static String name(Fact point, int part) {
    String[] parts = point.subject().split("/", -1);
    return part < parts.length ? parts[part] : "-";
  }
}
