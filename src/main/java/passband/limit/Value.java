package passband.limit;

import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Real;

/** An exact value in SI with its dimension. */
public record Value(Real real, Dimension dimension) {

  /** Of a rational. */
  public static Value of(Rational value, Dimension dimension) {
    return new Value(Real.of(value), dimension);
  }
}
