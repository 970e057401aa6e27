package passband.detect;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.model.Series;
import passband.model.SpanPart;
import passband.model.Terminal;
import passband.plan.Point;
import passband.plan.Stage.Option;
import passband.plan.Stage.Run;
import passband.quantity.Rational;

/**
 * Rows that add nothing against the catalogue: taken out one after the other as long as no fault is
 * caught less, since of two rows that do the same work each alone seems idle. Never a mode's least
 * or greatest tested setting, nor the only row of a part of its span, a test, an outlet, a contact
 * or a load. What is done after a choice stands in for nothing that is always done.
 */
final class Idle {
  /** A loss of power up to this counts as none. */
  static final double NOTHING = 0.001;

  private final Kernel kernel;
  private final Map<Instance, Double> whole = new IdentityHashMap<>();
  private final Map<Point, List<Instance>> byPoint = new IdentityHashMap<>();
  private final Set<Point> gone = Collections.newSetFromMap(new IdentityHashMap<>());

  private Idle(List<Instance> instances, Kernel kernel) {
    this.kernel = kernel;
    for (Instance instance : instances) {
      // A slip in a row cannot happen where there is no row; of activations every one counts.
      boolean slip =
          instance.fault().over().equals("row")
              || instance.fault().effect().startsWith("error-")
              || instance.fault().effect().equals("intermittent");
      if (!slip && !instance.changes().isEmpty()) {
        whole.put(instance, instance.failing(kernel).value());
        for (Instance.Change change : instance.changes()) {
          byPoint.computeIfAbsent(change.line().point(), p -> new ArrayList<>()).add(instance);
        }
      }
    }
  }

  static List<Detection.IdleRow> of(SheetLines lines, List<Instance> instances, Kernel kernel) {
    Idle idle = new Idle(instances, kernel);
    List<Point> candidates = candidates(lines);
    List<Detection.IdleRow> rows = new ArrayList<>();
    for (Point point : candidates) {
      Run run = run(point, lines);
      if (isNeeded(point, run, lines, idle.gone)) {
        continue;
      }
      double alone = idle.loss(point, run, Set.of());
      if (alone <= NOTHING && idle.loss(point, run, idle.gone) <= NOTHING) {
        idle.gone.add(point);
        rows.add(0, new Detection.IdleRow(point.id(), alone));
      }
    }
    return rows;
  }

  /** Rows of output, the last of the sheet first: the first row of two twins stays. */
  private static List<Point> candidates(SheetLines lines) {
    List<Point> points = new ArrayList<>();
    for (SheetLine line : lines.all()) {
      boolean output = line.kind() == SheetLine.Kind.OUTPUT || line.kind() == SheetLine.Kind.PEAK;
      if (output && (points.isEmpty() || points.get(0) != line.point())) {
        points.add(0, line.point());
      }
    }
    return points;
  }

  /** Of what is caught wherever the row is read. */
  private double loss(Point point, Run run, Set<Point> before) {
    double worst = 0;
    for (Instance instance : byPoint.getOrDefault(point, List.of())) {
      Instance there = instance.only(line -> isDoneWith(line.run(), run));
      double all =
          there.changes().size() == instance.changes().size()
              ? Objects.requireNonNull(whole.get(instance), "every instance has its power")
              : there.failing(kernel).value();
      if (all > worst) {
        Instance rest = there.only(line -> line.point() != point && !before.contains(line.point()));
        worst = Math.max(worst, all - rest.failing(kernel).value());
      }
      if (worst > NOTHING) {
        return worst;
      }
    }
    return worst;
  }

  private static boolean isNeeded(Point point, Run run, SheetLines lines, Set<Point> gone) {
    boolean lesser = false;
    boolean greater = false;
    boolean outlet = false;
    boolean contact = false;
    boolean load = false;
    boolean test = false;
    boolean part = part(point) == null;
    for (SheetLine line : lines.all()) {
      Point other = line.point();
      if (other == point || gone.contains(other) || !isDoneWith(line.run(), run)) {
        continue;
      }
      boolean samePlace =
          Objects.equals(other.mode(), point.mode()) && other.outlet() == point.outlet();
      if (samePlace && other.setting() != null && point.setting() != null) {
        int order = other.setting().si().compareTo(point.setting().si());
        lesser |= order < 0;
        greater |= order > 0;
      }
      part |= samePlace && needsOutput(line) && part(other) == part(point);
      test |= line.run() == run;
      outlet |= other.outlet() == point.outlet();
      contact |= same(LimitEffects.contact(other), LimitEffects.contact(point));
      load |= samePlace && Objects.equals(other.loadText(), point.loadText());
    }
    return !(lesser && greater && outlet && contact && load && test && part);
  }

  /** Where in the span of its mode it lies; null without a setting. */
  private static @Nullable SpanPart part(Point point) {
    Series span = point.mode() == null ? null : point.mode().setting();
    return span == null || point.setting() == null ? null : SpanPart.of(span, point.setting().si());
  }

  private static boolean needsOutput(SheetLine line) {
    Rational lower = line.limit().printed().lower();
    return lower != null && lower.signum() > 0;
  }

  /** Whether one run is done wherever the other is, whatever is chosen. */
  private static boolean isDoneWith(Run one, Run other) {
    Option option = one.when().condition().option();
    return option == null || option.equals(other.when().condition().option());
  }

  private static Run run(Point point, SheetLines lines) {
    for (SheetLine line : lines.all()) {
      if (line.point() == point) {
        return line.run();
      }
    }
    throw new IllegalArgumentException(point.id());
  }

  private static boolean same(@Nullable Terminal a, @Nullable Terminal b) {
    return a == null ? b == null : b != null && a.same(b);
  }
}
