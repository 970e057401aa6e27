package passband.syntax;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.source.Span;

/**
 * A number as written, with its unit when it has one.
 *
 * @param digits the number's characters, sign included
 * @param number its exact value; null when it could not be taken
 * @param unit the unit as written; null when there is none
 * @param span the whole
 */
public record Amount(String digits, @Nullable Rational number, @Nullable Word unit, Span span) {

  /** The same number with a unit taken from elsewhere. */
  public Amount withUnit(@Nullable Word other) {
    return new Amount(digits, number, other, span);
  }

  /** Whether the unit is written after the number, not taken from elsewhere. */
  public boolean hasOwnUnit() {
    return ownUnit() != null;
  }

  /** The unit written after the number; null where it is taken from elsewhere or there is none. */
  public @Nullable Word ownUnit() {
    return unit != null && span.holds(unit.span()) ? unit : null;
  }

  /** The number without its unit. */
  public Span numberSpan() {
    Word own = ownUnit();
    if (own == null) {
      return span;
    }
    int length = span.text().substring(0, own.span().start() - span.start()).strip().length();
    return new Span(span.file(), span.start(), span.start() + length);
  }

  /**
   * The value of one unit of the last digit written: 1 for {@code 179}, 0.1 for {@code 12.5}, 100
   * for {@code 2e2}.
   */
  public Rational lastDigit() {
    return Rational.TEN.pow(-new BigDecimal(digits).scale());
  }
}
