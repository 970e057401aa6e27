package passband.detect;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.limit.Bounds;
import passband.model.Instruments;
import passband.quantity.Real;

/**
 * What error of the gain is caught in a mode, on an outlet, into a load: its operating
 * characteristic. Gains are of the power, as a share: −0.21 is 21 % too little.
 *
 * @param load as printed; empty for none
 * @param rows how many readings take part
 * @param low the least shortage that is caught with 95 %, below zero; null where none is
 * @param high the least excess that is caught with 95 %; null where none is
 * @param shared the same as {@code low} if all ranges of the instrument shared one error
 * @param toleranceLow the narrowest tolerance at these readings, of the mode where it has one,
 *     below the nominal, below zero; infinite where that side is open
 * @param toleranceHigh the narrowest above the nominal; infinite where that side is open
 * @param expanded the greatest expanded uncertainty, as a share of the power
 */
public record Gain(
    Place place,
    String load,
    int rows,
    @Nullable Double low,
    @Nullable Double high,
    @Nullable Double shared,
    double toleranceLow,
    double toleranceHigh,
    double expanded,
    List<At> curve) {

  /**
   * A point of the curve.
   *
   * @param shared the power if all ranges shared one error
   */
  public record At(double gain, double power, double shared) {
    private boolean catches(boolean ifShared) {
      return (ifShared ? shared : power) >= Outcome.SURE_ENOUGH;
    }
  }

  private static final double HIGHEST = 4;

  /** To how much of the power the least error is found. */
  private static final double NEAR_ENOUGH = 2e-5;

  private static final int CURVE_POINTS = 48;

  static List<Gain> of(SheetLines lines, Kernel kernel, boolean curves) {
    List<Gain> gains = new ArrayList<>();
    read(lines).values().forEach(some -> gains.add(of(some, kernel, curves)));
    return gains;
  }

  /** What instruments read of the output, by mode, outlet and load. */
  static Map<String, List<SheetLine>> read(SheetLines lines) {
    List<SheetLine> read = lines.output();
    read.removeIf(line -> Instruments.DEVICE.equals(line.limit().read().by()));
    return SheetLines.byLoad(read);
  }

  static Gain of(List<SheetLine> some, Kernel kernel, boolean curves) {
    SheetLine first = some.get(0);
    double toleranceLow = tolerance(some, false);
    double toleranceHigh = tolerance(some, true);
    boolean several = ranges(some) > 1;
    List<At> curve =
        curves
            ? curve(some, kernel, Math.max(-toleranceLow, toleranceHigh), several)
            : List.<At>of();
    Double low = least(some, kernel, -1, false, curve);
    return new Gain(
        Place.of(first),
        first.loadText(),
        some.size(),
        low,
        least(some, kernel, 1, false, curve),
        !curves ? null : several ? least(some, kernel, -1, true, curve) : low,
        toleranceLow,
        toleranceHigh,
        expanded(some),
        curve);
  }

  /** The narrowest at some readings, as a share of the power; infinite where the side is open. */
  static double tolerance(List<SheetLine> some, boolean above) {
    double narrowest = above ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    for (SheetLine line : some) {
      double end = end(line, above);
      narrowest = above ? Math.min(narrowest, end) : Math.max(narrowest, end);
    }
    return narrowest;
  }

  /** The greatest expanded uncertainty at the nominal values of some readings. */
  private static double expanded(List<SheetLine> some) {
    double greatest = 0;
    for (SheetLine line : some) {
      greatest = Math.max(greatest, line.expandedShare());
    }
    return greatest;
  }

  private static double end(SheetLine line, boolean above) {
    Real end = limit(line, above);
    double open = above ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    return end == null ? open : line.factor(end.doubleValue()) - 1;
  }

  /** The mode's limit where it has one, else the rule's; null where that side is open. */
  static @Nullable Real limit(SheetLine line, boolean above) {
    Bounds ofMode = line.limit().ofMode();
    Bounds bounds = ofMode == null ? line.limit().exact() : ofMode;
    return above ? bounds.upper() : bounds.lower();
  }

  /** The least error on one side that is caught with 95 %; null where none is. */
  static @Nullable Double least(List<SheetLine> some, Kernel kernel, int side, boolean shared) {
    return least(some, kernel, side, shared, List.of());
  }

  /**
   * @param curve points between which it is looked for first
   */
  private static @Nullable Double least(
      List<SheetLine> some, Kernel kernel, int side, boolean shared, List<At> curve) {
    double far = side < 0 ? -1 : HIGHEST;
    double near = 0;
    for (At one : curve) {
      boolean nearer = side * one.gain > 0 && side * one.gain < side * far;
      far = nearer && one.catches(shared) ? one.gain : far;
    }
    for (At one : curve) {
      boolean between = side * one.gain > side * near && side * one.gain < side * far;
      near = between ? one.gain : near;
    }
    if (power(some, kernel, far, shared) < Outcome.SURE_ENOUGH) {
      return null;
    }
    while (Math.abs(far - near) > NEAR_ENOUGH) {
      double middle = (near + far) / 2;
      if (power(some, kernel, middle, shared) < Outcome.SURE_ENOUGH) {
        near = middle;
      } else {
        far = middle;
      }
    }
    return far;
  }

  /**
   * @param shared whether all ranges share one error
   */
  static double power(List<SheetLine> some, Kernel kernel, double gain, boolean shared) {
    Visit visit = new Visit();
    for (SheetLine line : withParts(some)) {
      visit.add(line, line.at(line.scaled(1 + gain)));
    }
    return (shared ? visit.failingTogether(kernel) : visit.failing(kernel)).value();
  }

  /** With what is read at the same points for a calculation, without limits of its own. */
  static Set<SheetLine> withParts(List<SheetLine> some) {
    Set<SheetLine> all = new LinkedHashSet<>(some);
    for (SheetLine line : some) {
      for (WorkedOut value : line.uses()) {
        for (SheetLine part : value.parts()) {
          boolean moves = part.kind() == SheetLine.Kind.OUTPUT && part.hasNominal();
          if (moves && !part.isJudged() && part.point() == line.point()) {
            all.add(part);
          }
        }
      }
    }
    return all;
  }

  /** In how many ranges of instruments is read. */
  private static int ranges(List<SheetLine> some) {
    Set<String> ranges = new HashSet<>();
    for (SheetLine line : withParts(some)) {
      ErrorTerm own = line.at(line.nominal()).own();
      if (own.half() != 0) {
        ranges.add(own.key());
      }
    }
    return ranges.size();
  }

  private static List<At> curve(
      List<SheetLine> some, Kernel kernel, double tolerance, boolean several) {
    double reach = 1.6 * (tolerance > 0 && tolerance < 1 ? tolerance : 0.2);
    List<At> curve = new ArrayList<>();
    for (int i = 0; i <= CURVE_POINTS; i++) {
      double gain = Math.max(-1, reach * (2.0 * i / CURVE_POINTS - 1));
      double power = power(some, kernel, gain, false);
      curve.add(new At(gain, power, several ? power(some, kernel, gain, true) : power));
    }
    return curve;
  }
}
