package passband.model;

import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * The largest error of a reading or a load: a share of the value and a fixed part.
 *
 * @param relative the share of the value, 0.01 for 1 %
 * @param absolute the fixed part, in SI
 * @param distribution of the error over that half-width
 */
public record Accuracy(Rational relative, Rational absolute, Distribution distribution) {
  /** No error. */
  public static final Accuracy NONE = new Accuracy(Rational.ZERO, Rational.ZERO);

  /** One of which only the limits are known. */
  public Accuracy(Rational relative, Rational absolute) {
    this(relative, absolute, Distribution.RECTANGULAR);
  }

  /** The half-width of the error at a value, never negative. */
  public Real at(Real value) {
    return value.abs().times(Real.of(relative)).plus(Real.of(absolute));
  }
}
