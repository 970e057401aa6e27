package passband.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A closed interval of decimals that a real number lies in. What is worked out is rounded outward
 * to significant digits, so that the true result always lies in it.
 */
record Interval(BigDecimal low, BigDecimal high) {

  private static MathContext down(int digits) {
    return new MathContext(digits, RoundingMode.FLOOR);
  }

  private static MathContext up(int digits) {
    return new MathContext(digits, RoundingMode.CEILING);
  }

  /** Around a ratio. */
  static Interval of(Rational ratio, int digits) {
    BigDecimal n = new BigDecimal(ratio.numerator());
    BigDecimal d = new BigDecimal(ratio.denominator());
    return new Interval(n.divide(d, down(digits)), n.divide(d, up(digits)));
  }

  boolean holdsZero() {
    return low.signum() * high.signum() <= 0;
  }

  Interval negate() {
    return new Interval(high.negate(), low.negate());
  }

  Interval plus(Interval other, int digits) {
    return new Interval(low.add(other.low, down(digits)), high.add(other.high, up(digits)));
  }

  Interval times(Interval other, int digits) {
    BigDecimal[] corners = {
      low.multiply(other.low),
      low.multiply(other.high),
      high.multiply(other.low),
      high.multiply(other.high)
    };
    BigDecimal least = corners[0];
    BigDecimal most = corners[0];
    for (BigDecimal corner : corners) {
      least = least.min(corner);
      most = most.max(corner);
    }
    return new Interval(least.round(down(digits)), most.round(up(digits)));
  }

  /** The quotient; the other does not hold zero. */
  Interval over(Interval other, int digits) {
    BigDecimal least = BigDecimal.ONE.divide(other.high, down(digits));
    BigDecimal most = BigDecimal.ONE.divide(other.low, up(digits));
    return times(new Interval(least, most), digits);
  }

  /** The square root of what in it is not negative. */
  Interval root(int digits) {
    return new Interval(root(low, down(digits)), root(high, up(digits)));
  }

  private static BigDecimal root(BigDecimal square, MathContext rounding) {
    return square.signum() <= 0 ? BigDecimal.ZERO : square.sqrt(rounding);
  }
}
