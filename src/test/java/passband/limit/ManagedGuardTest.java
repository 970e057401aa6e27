package passband.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.DecisionKind;

/** ANSI/NCSL Z540.3, method 6: the factor K = 1 − M/TUR of the tolerance. */
class ManagedGuardTest {
  private static final Decision MANAGED = new Decision(DecisionKind.MANAGED, null, Rational.TWO);

  /** The formula as published; the digits derived. */
  @ParameterizedTest
  @CsvSource({
    "1, 0.5427482524",
    "1.5, 0.7598817960",
    "2, 0.8591773460",
    "3, 0.9482272420",
    "4, 0.9867196755"
  })
  void factorOfTheTolerance(double tur, double k) {
    assertEquals(k, 1 - Decision.managed(tur).doubleValue() / tur, 1e-10);
  }

  /** From 4.5918 on the formula would accept more than the tolerance. */
  @Test
  void itNeverWidensTheTolerance() {
    assertTrue(Decision.managed(4.591).signum() > 0);
    for (double tur : new double[] {4.5918, 5, 10, 1e6}) {
      assertEquals(Rational.ZERO, Decision.managed(tur));
    }
  }

  /** At the ratios of the sheet; where there is none, all of U. */
  @Test
  void withoutARatioAllOfUIsTaken() {
    assertEquals(Rational.TWO, MANAGED.guard(null));
    assertEquals(Rational.TWO, MANAGED.guard());
    double three = MANAGED.guard(Real.of(Rational.of(3))).doubleValue();
    assertEquals(2 * 3 * (1 - 0.9482272420), three, 1e-8);
    assertEquals(Rational.ZERO, Decision.SIMPLE.guard(Real.of(Rational.of(3))));
  }
}
