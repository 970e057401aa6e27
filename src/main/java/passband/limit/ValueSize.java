package passband.limit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * How large, small or long a value may become in an expression. No quantity of the trade comes near
 * these bounds; without them a few powers of powers give numbers that nothing can hold or print.
 */
final class ValueSize {
  /** Ten to the power of 60, or of −60, in binary digits. */
  private static final int BITS = 200;

  private static final int LONGEST = 8_192;
  private static final int DIGITS = 60;

  private static final String TOO_LARGE = "the value is larger than 10^60";
  private static final String TOO_SMALL = "the value is smaller than 10^-60";

  private ValueSize() {}

  /** What is wrong with its size; null when nothing is. */
  static @Nullable String fault(Real value) {
    return value.isRational() ? ofExact(value.rational()) : ofRoot(value);
  }

  /** Two digits are found without a root as a rule. */
  private static @Nullable String ofRoot(Real value) {
    BigDecimal near = value.toDecimal(2, RoundingMode.HALF_EVEN);
    int exponent = near.precision() - near.scale();
    return exponent > DIGITS
        ? TOO_LARGE
        : near.signum() != 0 && exponent < -DIGITS ? TOO_SMALL : null;
  }

  private static @Nullable String ofExact(Rational exact) {
    int above = exact.numerator().bitLength();
    int below = exact.denominator().bitLength();
    if (above - below > BITS) {
      return TOO_LARGE;
    }
    if (above != 0 && below - above > BITS) {
      return TOO_SMALL;
    }
    return Math.max(above, below) > LONGEST
        ? "the value has more digits than can be calculated with"
        : null;
  }
}
