package passband.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/** Between exact ratios and decimal numerals. */
final class Decimals {
  private static final int MOST_DIGITS = 60;
  private static final int MOST_PLAIN = 17;
  private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

  private Decimals() {}

  /** The exact value of a numeral, as {@link Rational#parse}. */
  static Rational parse(String text) {
    Rational plain = ofPlain(text);
    return plain != null ? plain : ofDecimal(text);
  }

  /** Of a few digits with or without a point the value; null for what else a numeral may be. */
  private static @Nullable Rational ofPlain(String text) {
    long digits = 0;
    int point = -1;
    if (text.isEmpty() || text.length() > MOST_PLAIN) {
      return null;
    }
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9') {
        digits = digits * 10 + (c - '0');
      } else if (c == '.' && point < 0 && i > 0) {
        point = i;
      } else {
        return null;
      }
    }
    int decimals = point < 0 ? 0 : text.length() - 1 - point;
    return decimals < POWERS.length ? Rational.of(digits, POWERS[decimals]) : null;
  }

  private static Rational ofDecimal(String text) {
    BigDecimal value = new BigDecimal(text);
    if (value.precision() > MOST_DIGITS
        || Math.abs((long) value.scale()) > 2L * MOST_DIGITS
        || exponentTooLarge(value)) {
      throw new NumberFormatException(
          "too large or too many digits: " + text.length() + " characters");
    }
    return Rational.of(value);
  }

  private static boolean exponentTooLarge(BigDecimal value) {
    long magnitude = (long) value.precision() - value.scale();
    return value.signum() != 0 && Math.abs(magnitude) > MOST_DIGITS;
  }

  /** The plain decimal of a ratio, as {@link Rational#toPlain}. */
  static String plain(Rational ratio) {
    if (ratio.small()) {
      int decimals = decimals(ratio.smallDenominator());
      if (decimals >= 0 && multiplies(ratio.smallNumerator(), POWERS[decimals])) {
        return ofSmall(ratio, decimals);
      }
    }
    int decimals = decimals(ratio.denominator());
    BigDecimal decimal =
        decimals >= 0
            ? divided(ratio, decimals, RoundingMode.UNNECESSARY)
            : ratio.toDecimal(12, RoundingMode.HALF_EVEN);
    return decimal.stripTrailingZeros().toPlainString();
  }

  /** How many decimals end a ratio in lowest terms over this; −1 when none do. */
  private static int decimals(BigInteger den) {
    int twos = den.getLowestSetBit();
    BigInteger rest = den.shiftRight(twos);
    BigInteger five = BigInteger.valueOf(5);
    int fives = 0;
    while (rest.mod(five).signum() == 0) {
      rest = rest.divide(five);
      fives++;
    }
    return rest.equals(BigInteger.ONE) ? Math.max(twos, fives) : -1;
  }

  private static BigDecimal divided(Rational ratio, int decimals, RoundingMode rounding) {
    return new BigDecimal(ratio.numerator())
        .divide(new BigDecimal(ratio.denominator()), decimals, rounding);
  }

  /** How many decimals end a ratio in lowest terms over this; −1 when none do, or many. */
  private static int decimals(long den) {
    for (int decimals = 0; decimals < POWERS.length; decimals++) {
      if (POWERS[decimals] % den == 0) {
        return decimals;
      }
    }
    return -1;
  }

  /** Whether a product of two longs is a long. */
  private static boolean multiplies(long a, long positive) {
    return Math.abs(a) <= Long.MAX_VALUE / positive;
  }

  /** The plain decimal with this many decimals, as {@link Rational#toFixed}. */
  static String fixed(Rational ratio, int decimals) {
    boolean small =
        ratio.small()
            && decimals < POWERS.length
            && multiplies(ratio.smallNumerator(), POWERS[decimals]);
    return small
        ? ofSmall(ratio, decimals)
        : divided(ratio, decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  /** A small ratio times ten to the decimals, rounded half to even, with a point. */
  private static String ofSmall(Rational ratio, int decimals) {
    long den = ratio.smallDenominator();
    long scaled = Math.abs(ratio.smallNumerator()) * POWERS[decimals];
    long whole = scaled / den;
    long left = scaled - whole * den;
    long toNext = den - left;
    if (left > toNext || left == toNext && (whole & 1) == 1) {
      whole++;
    }
    String sign = ratio.signum() < 0 && whole != 0 ? "-" : "";
    if (decimals == 0) {
      return sign + whole;
    }
    String tail = Long.toString(whole % POWERS[decimals]);
    return sign + whole / POWERS[decimals] + "." + "0".repeat(decimals - tail.length()) + tail;
  }
}
