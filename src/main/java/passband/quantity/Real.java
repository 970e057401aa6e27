package passband.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * An exact real number: a ratio, a signed square root of a ratio, or a calculation over such that
 * is neither. Ratios and roots are compared and rounded exactly, a root by its square. A
 * calculation is enclosed between two decimals with more and more digits until the question is
 * decided; one that 320 digits do not decide is taken to lie on the boundary asked about.
 */
public final class Real implements Comparable<Real> {
  /** 0. */
  public static final Real ZERO = of(Rational.ZERO);

  private static final int[] DIGITS = {40, 80, 160, 320};
  private static final int MOST_DIGITS = DIGITS[DIGITS.length - 1];

  /** What a calculation does with its parts. */
  private enum Operation {
    PLUS,
    TIMES,
    OVER,
    ROOT
  }

  /** What is done with which parts; of a root both are what it is the root of. */
  private record Calculation(Operation operation, Real left, Real right) {}

  /** The value, or with {@code root} the square of the absolute value; null for a calculation. */
  private final @Nullable Rational value;

  /** 0 for a ratio, otherwise the sign of a root. */
  private final int root;

  private final @Nullable Calculation calculation;

  /** Found when first asked for; two threads at most find the same. */
  private @Nullable Nearby nearby;

  private boolean nearbySought;

  private Real(@Nullable Rational value, int root, @Nullable Calculation calculation) {
    this.value = value;
    this.root = root;
    this.calculation = calculation;
  }

  /** A ratio. */
  public static Real of(Rational value) {
    return new Real(value, 0, null);
  }

  /** The root of a ratio with a sign; a ratio itself where the root is one. */
  private static Real rootOf(int sign, Rational square) {
    Rational exact = square.exactRoot();
    if (exact != null) {
      return of(sign < 0 ? exact.negate() : exact);
    }
    return new Real(square, sign, null);
  }

  private static Real calculation(Operation operation, Real left, Real right) {
    return new Real(null, 0, new Calculation(operation, left, right));
  }

  private boolean plain() {
    return value != null && root == 0;
  }

  private boolean simple() {
    return value != null;
  }

  /** The value of a ratio, the square of a root. */
  private Rational held() {
    return Objects.requireNonNull(value, "a calculation has no value");
  }

  private Calculation calculation() {
    return Objects.requireNonNull(calculation, "only of a calculation");
  }

  /** The square with the sign of this: orders ratios and roots as they are ordered. */
  private Rational signedSquare() {
    if (root != 0) {
      return root < 0 ? held().negate() : held();
    }
    Rational square = held().squared();
    return held().signum() < 0 ? square.negate() : square;
  }

  /** Whether the value is known to be a ratio. */
  public boolean isRational() {
    return plain();
  }

  /**
   * The value as a ratio.
   *
   * @throws IllegalStateException when it is not known to be one
   */
  public Rational rational() {
    if (!plain()) {
      throw new IllegalStateException("not a ratio");
    }
    return held();
  }

  /** The sum. */
  public Real plus(Real other) {
    if (plain() && other.plain()) {
      return of(held().plus(other.held()));
    }
    if (simple() && signum() == 0) {
      return other;
    }
    if (other.simple() && other.signum() == 0) {
      return this;
    }
    if (simple() && other.simple() && root != 0 && other.root != 0) {
      Rational share = other.held().over(held()).exactRoot();
      if (share != null) {
        Rational times = Rational.of(root).plus(Rational.of(other.root).times(share));
        return rootOf(times.signum(), held().times(times).times(times));
      }
    }
    return calculation(Operation.PLUS, this, other);
  }

  /** The difference. */
  public Real minus(Real other) {
    return plus(other.negate());
  }

  /** The product. */
  public Real times(Real other) {
    if (plain() && other.plain()) {
      return of(held().times(other.held()));
    }
    if (simple() && other.simple()) {
      Rational square = signedSquare().times(other.signedSquare());
      return rootOf(square.signum(), square.abs());
    }
    return calculation(Operation.TIMES, this, other);
  }

