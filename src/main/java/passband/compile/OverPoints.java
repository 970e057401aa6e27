package passband.compile;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.limit.ReadQuantity;
import passband.plan.Formula;
import passband.plan.Point;
import passband.plan.Stage;
import passband.syntax.Derive;
import passband.syntax.Variables;

/**
 * Values that are calculated from readings of several points, which differ in one column: {@code
 * max(current) - min(current) over outlet}. The planner gives each of the points the limit; here,
 * when the points are in bench order, the last one keeps it, with the readings of all of them.
 */
final class OverPoints {
  private final Diagnostics diagnostics;

  /** By point, the limits that it keeps. */
  private final Map<Point, List<Limit>> kept = new IdentityHashMap<>();

  private OverPoints(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /** A point that is compared with others, and the limit that it has of the comparison. */
  private record Member(Stage.Run run, Point point, Limit limit) {
    Derive derive() {
      for (Derive derive : run.tree().derives()) {
        if (derive.name().text().equals(limit.quantity())) {
          return derive;
        }
      }
      throw new IllegalStateException("no 'derive' line of " + limit.id());
    }

    /** The identity of what is read of a quantity; null where it is not read. */
    @Nullable String reading(String quantity) {
      for (Limit one : point.limits()) {
        if (one.quantity().equals(quantity) && one.read().over() == null) {
          return one.id();
        }
      }
      for (Point.Reading one : point.readings()) {
        if (one.quantity().equals(quantity)) {
          return one.id();
        }
      }
      return null;
    }
  }

  /** The stages in bench order, with each comparison at the last of its points. */
  static List<Stage> settled(List<Stage> stages, Diagnostics diagnostics) {
    Map<String, List<Member>> groups = new LinkedHashMap<>();
    for (Stage stage : stages) {
      if (stage instanceof Stage.Run run) {
        for (Point point : run.points()) {
          for (Limit limit : point.limits()) {
            if (limit.read().over() != null) {
              groups
                  .computeIfAbsent(limit.id(), id -> new ArrayList<>())
                  .add(new Member(run, point, limit));
            }
          }
        }
      }
    }
    return groups.isEmpty() ? stages : new OverPoints(diagnostics).settled(stages, groups);
  }

  private List<Stage> settled(List<Stage> stages, Map<String, List<Member>> groups) {
    for (List<Member> group : groups.values()) {
      Member last = group.get(group.size() - 1);
      Limit limit = compared(group, last);
      group.forEach(one -> kept.computeIfAbsent(one.point, x -> new ArrayList<>()));
      if (limit != null) {
        kept.computeIfAbsent(last.point, x -> new ArrayList<>()).add(limit);
      }
    }
    List<Stage> settled = new ArrayList<>();
    for (Stage stage : stages) {
      settled.add(stage instanceof Stage.Run run ? settled(run) : stage);
    }
    return List.copyOf(settled);
  }

  private Stage.Run settled(Stage.Run run) {
    List<Point> points = new ArrayList<>();
    for (Point point : run.points()) {
      List<Limit> compared = kept.get(point);
      List<Limit> limits = new ArrayList<>(point.limits());
      if (compared != null) {
        limits.removeIf(limit -> limit.read().over() != null);
        limits.addAll(compared);
      }
      points.add(compared == null ? point : point.withLimits(limits));
    }
    return run.with(new Stage.Course(run.output(), run.before(), points, run.after()));
  }

  /** The limit of the group; null, with the fault said, where there is nothing to compare. */
  private @Nullable Limit compared(List<Member> group, Member last) {
    Derive derive = last.derive();
    ReadQuantity.Over over = last.limit.read().over();
    if (over == null || derive.over() == null || !agree(group, derive)) {
      return null;
    }
    if (group.size() < 2) {
      diagnostics
          .say(
              Code.NOT_COMPARABLE,
              derive.over().span(),
              "%s is the only point: there is nothing to compare over '%s'",
              last.point.id(),
              over.column())
          .note(last.point.span(), "the point is here")
          .hint("a comparison needs two points or more that are the same but for this column");
      return null;
    }
    Map<String, String> parts = parts(group, derive);
    if (parts == null) {
      return null;
    }
    String formula = Formula.text(OverFormula.writtenOut(derive.value(), group.size()));
    List<List<String>> repeats = repeats(derive, over.column(), group.size());
    return last.limit.with(
        last.limit
            .read()
            .over(new ReadQuantity.Over(over.column(), over.group(), formula, parts, repeats)));
  }

  /** The parts that repeat one another, by quantity, where their mean counts. */
  private static List<List<String>> repeats(Derive derive, String column, int points) {
    if (!column.equals(RepeatColumn.NAME) || !OverFormula.hasMean(derive.value())) {
      return List.of();
    }
    List<List<String>> repeats = new ArrayList<>();
    for (String quantity : Variables.of(derive.value())) {
      List<String> names = new ArrayList<>();
      for (int i = 0; i < points; i++) {
        names.add(OverFormula.part(quantity, i));
      }
      repeats.add(names);
    }
    return repeats;
  }

  /** Whether the comparison has one pair of limits, whatever values its points' rows give. */
  private boolean agree(List<Member> group, Derive derive) {
    Member first = group.get(0);
    for (Member one : group) {
      if (!one.limit.accept().equals(first.limit.accept())) {
        diagnostics
            .say(
                Code.NOT_COMPARABLE,
                one.limit.rule().span(),
                "'%s' has other limits at %s than at %s, but compares the two",
                derive.name().text(),
                one.point.id(),
                first.point.id())
            .note(one.point.span(), "the one point is here")
            .note(first.point.span(), "the other is here");
        return false;
      }
    }
    return true;
  }

  /** Null, with the fault said, where a point does not read what is compared. */
  private @Nullable Map<String, String> parts(List<Member> group, Derive derive) {
    Map<String, String> parts = new LinkedHashMap<>();
    for (String quantity : Variables.of(derive.value())) {
      for (int i = 0; i < group.size(); i++) {
        String reading = group.get(i).reading(quantity);
        if (reading == null) {
          diagnostics
              .say(
                  Code.MISSING_ITEM,
                  derive.value().span(),
                  "'%s' compares '%s', which the test does not accept",
                  derive.name().text(),
                  quantity)
              .note(group.get(i).point.span(), "it is not read at this point")
              .hint("add 'accept %s …'", quantity);
          return null;
        }
        parts.put(OverFormula.part(quantity, i), reading);
      }
    }
    return parts;
  }
}
