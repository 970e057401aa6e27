package passband.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Series;
import passband.model.Terminal;
import passband.plan.Delivery;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.quantity.Rational;

/**
 * What of a device a procedure tests: its modes on each outlet, low, middle and high. Low is the
 * lowest quarter of the mode's span, high its highest tenth, middle what is between: common
 * practice, no source.
 */
public final class Coverage {
  private static final Rational QUARTER = Rational.of(1, 4);
  private static final Rational TENTH = Rational.of(1, 10);

  /**
   * One mode on one outlet.
   *
   * @param tested whether any point has it
   * @param low the settings tested there, as printed; likewise the others; null for a mode without
   *     settings
   */
  public record Cell(
      Mode mode,
      Outlet outlet,
      boolean tested,
      @Nullable List<String> low,
      @Nullable List<String> middle,
      @Nullable List<String> high) {

    /** The parts of the span that no point is in, in words. */
    public List<String> missing() {
      List<String> missing = new ArrayList<>();
      if (low != null && low.isEmpty()) {
        missing.add("low");
      }
      if (middle != null && middle.isEmpty()) {
        missing.add("middle");
      }
      if (high != null && high.isEmpty()) {
        missing.add("high");
      }
      return missing;
    }
  }

  private Coverage() {}

  /** Every mode on each of its outlets, in the order of the profile. */
  public static List<Cell> cells(Plan plan) {
    List<Cell> cells = new ArrayList<>();
    for (Mode mode : plan.device().modes()) {
      mode.outlets().forEach(outlet -> cells.add(cell(plan, mode, outlet)));
    }
    return cells;
  }

  private static Cell cell(Plan plan, Mode mode, Outlet outlet) {
    List<Tested> points = new ArrayList<>();
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        boolean here = point.mode() == mode && point.outlet() == outlet;
        if (here && run.output() == Delivery.ON && needsOutput(point)) {
          points.add(new Tested(run, point));
        }
      }
    }
    Counted counted = new Counted(plan);
    boolean tested = !counted(points, counted).isEmpty();
    Series span = mode.setting();
    if (span == null || span.lowest().equals(span.highest())) {
      return new Cell(mode, outlet, tested, null, null, null);
    }
    Rational width = span.highest().minus(span.lowest());
    Rational low = span.lowest().plus(width.times(QUARTER));
    Rational high = span.highest().minus(width.times(TENTH));
    return new Cell(
        mode,
        outlet,
        tested,
        settings(points, null, low, counted),
        between(span, low, high) ? settings(points, low, high, counted) : null,
        settings(points, high, null, counted));
  }

  /** Whether a generator that delivers nothing would fail at the point. */
  private static boolean needsOutput(Point point) {
    for (Limit limit : point.limits()) {
      Rational lower = limit.printed().lower();
      if (lower != null && lower.signum() > 0) {
        return true;
      }
    }
    return false;
  }

  /** A point with its run. */
  private record Tested(Stage.Run run, Point point) {}

  /** Of points that test one thing, those whose runs count. */
  private static List<Tested> counted(List<Tested> points, Counted counted) {
    List<Stage.Run> runs = new ArrayList<>();
    points.forEach(one -> runs.add(one.run));
    Predicate<Stage.Run> counts = counted.among(runs);
    List<Tested> left = new ArrayList<>(points);
    left.removeIf(one -> !counts.test(one.run));
    return left;
  }

  /** Whether the mode can be set to anything between. */
  private static boolean between(Series span, Rational low, Rational high) {
    for (Series.Segment segment : span.segments()) {
      Rational value = above(segment, low, high);
      if (inside(value, low, high) && span.contains(value)) {
        return true;
      }
    }
    return false;
  }

  /** The segment's first value above the low one; where it has no steps, one above it. */
  private static Rational above(Series.Segment segment, Rational low, Rational high) {
    if (segment.from().compareTo(low) > 0) {
      return segment.from();
    }
    if (segment.step() == null) {
      return low.plus(segment.to().min(high)).over(Rational.TWO);
    }
    BigInteger steps = low.minus(segment.from()).over(segment.step()).floor();
    return segment
        .from()
        .plus(Rational.of(steps.add(BigInteger.ONE), BigInteger.ONE).times(segment.step()));
  }

  private static boolean inside(Rational value, Rational low, Rational high) {
    return value.compareTo(low) > 0 && value.compareTo(high) < 0;
  }

  /** The settings above one value and below another; the ends themselves count as low and high. */
  private static List<String> settings(
      List<Tested> points, @Nullable Rational above, @Nullable Rational below, Counted counted) {
    List<Tested> there = new ArrayList<>();
    for (Tested one : points) {
      Figure setting = one.point.setting();
      if (setting != null && fits(setting.si(), above, below)) {
        there.add(one);
      }
    }
    Set<Rational> found = new TreeSet<>();
    List<String> texts = new ArrayList<>();
    for (Tested one : counted(there, counted)) {
      Figure setting = one.point.setting();
      if (setting != null && found.add(setting.si())) {
        texts.add(setting.text());
      }
    }
    return texts;
  }

  private static boolean fits(Rational value, @Nullable Rational above, @Nullable Rational below) {
    if (above == null) {
      return below == null || value.compareTo(below) <= 0;
    }
    return below == null ? value.compareTo(above) >= 0 : inside(value, above, below);
  }

  /** The outlets with poles that no run is on and no lead of a run goes to. */
  static List<Outlet> untouched(Plan plan) {
    List<Outlet> untouched = new ArrayList<>(plan.device().outlets());
    untouched.removeIf(Coverage::carriesNothing);
    Counted counted = new Counted(plan);
    untouched.removeIf(
        outlet -> {
          List<Stage.Run> touching = new ArrayList<>(plan.runs());
          touching.removeIf(run -> !touches(run, outlet));
          Predicate<Stage.Run> counts = counted.among(touching);
          touching.removeIf(run -> !counts.test(run));
          return !touching.isEmpty();
        });
    return untouched;
  }

  /** Whether it has nothing but contacts. */
  private static boolean carriesNothing(Outlet outlet) {
    for (Terminal terminal : outlet.terminals()) {
      if (terminal.kind().carriesOutput()) {
        return false;
      }
    }
    return true;
  }

  private static boolean touches(Stage.Run run, Outlet outlet) {
    if (run.outlet() == outlet) {
      return true;
    }
    String owner = outlet.name().text();
    List<Wire> wires = run.setup() == null ? List.of() : run.setup().wires();
    for (Wire wire : wires) {
      if (wire.from().owner().equals(owner) || wire.to().owner().equals(owner)) {
        return true;
      }
    }
    return false;
  }
}