  /**
   * The quotient.
   *
   * @throws ArithmeticException when the other is zero
   */
  public Real over(Real other) {
    if (other.signum() == 0) {
      throw new ArithmeticException("division by zero");
    }
    if (plain() && other.plain()) {
      return of(held().over(other.held()));
    }
    if (simple() && other.simple()) {
      Rational square = signedSquare().over(other.signedSquare());
      return rootOf(square.signum(), square.abs());
    }
    return calculation(Operation.OVER, this, other);
  }

  /** The negative. */
  public Real negate() {
    if (plain()) {
      return of(held().negate());
    }
    return simple() ? new Real(held(), -root, null) : times(of(Rational.of(-1)));
  }

  /** The absolute value. */
  public Real abs() {
    return signum() < 0 ? negate() : this;
  }

  /**
   * A whole power.
   *
   * @throws ArithmeticException when this is zero and the exponent negative
   */
  public Real pow(int exponent) {
    Real product = of(Rational.ONE);
    for (int i = 0; i < Math.abs(exponent); i++) {
      product = product.times(this);
    }
    return exponent < 0 ? of(Rational.ONE).over(product) : product;
  }

  /** The smaller of the two. */
  public Real min(Real other) {
    return compareTo(other) <= 0 ? this : other;
  }

  /** The larger of the two. */
  public Real max(Real other) {
    return compareTo(other) >= 0 ? this : other;
  }

  /**
   * The square root.
   *
   * @throws ArithmeticException when this is negative
   */
  public Real sqrt() {
    if (signum() < 0) {
      throw new ArithmeticException("the root of a negative");
    }
    if (signum() == 0) {
      return ZERO;
    }
    return plain() ? rootOf(1, held()) : calculation(Operation.ROOT, this, this);
  }

  /** −1, 0 or 1. */
  public int signum() {
    if (simple()) {
      return root != 0 ? root : held().signum();
    }
    Nearby near = nearby();
    if (near != null && near.signum() != 0) {
      return near.signum();
    }
    for (int digits : DIGITS) {
      Interval in = enclosure(digits);
      if (in.low().signum() > 0 || in.high().signum() < 0) {
        return in.low().signum() > 0 ? 1 : -1;
      }
    }
    return 0;
  }

  @Override
  public int compareTo(Real other) {
    if (plain() && other.plain()) {
      return held().compareTo(other.held());
    }
    Nearby near = nearby();
    Nearby otherNear = other.nearby();
    if (near != null && otherNear != null) {
      int order = near.compareTo(otherNear);
      if (order != 0) {
        return order;
      }
    }
    if (simple() && other.simple()) {
      return signedSquare().compareTo(other.signedSquare());
    }
    for (int digits : DIGITS) {
      Interval a = enclosure(digits);
      Interval b = other.enclosure(digits);
      if (a.low().compareTo(b.high()) > 0 || a.high().compareTo(b.low()) < 0) {
        return a.low().compareTo(b.high()) > 0 ? 1 : -1;
      }
    }
    return 0;
  }

  /** Equal values, as far as 320 digits tell them apart. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Real that && compareTo(that) == 0;
  }

  @Override
  public int hashCode() {
    return toDecimal(12, RoundingMode.HALF_EVEN).stripTrailingZeros().hashCode();
  }

  /** The largest multiple of a positive step not above this. */
  public Rational floorTo(Rational step) {
    if (plain()) {
      return held().floorTo(step);
    }
    return Rational.of(floor(over(of(step))), BigInteger.ONE).times(step);
  }

  /** The smallest multiple of a positive step not below this. */
  public Rational ceilingTo(Rational step) {
    return negate().floorTo(step).negate();
  }

  private static BigInteger floor(Real real) {
    if (real.plain()) {
      return real.held().floor();
    }
    Nearby near = real.nearby();
    BigInteger quick = near == null ? null : near.floor();
    if (quick != null) {
      return quick;
    }
    if (real.simple()) {
      return rootFloor(real.root, real.held());
    }
    for (int digits : DIGITS) {
      Interval in = real.enclosure(digits);
      BigInteger low = in.low().setScale(0, RoundingMode.FLOOR).unscaledValue();
      if (low.equals(in.high().setScale(0, RoundingMode.FLOOR).unscaledValue())) {
        return low;
      }
    }
    Interval in = real.enclosure(MOST_DIGITS);
    return in.high().setScale(0, RoundingMode.FLOOR).unscaledValue();
  }

