package passband.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;

/**
 * What a recorded value has to be. No instrument is known that showed it, so there is no
 * uncertainty: it is compared without a guard band, whatever the decision rule.
 *
 * @param accept inclusive, in SI
 * @param unit that it is recorded and printed in
 */
public record RecordLimit(Limit.Rounded accept, Unit unit) {
  private static final int DIGITS = 12;

  /** Ends that twelve digits of the unit cannot hold are rounded inward. */
  public static RecordLimit of(Bounds bounds, Unit unit) {
    Rational low = rounded(bounds.lower(), unit, RoundingMode.CEILING);
    Rational high = rounded(bounds.upper(), unit, RoundingMode.FLOOR);
    return new RecordLimit(new Limit.Rounded(low, high), unit);
  }

  private static @Nullable Rational rounded(@Nullable Real si, Unit unit, RoundingMode inward) {
    return si == null
        ? null
        : Rational.of(si.over(Real.of(unit.factor())).toDecimal(DIGITS, inward))
            .times(unit.factor());
  }

  /** The lower end in the unit; null where that side is open. */
  public @Nullable BigDecimal lower() {
    return inUnit(accept.lower());
  }

  /** The upper end in the unit; null where that side is open. */
  public @Nullable BigDecimal upper() {
    return inUnit(accept.upper());
  }

  private @Nullable BigDecimal inUnit(@Nullable Rational si) {
    return si == null ? null : new BigDecimal(si.over(unit.factor()).toPlain());
  }

  /** In words: {@code at least 2.7 V}. */
  public String text() {
    return Limit.words(text(accept.lower()), text(accept.upper()), unit);
  }

  private @Nullable String text(@Nullable Rational si) {
    BigDecimal end = inUnit(si);
    return end == null ? null : end.toString();
  }
}
