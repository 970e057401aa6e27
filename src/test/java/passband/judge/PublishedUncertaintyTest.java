package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.Item;
import passband.quantity.Distribution;
import passband.quantity.Rational;

/** Uncertainties, probabilities and lines against published examples and a second library. */
class PublishedUncertaintyTest {

  /**
   * JCGM 100, H.1: 25, 5.8, 3.9, 6.7, 2.88679 and 16.599 nm combine to 32 nm (1002 nm² there, from
   * parts not yet rounding); H.1.6: 5.8, 3.9 and 6.7 nm to 9.7 nm.
   */
  @Test
  void endGauge() {
    double all = Budget.combined(List.of(25.0, 5.8, 3.9, 6.7, 2.88679, 16.599));
    assertEquals(32, Math.round(all));
    assertEquals(1002, all * all, 1);
    assertEquals(9.7, Budget.combined(List.of(5.8, 3.9, 6.7)), 0.05);
  }

  /** EA-4/02, S2: 22.5, 8.66, 14.43, 5.77 and 5.77 mg combine to 29.3 mg (29.26), U = 58.5 mg. */
  @Test
  void weight() {
    double u = Budget.combined(List.of(22.5, 8.66, 14.43, 5.77, 5.77));
    assertEquals(29.26, u, 0.005);
    assertEquals(58.5, 2 * u, 0.05);
  }

  /**
   * ILAC-G8:09/2019, non-binary statements with w = U, for 10 ± 1 and U = 0.2 (an example of a
   * public course note; the risks beside it derived).
   */
  @ParameterizedTest
  @CsvSource({
    "10.79, pass, 0.017864",
    "10.80, pass, 0.022750",
    "10.81, conditional pass, 0.028717",
    "10.99, conditional pass, 0.4602",
    "11.00, conditional pass, 0.5",
    "11.01, conditional fail, 0.5398",
    "11.19, conditional fail, 0.9713",
    "11.20, conditional fail, 0.97725",
    "11.21, fail, 0.98214",
    "9.20, pass, 0.022750",
    "9.19, conditional pass, 0.028717",
    "8.80, conditional fail, 0.97725",
    "8.79, fail, 0.98214"
  })
  void fourOutcomes(java.math.BigDecimal value, String stated, double risk) {
    java.math.BigDecimal low = new java.math.BigDecimal(9);
    java.math.BigDecimal high = new java.math.BigDecimal(11);
    java.math.BigDecimal u = new java.math.BigDecimal("0.2");
    assertEquals(stated, Statement.of(value, low, high, u).word());
    assertEquals(risk, 1 - Budget.conformity(value.doubleValue(), 9.0, 11.0, 0.1), 5e-5);
    boolean above = value.doubleValue() > 10;
    assertEquals(stated, Statement.of(value, above ? null : low, above ? high : null, u).word());
  }

  /**
   * The same from what is known of each part (EA-4/02, S2; the half-widths from memory): a
   * certificate's 45 mg with k = 2 and limits of 15, 25, 10 and 10 mg.
   */
  @Test
  void weightFromItsBudget() {
    java.math.BigDecimal none = java.math.BigDecimal.ZERO;
    Distribution certificate =
        java.util.Objects.requireNonNull(Distribution.find("normal", Rational.of(2)));
    List<Double> parts = new java.util.ArrayList<>();
    parts.add(
        Budget.standard(
            new Item.Contribution("mass", none, new java.math.BigDecimal(45), certificate), 1));
    for (int limit : new int[] {15, 25, 10, 10}) {
      parts.add(
          Budget.standard(new Item.Contribution("x", none, new java.math.BigDecimal(limit)), 1));
    }
    assertEquals(22.5, parts.get(0), 1e-12);
    assertEquals(29.26, Budget.combined(parts), 0.005);
  }

