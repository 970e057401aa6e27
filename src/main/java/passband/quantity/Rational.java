package passband.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * An exact ratio of two whole numbers in lowest terms, the denominator positive. Small ones are
 * kept in two longs, all others in big integers; which of the two is no part of the value.
 */
public final class Rational implements Comparable<Rational> {
  /** 0. */
  public static final Rational ZERO = new Rational(0, 1);

  /** 1. */
  public static final Rational ONE = new Rational(1, 1);

  /** 2. */
  public static final Rational TWO = new Rational(2, 1);

  /** 10. */
  public static final Rational TEN = new Rational(10, 1);

  /** 100. */
  public static final Rational HUNDRED = new Rational(100, 1);

  private static final BigInteger LEAST_LONG = BigInteger.valueOf(-Long.MAX_VALUE);
  private static final BigInteger GREATEST_LONG = BigInteger.valueOf(Long.MAX_VALUE);

  private final long num;
  private final long den;
  private final @Nullable BigInteger bigNum;
  private final @Nullable BigInteger bigDen;

  private Rational(long num, long den) {
    this.num = num;
    this.den = den;
    this.bigNum = null;
    this.bigDen = null;
  }

  private Rational(BigInteger num, BigInteger den) {
    this.num = 0;
    this.den = 0;
    this.bigNum = num;
    this.bigDen = den;
  }

  /** A whole number. */
  public static Rational of(long value) {
    return value == Long.MIN_VALUE
        ? of(BigInteger.valueOf(value), BigInteger.ONE)
        : new Rational(value, 1);
  }

  /**
   * A ratio.
   *
   * @throws ArithmeticException when the denominator is zero
   */
  public static Rational of(long num, long den) {
    if (den == 0) {
      throw new ArithmeticException("division by zero");
    }
    if (num == Long.MIN_VALUE || den == Long.MIN_VALUE) {
      return of(BigInteger.valueOf(num), BigInteger.valueOf(den));
    }
    long divisor = gcd(Math.abs(num), Math.abs(den));
    long sign = den < 0 ? -1 : 1;
    return new Rational(sign * num / divisor, sign * den / divisor);
  }

  /**
   * A ratio.
   *
   * @throws ArithmeticException when the denominator is zero
   */
  public static Rational of(BigInteger num, BigInteger den) {
    if (den.signum() == 0) {
      throw new ArithmeticException("division by zero");
    }
    if (num.bitLength() < Long.SIZE - 1 && den.bitLength() < Long.SIZE - 1) {
      return of(num.longValue(), den.longValue());
    }
    BigInteger divisor = num.gcd(den);
    if (den.signum() < 0) {
      divisor = divisor.negate();
    }
    BigInteger n = num.divide(divisor);
    BigInteger d = den.divide(divisor);
    boolean small =
        n.compareTo(LEAST_LONG) >= 0
            && n.compareTo(GREATEST_LONG) <= 0
            && d.compareTo(GREATEST_LONG) <= 0;
    return small ? new Rational(n.longValue(), d.longValue()) : new Rational(n, d);
  }

  /** The exact value of a decimal. */
  public static Rational of(BigDecimal value) {
    return value.scale() <= 0
        ? of(value.toBigIntegerExact(), BigInteger.ONE)
        : of(value.unscaledValue(), BigInteger.TEN.pow(value.scale()));
  }

  /**
   * The exact value of a decimal numeral such as {@code 12}, {@code 0.5} or {@code -1.5e-3}.
   *
   * @throws NumberFormatException when it is none, or has more than 60 digits or an exponent beyond
   *     ±60
   */
  public static Rational parse(String text) {
    return Decimals.parse(text);
  }

  private static long gcd(long a, long b) {
    while (b != 0) {
      long rest = a % b;
      a = b;
      b = rest;
    }
    return a == 0 ? 1 : a;
  }

  /** Whether both are kept as longs. */
  boolean small() {
    return bigNum == null;
  }

  /** The numerator of a small one. */
  long smallNumerator() {
    return num;
  }

  /** The denominator of a small one. */
  long smallDenominator() {
    return den;
  }

  /** The numerator in lowest terms. */
  public BigInteger numerator() {
    return bigNum == null ? BigInteger.valueOf(num) : bigNum;
  }

  /** The denominator in lowest terms, positive. */
  public BigInteger denominator() {
    return bigDen == null ? BigInteger.valueOf(den) : bigDen;
  }

  /** The sum. */
  public Rational plus(Rational other) {
    if (small() && other.small()) {
      long a = Math.multiplyHigh(num, other.den);
      long left = num * other.den;
      long b = Math.multiplyHigh(other.num, den);
      long right = other.num * den;
      long sum = left + right;
      boolean fits =
          a == left >> 63
              && b == right >> 63
              && ((left ^ sum) & (right ^ sum)) >= 0
              && sum != Long.MIN_VALUE;
      if (fits && Math.multiplyHigh(den, other.den) == 0 && den * other.den > 0) {
        return of(sum, den * other.den);
      }
    }
    BigInteger n =
        numerator().multiply(other.denominator()).add(other.numerator().multiply(denominator()));
    return of(n, denominator().multiply(other.denominator()));
  }

  /** The difference. */
  public Rational minus(Rational other) {
    return plus(other.negate());
  }

  /** The product. */
  public Rational times(Rational other) {
    if (small() && other.small()) {
      long n = num * other.num;
      long d = den * other.den;
      boolean fits = Math.multiplyHigh(num, other.num) == n >> 63 && n != Long.MIN_VALUE;
      if (fits && Math.multiplyHigh(den, other.den) == 0 && d > 0) {
        return of(n, d);
      }
    }
    return of(numerator().multiply(other.numerator()), denominator().multiply(other.denominator()));
  }

