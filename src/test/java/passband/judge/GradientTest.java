package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.analysis.differentiation.DerivativeStructure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.WrittenFormula;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.Expression;

/** Values and sensitivity coefficients of formulas (JCGM 100, 5.1.3), against a second library. */
class GradientTest {
  private static Expression formula(String text) {
    return new WrittenFormula(text).tree();
  }

  private static Gradient.Dual at(String text, String voltage, String current) {
    return Gradient.at(
        formula(text),
        Map.of(
            "voltage", Real.of(Rational.parse(voltage)),
            "current", Real.of(Rational.parse(current))));
  }

  private static double slope(Gradient.Dual dual, String name) {
    return dual.slopes().containsKey(name) ? dual.slopes().get(name).doubleValue() : 0;
  }

  /** Worked by hand. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "voltage + current             |  3 | 4 | 7    | 1     | 1",
        "voltage - current             |  3 | 4 | -1   | 1     | -1",
        "voltage * current             |  3 | 4 | 12   | 4     | 3",
        "voltage / current             |  3 | 4 | 0.75 | 0.25  | -0.1875",
        "voltage ^ 2                   |  3 | 4 | 9    | 6     | 0",
        "voltage ^ 0                   |  3 | 4 | 1    | 0     | 0",
        "voltage ^ -1                  |  2 | 4 | 0.5  | -0.25 | 0",
        "voltage ^ 0.5                 |  9 | 4 | 3    | 0.16666666666666667 | 0",
        "sqrt(voltage * current)       |  9 | 4 | 6    | 0.33333333333333333 | 0.75",
        "abs(voltage - current)        |  3 | 4 | 1    | -1    | 1",
        "abs(voltage - current)        |  5 | 4 | 1    | 1     | -1",
        "max(voltage, current)         |  3 | 4 | 4    | 0     | 1",
        "max(voltage, current)         |  5 | 4 | 5    | 1     | 0",
        "min(voltage, current)         |  3 | 4 | 3    | 1     | 0",
        "min(voltage, current)         |  5 | 4 | 4    | 0     | 1",
        "-voltage                      |  3 | 4 | -3   | -1    | 0",
        "2 * voltage                   |  3 | 4 | 6    | 2     | 0",
        "3 mA * voltage                |  5 | 4 | 0.015 | 0.003 | 0",
        "voltage * voltage / voltage   |  3 | 4 | 3    | 1     | 0"
      })
  void byHand(String text, String v, String i, double value, double byV, double byI) {
    Gradient.Dual dual = at(text, v, i);
    assertEquals(value, dual.value().doubleValue(), 1e-15);
    assertEquals(byV, slope(dual, "voltage"), 1e-15);
    assertEquals(byI, slope(dual, "current"), 1e-15);
  }

  /** Apache Commons Math 3.6.1, DerivativeStructure, at 500 places. */
  @Test
  void agreesWithASecondLibrary() {
    Random random = new Random(5);
    for (int n = 0; n < 500; n++) {
      String v = Integer.toString(1 + random.nextInt(900));
      String i = Integer.toString(1 + random.nextInt(900));
      Gradient.Dual own = at("(voltage ^ 3 - 2 * current) / sqrt(voltage + current)", v, i);
      DerivativeStructure x = new DerivativeStructure(2, 1, 0, Double.parseDouble(v));
      DerivativeStructure y = new DerivativeStructure(2, 1, 1, Double.parseDouble(i));
      DerivativeStructure other = x.pow(3).subtract(y.multiply(2)).divide(x.add(y).sqrt());
      assertClose(other.getValue(), own.value().doubleValue());
      assertClose(other.getPartialDerivative(1, 0), slope(own, "voltage"));
      assertClose(other.getPartialDerivative(0, 1), slope(own, "current"));
    }
  }

  private static void assertClose(double expected, double actual) {
    assertEquals(expected, actual, Math.abs(expected) * 1e-12 + 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "voltage / (current - 4)   | 3 | 4 | division by zero",
        "(current - 4) ^ -1        | 3 | 4 | division by zero",
        "sqrt(current - 4)         | 3 | 4 | the square root of zero or a negative value",
        "sqrt(current - 5)         | 3 | 4 | the square root of zero or a negative value",
        "voltage ^ sqrt(2)         | 3 | 4 | an exponent that is not a number",
        "frequency * voltage       | 3 | 4 | 'frequency' has no value",
        "cube(voltage)             | 3 | 4 | an unknown function"
      })
  void whereThereIsNone(String text, String v, String i, String why) {
    ArithmeticException said = assertThrows(ArithmeticException.class, () -> at(text, v, i));
    assertTrue(said.getMessage().contains(why), said.getMessage());
  }
}
