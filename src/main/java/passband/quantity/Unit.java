package passband.quantity;

import java.math.RoundingMode;

/**
 * A unit.
 *
 * @param symbol the one spelling in sources that the formatter writes; empty for a bare number
 * @param printed the spelling for people, with Greek letters
 * @param ucum the code in machine-readable files (The Unified Code for Units of Measure, 2.1)
 * @param dimension its dimension
 * @param factor how many coherent SI units it is; of degrees Celsius, how many of those
 */
public record Unit(
    String symbol, String printed, String ucum, Dimension dimension, Rational factor) {
  /** A bare number. */
  public static final Unit ONE = new Unit("", "", "1", Dimension.NONE, Rational.ONE);

  /** A value in SI in this unit, with four significant digits. */
  public String rounded(Real si) {
    String digits =
        si.over(Real.of(factor()))
            .toDecimal(4, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
    return symbol().isEmpty() ? digits : digits + " " + printed();
  }
}
