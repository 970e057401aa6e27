package passband.detect;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Where two errors lie, a convex polygon, while all others are given. */
final class Polygon implements Region {
  private final double[] given;
  private final int across;
  private final int along;

  /** By corner. */
  private final double[] x;

  private final double[] y;

  private Polygon(double[] given, int across, int along, double[] x, double[] y) {
    this.given = given;
    this.across = across;
    this.along = along;
    this.x = x;
    this.y = y;
  }

  /**
   * The part of a box over two errors.
   *
   * @param given all errors; those of the two do not count
   * @param across the place of one
   * @param along the place of the other
   */
  static Polygon of(double[] given, int across, int along, Box box) {
    double left = box.least()[across];
    double right = box.most()[across];
    double low = box.least()[along];
    double high = box.most()[along];
    return new Polygon(
        given.clone(),
        across,
        along,
        new double[] {left, right, right, left},
        new double[] {low, low, high, high});
  }

  @Override
  public Arithmetic.Between over(double constant, double[] factors) {
    double rest = constant;
    for (int place = 0; place < factors.length; place++) {
      if (place != across && place != along && factors[place] != 0) {
        rest += factors[place] * given[place];
      }
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      double sum = factors[across] * x[i] + factors[along] * y[i];
      low = Math.min(low, sum);
      high = Math.max(high, sum);
    }
    return new Arithmetic.Between(rest + low, rest + high);
  }

  /** The part where such a sum is not below zero; null where there is none. */
  @Nullable Polygon above(double constant, double[] factors) {
    double rest = constant;
    for (int place = 0; place < factors.length; place++) {
      if (place != across && place != along && factors[place] != 0) {
        rest += factors[place] * given[place];
      }
    }
    double[] newX = new double[x.length + 1];
    double[] newY = new double[x.length + 1];
    int count = 0;
    double before = rest + factors[across] * x[x.length - 1] + factors[along] * y[x.length - 1];
    for (int i = 0; i < x.length; i++) {
      int last = i == 0 ? x.length - 1 : i - 1;
      double here = rest + factors[across] * x[i] + factors[along] * y[i];
      if (before < 0 != here < 0 && count < newX.length) {
        double share = before / (before - here);
        newX[count] = x[last] + share * (x[i] - x[last]);
        newY[count] = y[last] + share * (y[i] - y[last]);
        count++;
      }
      if (here >= 0 && count < newX.length) {
        newX[count] = x[i];
        newY[count] = y[i];
        count++;
      }
      before = here;
    }
    return count < 3
        ? null
        : new Polygon(given, across, along, Arrays.copyOf(newX, count), Arrays.copyOf(newY, count));
  }

  /** The corners' errors along, in order. */
  double[] corners() {
    double[] corners = y.clone();
    Arrays.sort(corners);
    return corners;
  }

  double area() {
    double twice = 0;
    for (int i = 0; i < x.length; i++) {
      int last = i == 0 ? x.length - 1 : i - 1;
      twice += x[last] * y[i] - x[i] * y[last];
    }
    return twice / 2;
  }

  /** The probability of an error across it, while the one along it is given. */
  double across(Spread spread, double at) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      int last = i == 0 ? x.length - 1 : i - 1;
      if (y[last] <= at != y[i] <= at) {
        double here = x[last] + (at - y[last]) / (y[i] - y[last]) * (x[i] - x[last]);
        left = Math.min(left, here);
        right = Math.max(right, here);
      }
    }
    return spread.between(left, right);
  }
}
