package passband.transcribe;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * What a rule prints, to the digit: every limit is √a + c with rational a and c, so that its whole
 * steps are found with whole roots alone.
 */
final class Prediction {
  private final boolean converts;
  private final boolean direct;
  private final boolean voltage;

  /** For rows of this table. */
  Prediction(ManualTable table) {
    this.converts = table.converts();
    this.direct = table.direct();
    this.voltage = table.read().name().equals("voltage");
  }

  boolean converts() {
    return converts;
  }

  /** Whether limits of this basis can be made at a row. */
  boolean applies(Basis basis, ManualRow row) {
    if (basis.nominal() == Basis.Nominal.PRINTED) {
      return row.nominal() != null;
    }
    if (basis.of() == Basis.Of.SETTING && direct) {
      return true;
    }
    return converts && row.ohms() != null && !row.ohms().value().isZero();
  }

  /** The square of the nominal value that is read: P/R of a current, P·R of a voltage. */
  Rational square(ManualRow row) {
    return row.setting().value().times(factor(row));
  }

  /** By what a power becomes the square of what is read. */
  Rational factor(ManualRow row) {
    Rational ohms = ohms(row);
    return voltage ? ohms : ohms.reciprocal();
  }

  private static Rational ohms(ManualRow row) {
    Printed ohms = row.ohms();
    if (ohms == null) {
      throw new IllegalStateException("line " + row.line() + " has no load");
    }
    return ohms.value();
  }

  /** The nominal value where it is rational: of all bases but one; null for that. */
  @Nullable Rational nominal(Basis basis, ManualRow row) {
    if (basis.of() == Basis.Of.SETTING) {
      return row.setting().value();
    }
    Rational step = step(row);
    return switch (basis.nominal()) {
      case EXACT -> null;
      case PRINTED -> row.nominal() == null ? null : row.nominal().value();
      case ROUNDED -> multiple(floor(square(row), step.over(Rational.TWO), step), step);
      case CUT -> multiple(floor(square(row), Rational.ZERO, step), step);
    };
  }

  private static Rational step(ManualRow row) {
    Printed one = row.lower() != null ? row.lower() : row.upper();
    if (one == null) {
      throw new IllegalStateException("line " + row.line() + " has no limit");
    }
    return one.step();
  }

  private static Rational multiple(BigInteger count, Rational step) {
    return Rational.of(count, BigInteger.ONE).times(step);
  }

  /** Whether a row prints what a rule makes of (perhaps another) setting and load. */
  boolean fits(Rule rule, ManualRow row, ManualRow conditions) {
    for (Side side : Side.values()) {
      Printed printed = row.limit(side);
      if (printed != null && printed.digits() != digits(rule, conditions, side, printed.step())) {
        return false;
      }
    }
    return true;
  }

  /** What a rule prints at an end, in steps; zero where it comes to less. */
  long digits(Rule rule, ManualRow row, Side side, Rational step) {
    Rational nominal = nominal(rule.basis(), row);
    Rational sign = Rational.of(side == Side.LOWER ? -1 : 1);
    if (nominal == null) {
      return ofRoot(rule, square(row), side, step);
    }
    Rational value = nominal.plus(sign.times(rule.tolerance(nominal, side))).max(Rational.ZERO);
    return rule.basis().of() == Basis.Of.SETTING && !direct
        ? digits(value.times(factor(row)), Rational.ZERO, rule.basis().rounding(), side, step)
        : digits(Rational.ZERO, value, rule.basis().rounding(), side, step);
  }

  private static long ofRoot(Rule rule, Rational square, Side side, Rational step) {
    Rational sign = Rational.of(side == Side.LOWER ? -1 : 1);
    Rational share = rule.share(side);
    Rational amount = rule.amount();
    boolean shareIsMore = share.times(share).times(square).compareTo(amount.times(amount)) >= 0;
    boolean withShare =
        switch (rule.form()) {
          case SHARE, APART, SUM -> true;
          case AMOUNT -> false;
          case GREATER -> shareIsMore;
          case SMALLER -> !shareIsMore;
        };
    boolean withAmount =
        switch (rule.form()) {
          case SHARE, APART -> false;
          case AMOUNT, SUM -> true;
          case GREATER -> !shareIsMore;
          case SMALLER -> shareIsMore;
        };
    Rational scale = withShare ? Rational.ONE.plus(sign.times(share)) : Rational.ONE;
    return digits(
        square.times(scale).times(scale),
        withAmount ? sign.times(amount) : Rational.ZERO,
        rule.basis().rounding(),
        side,
        step);
  }

  /** √a + c in steps, rounded; zero where it is less. */
  private static long digits(
      Rational a, Rational c, Basis.Rounding rounding, Side side, Rational step) {
    boolean lower = side == Side.LOWER;
    BigInteger digits =
        switch (rounding) {
          case NEAREST -> floor(a, c.plus(step.over(Rational.TWO)), step);
          case CUT -> floor(a, c, step);
          case INWARD -> lower ? ceiling(a, c, step) : floor(a, c, step);
          case OUTWARD -> lower ? floor(a, c, step) : ceiling(a, c, step);
        };
    return digits.signum() < 0 ? 0 : digits.longValueExact();
  }

  /** The largest whole number of steps that is not above √a + c. */
  static BigInteger floor(Rational a, Rational c, Rational step) {
    Rational shift = c.over(step);
    BigInteger over = shift.denominator();
    Rational scaled =
        a.over(step.times(step)).times(Rational.of(over.multiply(over), BigInteger.ONE));
    BigInteger sum = scaled.floor().sqrt().add(shift.numerator());
    BigInteger[] parts = sum.divideAndRemainder(over);
    return parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
  }

  private static BigInteger ceiling(Rational a, Rational c, Rational step) {
    BigInteger floor = floor(a, c, step);
    Rational root = multiple(floor, step).minus(c);
    boolean exact = root.signum() >= 0 && root.times(root).equals(a);
    return exact ? floor : floor.add(BigInteger.ONE);
  }
}
