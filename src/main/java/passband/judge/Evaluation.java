package passband.judge;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Rational;
import passband.quantity.Student;

/**
 * How well a value is known.
 *
 * @param standard its standard uncertainty, in its unit; NaN where it is not known
 * @param freedom its effective degrees of freedom; null for infinitely many
 */
record Evaluation(double standard, @Nullable Integer freedom) {
  /** Of a reading. */
  static Evaluation of(Item.Reading reading, Rational y, BigDecimal coverage) {
    return new Evaluation(
        Budget.standard(reading, y.doubleValue(), coverage.doubleValue()),
        Budget.freedom(reading, y));
  }

  /** Of a derived value. */
  static Evaluation of(DerivedValue value) {
    return new Evaluation(
        value.variance() == null ? Double.NaN : Math.sqrt(value.variance().doubleValue()),
        value.freedom());
  }

  /** The factor for it, of that for infinitely many degrees of freedom. */
  Rational factor(BigDecimal normal) {
    return Student.factor(Rational.of(normal), freedom);
  }

  /** The expanded uncertainty; NaN where it is not known. */
  double expanded(BigDecimal coverage) {
    return standard * factor(coverage).doubleValue();
  }

  /**
   * The probability that what has this value conforms to its tolerance; NaN where none is known.
   */
  double conformity(double value, Item.@Nullable Limits limits) {
    return limits == null || Double.isNaN(standard)
        ? Double.NaN
        : Budget.conformity(
            value, doubled(limits.lower()), doubled(limits.upper()), standard, freedom);
  }

  private static @Nullable Double doubled(@Nullable BigDecimal value) {
    return value == null ? null : value.doubleValue();
  }
}
