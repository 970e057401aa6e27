package passband.judge;

import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * A straight line of least squares, for values whose scatter is the same everywhere (JCGM 100, H.3;
 * M. G. Natrella, Experimental Statistics, NBS Handbook 91, section 5-4.1).
 *
 * @param start its value at zero
 * @param slope what it rises by a unit
 * @param count of the points, two at least
 * @param meanX of their places
 * @param squares of the places about their mean, added up; above zero
 * @param residual the standard deviation of the points about the line; NaN of two points, which say
 *     nothing of it
 */
public record StraightLine(
    double start, double slope, int count, double meanX, double squares, double residual) {
  /** With so many points the scatter about the line is known. */
  private static final int LEAST = 3;

  /** What binary fractions leave of points that lie on a line, as a share of their squares. */
  private static final double DUST = 1e-28;

  /** The line through points; null when there are not two different places. */
  public static @Nullable StraightLine fit(List<Double> x, List<Double> y) {
    int n = x.size();
    double meanX = x.stream().mapToDouble(v -> v).average().orElse(0);
    double meanY = y.stream().mapToDouble(v -> v).average().orElse(0);
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < n; i++) {
      xx += (x.get(i) - meanX) * (x.get(i) - meanX);
      xy += (x.get(i) - meanX) * (y.get(i) - meanY);
    }
    if (xx == 0) {
      return null;
    }
    double slope = xy / xx;
    double rest = 0;
    double all = 0;
    for (int i = 0; i < n; i++) {
      double off = y.get(i) - meanY - slope * (x.get(i) - meanX);
      rest += off * off;
      all += y.get(i) * y.get(i);
    }
    double scatter = rest <= DUST * all ? 0 : rest;
    double residual = n < LEAST ? Double.NaN : Math.sqrt(scatter / (n - 2));
    return new StraightLine(meanY - slope * meanX, slope, n, meanX, xx, residual);
  }

  /** Its value at a place. */
  public double at(double x) {
    return start + slope * x;
  }

  /** The standard error of the slope; NaN of two points. */
  public double slopeError() {
    return residual / Math.sqrt(squares);
  }

  /** The standard error of the value at zero; NaN of two points. */
  public double startError() {
    return error(0, 0);
  }

  /** The standard error of the line's own value at a place; NaN of two points. */
  public double error(double x) {
    return error(x, 0);
  }

  /** The standard error of one further value at a place; NaN of two points. */
  public double predictionError(double x) {
    return error(x, 1);
  }

  private double error(double x, double own) {
    return residual * widening(x, own);
  }

  /** The standard error of one further value at a place, for a scatter that is known. */
  double predictionError(double x, double scatter) {
    return scatter * widening(x, 1);
  }

  private double widening(double x, double own) {
    return Math.sqrt(own + 1.0 / count + (x - meanX) * (x - meanX) / squares);
  }

  /**
   * Half the interval in which one further value at a place lies with a probability, by Student's t
   * for two degrees of freedom fewer than there are points; NaN of two points.
   */
  public double predictionHalfWidth(double x, double probability) {
    return student(probability) * predictionError(x);
  }

  /** Student's factor of that interval; NaN of two points. */
  double student(double probability) {
    return count < LEAST
        ? Double.NaN
        : TDistribution.of(count - 2.0).inverseCumulativeProbability((1 + probability) / 2);
  }
}
