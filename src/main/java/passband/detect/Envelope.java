package passband.detect;

import java.util.Set;

/** The greatest, or the least, of several straight lines at each place. */
final class Envelope {
  private final double[] constants;
  private final double[] slopes;
  private final int side;
  private int size;

  /**
   * @param most how many lines are added at most
   * @param side 1 for the greatest, −1 for the least
   */
  Envelope(int most, int side) {
    this.constants = new double[most];
    this.slopes = new double[most];
    this.side = side;
  }

  /** One more line; one without an end is left out. */
  void add(double constant, double slope) {
    if (!Double.isInfinite(constant)) {
      constants[size] = constant;
      slopes[size] = slope;
      size++;
    }
  }

  double at(double x) {
    double best = constants[0] + slopes[0] * x;
    for (int i = 1; i < size; i++) {
      double other = constants[i] + slopes[i] * x;
      best = side > 0 ? Math.max(best, other) : Math.min(best, other);
    }
    return best;
  }

  /** Where one line takes over from another between two places. */
  void kinks(double from, double to, Set<Double> kinks) {
    double x = from;
    int line = best(from);
    for (int taken = 0; taken < size; taken++) {
      int next = -1;
      double nearest = to;
      for (int i = 0; i < size; i++) {
        double steeper = side * (slopes[i] - slopes[line]);
        if (steeper > 0) {
          double crossing = (constants[line] - constants[i]) / (slopes[i] - slopes[line]);
          if (crossing > x && crossing < nearest) {
            nearest = crossing;
            next = i;
          }
        }
      }
      if (next < 0) {
        return;
      }
      kinks.add(nearest);
      x = nearest;
      line = next;
    }
  }

  /** The line that governs just after a place. */
  private int best(double x) {
    int best = 0;
    for (int i = 1; i < size; i++) {
      double more = side * (constants[i] + slopes[i] * x - constants[best] - slopes[best] * x);
      if (more > 0 || (more == 0 && side * (slopes[i] - slopes[best]) > 0)) {
        best = i;
      }
    }
    return best;
  }
}