  /** JCGM 106, the resistor example's prior: 1500 Ω with u = 0.12 Ω, 1499.8 to 1500.2 Ω: 90.4 %. */
  @Test
  void resistor() {
    assertEquals(0.90442, Budget.conformity(1500, 1499.8, 1500.2, 0.12), 0.000005);
  }

  /**
   * ILAC-G8 and ISO 14253-1, k = 2: guard bands of 0, 0.83 U, U, 1.5 U and 3 U leave 50 %, 5 %, 2.5
   * %, 0.16 % and 1 ppm at most; the exact figures are derived.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0.5, 0.5",
    "0.83, 0.0484572, 0.05",
    "1, 0.0227501, 0.025",
    "1.5, 0.00134990, 0.0016",
    "3, 9.8659e-10, 1e-6"
  })
  void guardBands(double shareOfU, double risk, double published) {
    assertEquals(risk, Budget.risk(2 * shareOfU), risk * 1e-5);
    assertTrue(Budget.risk(2 * shareOfU) <= published);
  }

  /**
   * Derived by JCGM 100, 4.3.7 and 5.1.2: a meter to ±(2.5 % of reading + 2 mA) at 282.842712 mA, k
   * = 2, has U = 10.474367 mA.
   */
  @Test
  void meter() {
    Item.Contribution error =
        new Item.Contribution(
            "analyzer error", new java.math.BigDecimal("0.025"), new java.math.BigDecimal("2"));
    assertEquals(10.474367, 2 * Budget.halfWidth(error, 282.842712) / Math.sqrt(3), 1e-6);
  }

  /**
   * JCGM 100, H.3: the corrections of a thermometer against its reading less 20 °C: −0.1712 °C and
   * 0.002 18; at 30 °C −0.1494 °C.
   */
  @Test
  void thermometer() {
    List<Double> t =
        List.of(1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511);
    List<Double> b =
        List.of(
            -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160);
    StraightLine line = StraightLine.fit(t, b);
    assertEquals(-0.1712, line.start(), 0.00005);
    assertEquals(0.00218, line.slope(), 0.000005);
    assertEquals(-0.1494, line.at(10), 0.00005);
  }

  @Test
  void agreesWithASecondLibrary() {
    Random random = new Random(17);
    NormalDistribution other = new NormalDistribution(0, 1);
    for (int i = 0; i < 2000; i++) {
      double y = random.nextGaussian() * 100;
      double u = 0.01 + random.nextDouble() * 20;
      double low = y - random.nextDouble() * 60 + 10;
      double high = low + random.nextDouble() * 80;
      assertEquals(
          other.cumulativeProbability((high - y) / u) - other.cumulativeProbability((low - y) / u),
          Budget.conformity(y, low, high, u),
          1e-12);
      assertEquals(
          other.cumulativeProbability((high - y) / u), Budget.conformity(y, null, high, u), 1e-12);
      assertEquals(
          1 - other.cumulativeProbability((low - y) / u),
          Budget.conformity(y, low, null, u),
          1e-12);
    }
    SimpleRegression regression = new SimpleRegression();
    List<Double> x = new java.util.ArrayList<>();
    List<Double> values = new java.util.ArrayList<>();
    for (int i = 0; i < 50; i++) {
      x.add(random.nextDouble() * 1000);
      values.add(random.nextGaussian() + x.get(i) / 100);
      regression.addData(x.get(i), values.get(i));
    }
    StraightLine line = StraightLine.fit(x, values);
    assertEquals(regression.getSlope(), line.slope(), 1e-12);
    assertEquals(regression.getIntercept(), line.start(), 1e-9);
  }

  @Test
  void withoutUncertaintyTheComparisonDecides() {
    assertEquals(1, Budget.conformity(5, 5.0, 6.0, 0));
    assertEquals(1, Budget.conformity(6, 5.0, 6.0, 0));
    assertEquals(0, Budget.conformity(6.1, 5.0, 6.0, 0));
    assertEquals(0, Budget.conformity(4.9, 5.0, null, 0));
  }
}