  /**
   * The floor of an irrational root: of the whole part of its square the root's whole part is the
   * same.
   */
  private static BigInteger rootFloor(int sign, Rational square) {
    BigInteger whole = square.floor().sqrt();
    return sign > 0 ? whole : whole.negate().subtract(BigInteger.ONE);
  }

  /** The value rounded to significant digits. */
  public BigDecimal toDecimal(int significantDigits, RoundingMode rounding) {
    if (plain()) {
      return held().toDecimal(significantDigits, rounding);
    }
    MathContext wanted = new MathContext(significantDigits, rounding);
    Nearby near = nearby();
    BigDecimal quick = near == null ? null : near.rounded(wanted);
    if (quick != null) {
      return quick;
    }
    for (int digits : DIGITS) {
      Interval in = enclosure(digits + significantDigits);
      BigDecimal low = in.low().round(wanted);
      if (low.compareTo(in.high().round(wanted)) == 0) {
        return low;
      }
    }
    Interval in = enclosure(MOST_DIGITS + significantDigits);
    return in.low()
        .add(in.high())
        .divide(BigDecimal.valueOf(2))
        .round(new MathContext(MOST_DIGITS / 2, RoundingMode.HALF_EVEN))
        .round(wanted);
  }

  /** The nearest double, or one beside it. */
  public double doubleValue() {
    if (plain()) {
      return held().doubleValue();
    }
    double square = root == 0 ? 0 : held().doubleValue();
    if (Double.isFinite(square) && square >= Double.MIN_NORMAL) {
      return root * Math.sqrt(square); // a root halves the relative error of its square
    }
    return toDecimal(20, RoundingMode.HALF_EVEN).doubleValue();
  }

  // ---- enclosures ----

  private @Nullable Nearby nearby() {
    if (!nearbySought) {
      nearby = findNearby();
      nearbySought = true;
    }
    return nearby;
  }

  private @Nullable Nearby findNearby() {
    if (simple()) {
      Nearby near = held().nearby();
      return near == null || root == 0 ? near : signedRoot(near);
    }
    Nearby a = calculation().left.nearby();
    Nearby b = calculation().right.nearby();
    if (a == null || b == null) {
      return null;
    }
    return switch (calculation().operation) {
      case PLUS -> a.plus(b);
      case TIMES -> a.times(b);
      case OVER -> a.over(b);
      case ROOT -> a.root();
    };
  }

  private @Nullable Nearby signedRoot(Nearby square) {
    Nearby positive = square.root();
    return positive == null || root > 0 ? positive : positive.negate();
  }

  private Interval enclosure(int digits) {
    if (plain()) {
      return Interval.of(held(), digits);
    }
    if (simple()) {
      Interval positive = Interval.of(held(), digits).root(digits);
      return root > 0 ? positive : positive.negate();
    }
    Interval a = calculation().left.enclosure(digits);
    return switch (calculation().operation) {
      case PLUS -> a.plus(calculation().right.enclosure(digits), digits);
      case TIMES -> a.times(calculation().right.enclosure(digits), digits);
      case OVER -> a.over(divisor(digits), digits);
      case ROOT -> a.root(digits);
    };
  }

  /** The divisor is not zero, so that with digits enough its interval does not hold zero. */
  private Interval divisor(int digits) {
    Interval divisor = calculation().right.enclosure(digits);
    for (int more = digits * 2; divisor.holdsZero(); more *= 2) {
      divisor = calculation().right.enclosure(more);
    }
    return divisor;
  }

  /** Twelve significant digits, for whoever looks at it while looking for a fault. */
  @Override
  public String toString() {
    return plain() ? held().toString() : "≈" + toDecimal(12, RoundingMode.HALF_EVEN);
  }
}
