package passband.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import org.jspecify.annotations.Nullable;

/**
 * Two doubles with a real number between them, or on one of them. Each operation of IEEE 754 gives
 * the double nearest to the true result, so the next double on either side bounds it (IEEE
 * 754-2019, 4.3.1 and 5.4.1). Most questions are decided so; the others by decimals.
 *
 * <p>Operations give null where doubles bound nothing: beyond their range, or over an interval
 * around zero.
 */
record Nearby(double low, double high) {
  private static final int MOST_DIGITS = 14;

  /** Around a ratio. */
  static @Nullable Nearby of(BigInteger numerator, BigInteger denominator) {
    return around(numerator).over(around(denominator));
  }

  /** Around a ratio. */
  static @Nullable Nearby of(long numerator, long denominator) {
    return around(numerator).over(around(denominator));
  }

  private static Nearby around(long whole) {
    double nearest = whole;
    return Math.abs(whole) <= 1L << 53
        ? new Nearby(nearest, nearest)
        : new Nearby(Math.nextDown(nearest), Math.nextUp(nearest));
  }

  private static Nearby around(BigInteger whole) {
    double nearest = whole.doubleValue();
    return whole.bitLength() <= 53
        ? new Nearby(nearest, nearest)
        : new Nearby(Math.nextDown(nearest), Math.nextUp(nearest));
  }

  private static @Nullable Nearby outward(double low, double high) {
    double below = Math.nextDown(low);
    double above = Math.nextUp(high);
    return Double.isFinite(below) && Double.isFinite(above) ? new Nearby(below, above) : null;
  }

  @Nullable Nearby plus(Nearby other) {
    return outward(low + other.low, high + other.high);
  }

  @Nullable Nearby times(Nearby other) {
    double a = low * other.low;
    double b = low * other.high;
    double c = high * other.low;
    double d = high * other.high;
    return outward(
        Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)));
  }

  @Nullable Nearby over(Nearby other) {
    if (other.low <= 0 && other.high >= 0) {
      return null;
    }
    double a = low / other.low;
    double b = low / other.high;
    double c = high / other.low;
    double d = high / other.high;
    return outward(
        Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)));
  }

  /** Of what is not negative. */
  @Nullable Nearby root() {
    return outward(Math.sqrt(Math.max(0, low)), Math.sqrt(Math.max(0, high)));
  }

  Nearby negate() {
    return new Nearby(-high, -low);
  }

  /** The sign, 0 when it cannot be told. */
  int signum() {
    return low > 0 ? 1 : high < 0 ? -1 : 0;
  }

  /** −1 or 1, 0 when it cannot be told. */
  int compareTo(Nearby other) {
    return high < other.low ? -1 : low > other.high ? 1 : 0;
  }

  /** The whole part, rounded down; null when it cannot be told. */
  @Nullable BigInteger floor() {
    double below = Math.floor(low);
    return below == Math.floor(high) && Math.abs(below) < 1L << 52
        ? BigInteger.valueOf((long) below)
        : null;
  }

  /** Rounded to some digits; null when the two ends do not agree. */
  @Nullable BigDecimal rounded(MathContext wanted) {
    if (wanted.getPrecision() > MOST_DIGITS) {
      return null;
    }
    BigDecimal below = new BigDecimal(low).round(wanted);
    return below.compareTo(new BigDecimal(high).round(wanted)) == 0 ? below : null;
  }
}
