package passband.detect;

import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;
import passband.quantity.Distribution;

/**
 * How an error of half-width one is spread, for integrals and draws (JCGM 101, 6.4).
 *
 * @param deviation the standard deviation of a normal one; of any other the half-width is the end
 */
record Spread(Distribution.Shape shape, double deviation) {
  /** Beyond so many standard deviations a normal error is left out: 2e-9 of it. */
  private static final double MOST_DEVIATIONS = 6;

  static final Spread RECTANGULAR = of(Distribution.RECTANGULAR);

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  static Spread of(Distribution distribution) {
    return new Spread(distribution.shape(), 1 / distribution.coverage().doubleValue());
  }

  private boolean isNormal() {
    return shape == Distribution.Shape.NORMAL;
  }

  boolean isRectangular() {
    return shape == Distribution.Shape.RECTANGULAR;
  }

  /** Whether the error cannot be greater than its half-width. */
  boolean ends() {
    return !isNormal();
  }

  /** No error is taken to be greater. */
  double reach() {
    return isNormal() ? MOST_DEVIATIONS * deviation : 1;
  }

  /** The probability of an error between two values. */
  double between(double from, double to) {
    if (from >= to) {
      return 0;
    }
    return isNormal()
        ? NORMAL.probability(from / deviation, to / deviation)
        : below(to) - below(from);
  }

  private double below(double value) {
    double x = Math.max(-1, Math.min(1, value));
    return switch (shape) {
      case RECTANGULAR -> (x + 1) / 2;
      case TRIANGULAR -> x < 0 ? (1 + x) * (1 + x) / 2 : 1 - (1 - x) * (1 - x) / 2;
      case U_SHAPED -> 0.5 + Math.asin(x) / Math.PI;
      case NORMAL -> throw new IllegalStateException("a normal error has no end");
    };
  }

  /**
   * The variable over which is integrated: the error itself, or for one with a density that has no
   * bound its angle, of which it is the sine.
   */
  double variable(double error) {
    return shape == Distribution.Shape.U_SHAPED
        ? Math.asin(Math.max(-1, Math.min(1, error)))
        : error;
  }

  /** The error at a value of the variable. */
  double error(double variable) {
    return shape == Distribution.Shape.U_SHAPED ? Math.sin(variable) : variable;
  }

  /** The density over the variable. */
  double density(double variable) {
    return switch (shape) {
      case RECTANGULAR -> 0.5;
      case TRIANGULAR -> 1 - Math.abs(variable);
      case U_SHAPED -> 1 / Math.PI;
      case NORMAL -> NORMAL.density(variable / deviation) / deviation;
    };
  }

  /** One error by chance. */
  double draw(SplittableRandom random) {
    return switch (shape) {
      case RECTANGULAR -> random.nextDouble(-1, 1);
      case TRIANGULAR -> random.nextDouble() - random.nextDouble();
      case U_SHAPED -> Math.sin(random.nextDouble(-Math.PI / 2, Math.PI / 2));
      case NORMAL -> deviation * random.nextGaussian();
    };
  }
}
