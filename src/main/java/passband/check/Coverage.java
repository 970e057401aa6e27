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
import passband.model.SpanPart;
import passband.model.Terminal;
import passband.plan.Delivery;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.quantity.Rational;

/**
 * What of a device a procedure tests: its modes on each outlet, low, middle and high ({@link
 * SpanPart}).
 */
public final class Coverage {
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
    return new Cell(
        mode,
        outlet,
        tested,
        settings(points, span, SpanPart.LOW, counted),
        hasMiddle(span) ? settings(points, span, SpanPart.MIDDLE, counted) : null,
        settings(points, span, SpanPart.HIGH, counted));
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
  private static boolean hasMiddle(Series span) {
    Rational low = SpanPart.lowEnd(span);
    Rational high = SpanPart.highStart(span);
    for (Series.Segment segment : span.segments()) {
      Rational value = above(segment, low, high);
      if (span.contains(value) && SpanPart.of(span, value) == SpanPart.MIDDLE) {
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

  /** The settings in a part of the span. */
  private static List<String> settings(
      List<Tested> points, Series span, SpanPart part, Counted counted) {
    List<Tested> there = new ArrayList<>();
    for (Tested one : points) {
      Figure setting = one.point.setting();
      if (setting != null && SpanPart.of(span, setting.si()) == part) {
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