  /**
   * The quotient.
   *
   * @throws ArithmeticException when the other is zero
   */
  public Rational over(Rational other) {
    return times(other.reciprocal());
  }

  /** The negative. */
  public Rational negate() {
    return small() ? new Rational(-num, den) : new Rational(numerator().negate(), denominator());
  }

  /** The absolute value. */
  public Rational abs() {
    return signum() < 0 ? negate() : this;
  }

  /**
   * One over this.
   *
   * @throws ArithmeticException when this is zero
   */
  public Rational reciprocal() {
    if (small() && num != 0) {
      return num > 0 ? new Rational(den, num) : new Rational(-den, -num);
    }
    return small() ? of(den, num) : of(denominator(), numerator());
  }

  /** The product with itself: in lowest terms as this is. */
  Rational squared() {
    if (small()
        && num <= WholeRoots.GREATEST
        && num >= -WholeRoots.GREATEST
        && den <= WholeRoots.GREATEST) {
      return new Rational(num * num, den * den);
    }
    return times(this);
  }

  /**
   * A whole power.
   *
   * @throws ArithmeticException when this is zero and the exponent negative
   */
  public Rational pow(int exponent) {
    Rational base = exponent < 0 ? reciprocal() : this;
    int n = Math.abs(exponent);
    return of(base.numerator().pow(n), base.denominator().pow(n));
  }

  /** The smaller of the two. */
  public Rational min(Rational other) {
    return compareTo(other) <= 0 ? this : other;
  }

  /** The larger of the two. */
  public Rational max(Rational other) {
    return compareTo(other) >= 0 ? this : other;
  }

  /** −1, 0 or 1. */
  public int signum() {
    return small() ? Long.signum(num) : numerator().signum();
  }

  /** Whether this is zero. */
  public boolean isZero() {
    return signum() == 0;
  }

  /** Whether this is a whole number. */
  public boolean isInteger() {
    return small() ? den == 1 : denominator().equals(BigInteger.ONE);
  }

  /** The largest whole number not above this. */
  public BigInteger floor() {
    if (small()) {
      return BigInteger.valueOf(Math.floorDiv(num, den));
    }
    BigInteger[] parts = numerator().divideAndRemainder(denominator());
    return parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
  }

  /** The smallest whole number not below this. */
  public BigInteger ceiling() {
    return negate().floor().negate();
  }

  /** The largest multiple of a positive step not above this. */
  public Rational floorTo(Rational step) {
    return of(over(step).floor(), BigInteger.ONE).times(step);
  }

  /** The smallest multiple of a positive step not below this. */
  public Rational ceilingTo(Rational step) {
    return of(over(step).ceiling(), BigInteger.ONE).times(step);
  }

  /** The square root when it is rational; null otherwise, and for a negative. */
  public @Nullable Rational exactRoot() {
    if (signum() < 0) {
      return null;
    }
    if (small()) {
      long n = WholeRoots.exact(num);
      long d = n < 0 ? -1 : WholeRoots.exact(den);
      return d < 0 ? null : new Rational(n, d);
    }
    BigInteger n = numerator().sqrt();
    BigInteger d = denominator().sqrt();
    boolean exact = n.multiply(n).equals(numerator()) && d.multiply(d).equals(denominator());
    return exact ? of(n, d) : null;
  }

  /** Doubles around the value; null where there are none. */
  @Nullable Nearby nearby() {
    return small() ? Nearby.of(num, den) : Nearby.of(numerator(), denominator());
  }

  /** The value rounded to significant digits. */
  public BigDecimal toDecimal(int significantDigits, RoundingMode rounding) {
    return new BigDecimal(numerator())
        .divide(new BigDecimal(denominator()), new MathContext(significantDigits, rounding));
  }

  /** The nearest double. */
  public double doubleValue() {
    if (small() && Math.abs(num) <= 1L << 53 && den <= 1L << 53) {
      return (double) num / (double) den; // two exact doubles: IEEE 754 gives the nearest
    }
    return toDecimal(40, RoundingMode.HALF_EVEN).doubleValue();
  }

  /**
   * The plain decimal, all of it where it ends and 12 significant digits where it does not; no
   * trailing zeros, no exponent.
   */
  public String toPlain() {
    return Decimals.plain(this);
  }

  /** The plain decimal with this many decimals, rounded half to even where it has more. */
  public String toFixed(int decimals) {
    return Decimals.fixed(this, decimals);
  }

  @Override
  public int compareTo(Rational other) {
    if (small() && other.small()) {
      if (den == other.den) {
        return Long.compare(num, other.num);
      }
      long left = num * other.den;
      long right = other.num * den;
      if (Math.multiplyHigh(num, other.den) == left >> 63
          && Math.multiplyHigh(other.num, den) == right >> 63) {
        return Long.compare(left, right);
      }
    }
    return numerator()
        .multiply(other.denominator())
        .compareTo(other.numerator().multiply(denominator()));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Rational that
        && small() == that.small()
        && (small()
            ? num == that.num && den == that.den
            : numerator().equals(that.numerator()) && denominator().equals(that.denominator()));
  }

  @Override
  public int hashCode() {
    return small()
        ? Long.hashCode(num) * 31 + Long.hashCode(den)
        : numerator().hashCode() * 31 + denominator().hashCode();
  }

  /** The numerator, and the denominator where it is not 1. */
  @Override
  public String toString() {
    return isInteger() ? numerator().toString() : numerator() + "/" + denominator();
  }
}
