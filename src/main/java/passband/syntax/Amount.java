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

  /**
   * The value of one unit of the last digit written: 1 for {@code 179}, 0.1 for {@code 12.5}, 100
   * for {@code 2e2}.
   */
  public Rational lastDigit() {
    return Rational.TEN.pow(-new BigDecimal(digits).scale());
  }
}
