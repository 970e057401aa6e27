package passband.detect;

import java.util.TreeSet;

/**
 * Over the last outer error, with the others given. What a reading leaves of its inner error has
 * ends that are linear in it; between the kinks of the greatest lower and the least upper ends the
 * integrand is smooth, and for rectangular errors a polynomial that four nodes integrate exactly.
 */
final class Pieces {
  /** Panels of a piece where the integrand is no polynomial. */
  private static final int PANELS_A_PIECE = 24;

  private final Component of;
  private final Spread spread;
  private final Envelope[] lower;
  private final Envelope[] upper;
  private final int last;

  Pieces(Component of, double[] errors) {
    this.of = of;
    this.last = errors.length - 1;
    this.spread = of.outerSpreads[last];
    this.lower = new Envelope[of.innerSpreads.length];
    this.upper = new Envelope[of.innerSpreads.length];
    for (int i = 0; i < lower.length; i++) {
      lower[i] = new Envelope(of.readings.size() + 1, 1);
      upper[i] = new Envelope(of.readings.size() + 1, -1);
      lower[i].add(-of.innerSpreads[i].reach(), 0);
      upper[i].add(of.innerSpreads[i].reach(), 0);
    }
    for (int i = 0; i < of.readings.size(); i++) {
      if (of.innerOf[i] >= 0) {
        add(of.readings.get(i), of.outerOf[i], of.innerOf[i], errors);
      }
    }
  }

  private void add(Observation one, int outerIndex, int innerIndex, double[] errors) {
    double half = outerIndex < 0 ? 0 : of.outerTerm(one).half();
    double at =
        one.truth() + (outerIndex == last ? 0 : half * (half == 0 ? 0 : errors[outerIndex]));
    double slope = outerIndex == last ? half : 0;
    double divisor = of.innerTerm(one).half();
    double low = one.window().low();
    double high = one.window().high();
    (divisor > 0 ? lower : upper)[innerIndex].add((low - at) / divisor, -slope / divisor);
    (divisor > 0 ? upper : lower)[innerIndex].add((high - at) / divisor, -slope / divisor);
  }

  double integral() {
    double[] ends = ends();
    boolean polynomial = spread.isRectangular();
    for (Spread one : of.innerSpreads) {
      polynomial &= one.isRectangular();
    }
    int panels = polynomial && lower.length < 8 ? 1 : PANELS_A_PIECE;
    double sum = 0;
    for (int i = 0; i + 1 < ends.length; i++) {
      sum += piece(ends[i], ends[i + 1], panels);
    }
    return sum;
  }

  /** The ends of the pieces: the box's, and every kink. */
  private double[] ends() {
    double low = of.from[last];
    double high = of.to[last];
    TreeSet<Double> ends = new TreeSet<>();
    if (high > low) {
      ends.add(low);
      ends.add(high);
      for (int i = 0; i < lower.length; i++) {
        lower[i].kinks(low, high, ends);
        upper[i].kinks(low, high, ends);
      }
    }
    double[] sorted = new double[ends.size()];
    int at = 0;
    for (double end : ends) {
      sorted[at++] = end;
    }
    return sorted;
  }

  /** In a piece every interval's width is linear: where one has none, nothing passes. */
  private double piece(double pieceFrom, double pieceTo, int panels) {
    double low = pieceFrom;
    double high = pieceTo;
    for (int i = 0; i < lower.length; i++) {
      double atLow = upper[i].at(pieceFrom) - lower[i].at(pieceFrom);
      double atHigh = upper[i].at(pieceTo) - lower[i].at(pieceTo);
      if (atLow <= 0 && atHigh <= 0) {
        return 0;
      }
      double zero = pieceFrom + (pieceTo - pieceFrom) * atLow / (atLow - atHigh);
      if (atLow < 0) {
        low = Math.max(low, zero);
      } else if (atHigh < 0) {
        high = Math.min(high, zero);
      }
    }
    if (high <= low) {
      return 0;
    }
    double first = spread.variable(low);
    double half = (spread.variable(high) - first) / panels / 2;
    double sum = 0;
    for (int panel = 0; panel < panels; panel++) {
      double middle = first + (2 * panel + 1) * half;
      for (int node = 0; node < Component.NODES.length; node++) {
        double variable = middle + half * Component.NODES[node];
        sum +=
            half
                * Component.WEIGHTS[node]
                * spread.density(variable)
                * passing(spread.error(variable));
      }
    }
    return sum;
  }

  private double passing(double error) {
    double passing = 1;
    for (int i = 0; i < lower.length && passing > 0; i++) {
      passing *= of.innerSpreads[i].between(lower[i].at(error), upper[i].at(error));
    }
    return passing;
  }
}
