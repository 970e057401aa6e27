package passband.syntax;

import java.math.BigDecimal;
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
public record Amount(String digits, Rational number, Word unit, Span span) {

  /** The same number with a unit taken from elsewhere. */
  public Amount withUnit(Word other) {
    return new Amount(digits, number, other, span);
  }

  /** Whether the unit is written after the number, not taken from elsewhere. */
  public boolean hasOwnUnit() {
    return unit != null && span.holds(unit.span());
  }

  /** The number without its unit. */
  public Span numberSpan() {
    if (!hasOwnUnit()) {
      return span;
    }
    int length = span.text().substring(0, unit.span().start() - span.start()).strip().length();
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
