package passband.limit;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Amount;

/**
 * A limit as the manual prints it.
 *
 * @param quantity the name of the quantity; null when the cell does not say
 * @param lower null when that side is open
 * @param upper null when that side is open
 * @param span the cell
 * @param heading the heading of its column
 */
public record Stated(
    @Nullable String quantity, @Nullable End lower, @Nullable End upper, Span span, Span heading) {

  /**
   * One end.
   *
   * @param value in SI
   * @param digit one unit of the last digit printed, in SI
   * @param amount as written
   */
  public record End(Rational value, Rational digit, Unit unit, Amount amount) {}

  /** The unit of its ends. */
  public Unit unit() {
    return Objects.requireNonNull(lower == null ? upper : lower, "a stated end").unit();
  }

  /** Whether it is for the quantity of this name. */
  public boolean of(@Nullable String name) {
    return quantity != null && quantity.equals(name);
  }

  /** The same for a quantity. */
  public Stated named(String name) {
    return new Stated(name, lower, upper, span, heading);
  }

  /** The ends as bounds without a nominal. */
  public Bounds bounds() {
    return new Bounds(
        null,
        lower == null ? null : Real.of(lower.value),
        upper == null ? null : Real.of(upper.value));
  }

  /** An end from an amount; null, with the fault said, when its unit or number is at fault. */
  public static @Nullable End end(Amount amount, Values values) {
    Unit unit = values.unitOf(amount);
    if (unit == null || amount.number() == null) {
      return null;
    }
    return new End(
        amount.number().times(unit.factor()),
        amount.lastDigit().times(unit.factor()),
        unit,
        amount);
  }
}
