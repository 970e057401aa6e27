package passband.model;

import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * The largest error of a reading or a load: a share of the value and a fixed part.
 *
 * @param relative the share of the value, 0.01 for 1 %
 * @param absolute the fixed part, in SI
 */
public record Accuracy(Rational relative, Rational absolute) {
  /** No error. */
  public static final Accuracy NONE = new Accuracy(Rational.ZERO, Rational.ZERO);

  /** The half-width of the error at a value, never negative. */
  public Real at(Real value) {
    return value.abs().times(Real.of(relative)).plus(Real.of(absolute));
  }
}
