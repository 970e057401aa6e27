package passband.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Coverage factors and effective degrees of freedom against JCGM 100, annexes G and H. */
class StudentTest {
  /**
   * JCGM 100, Table G.2: t for 68.27, 90, 95, 95.45, 99 and 99.73 %. The printed figures 1.84,
   * 12.71, 13.97, 5.51, 1.72, 235.8, 19.21, 3.11, 1.81 and 2.09 are that table's, the digits after
   * them derived.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 1.8374094, 6.3137515, 12.706205, 13.967811, 63.656741, 235.78369",
    "2, 1.3213155, 2.9199856, 4.3026527, 4.5265508, 9.9248432, 19.206016",
    "5, 1.1105334, 2.0150484, 2.5705818, 2.6486543, 4.0321430, 5.5069850",
    "10, 1.0525865, 1.8124611, 2.2281389, 2.2836816, 3.1692727, 3.9568900",
    "16, 1.0322649, 1.7458837, 2.1199053, 2.1689430, 2.9207816, 3.5440919",
    "19, 1.0270403, 1.7291328, 2.0930241, 2.1404966, 2.8609346, 3.4471998",
    "20, 1.0256556, 1.7247182, 2.0859634, 2.1330284, 2.8453397, 3.4221186",
    "50, 1.0101227, 1.6759050, 2.0085591, 2.0512508, 2.6777933, 3.1571213",
    "100, 1.0050470, 1.6602343, 1.9839715, 2.0253117, 2.6258905, 3.0767309"
  })
  void tableOfStudentsT(
      int freedom, double p68, double p90, double p95, double p9545, double p99, double p9973) {
    List<Double> inside = List.of(0.6827, 0.90, 0.95, 0.9545, 0.99, 0.9973);
    List<Double> published = List.of(p68, p90, p95, p9545, p99, p9973);
    NormalDistribution normal = new NormalDistribution(0, 1);
    for (int i = 0; i < inside.size(); i++) {
      double z = normal.inverseCumulativeProbability((1 + inside.get(i)) / 2);
      double t = Student.factor(Rational.of(BigDecimal.valueOf(z)), freedom).doubleValue();
      assertEquals(published.get(i), t, published.get(i) * 6e-8);
    }
  }

  /** The factor 2 stands for 95.45 %: 95.449 97 %, so that it differs in the seventh digit. */
  @Test
  void theFactorTwoIsTheColumnOf95Point45() {
    assertEquals(2.2836816, Student.factor(Rational.TWO, 10).doubleValue(), 5e-6);
    assertEquals(Rational.TWO, Student.factor(Rational.TWO, null));
    assertEquals(Rational.ZERO, Student.factor(Rational.ZERO, 3));
  }

  @Test
  void agreesWithASecondLibrary() {
    Random random = new Random(5);
    NormalDistribution normal = new NormalDistribution(0, 1);
    for (int i = 0; i < 300; i++) {
      int freedom = 1 + random.nextInt(Student.MOST);
      double z = 0.1 + 3 * random.nextDouble();
      double other =
          new TDistribution(freedom)
              .cumulativeProbability(
                  Student.factor(Rational.of(BigDecimal.valueOf(z)), freedom).doubleValue());
      assertEquals(normal.cumulativeProbability(z), other, 1e-10);
    }
  }

  /** Standard uncertainties with their degrees of freedom; 0 for infinitely many. */
  private static Integer effective(double... pairs) {
    Real variance = Real.ZERO;
    Real shares = Real.ZERO;
    for (int i = 0; i < pairs.length; i += 2) {
      Real u = Real.of(Rational.of(BigDecimal.valueOf(pairs[i])));
      Rational degrees = pairs[i + 1] == 0 ? null : Rational.of(BigDecimal.valueOf(pairs[i + 1]));
      variance = variance.plus(u.times(u));
      shares = shares.plus(Student.share(u.times(u), Distribution.RECTANGULAR.with(degrees)));
    }
    return Student.effective(variance, shares);
  }

  /**
   * JCGM 100, H.1.6: 16.7, rounded down to 16, and k = 2.92 for 99 %; its d alone has 25.6. G.4.1:
   * 0.25, 0.57 and 0.82 % have 19.0, which is 18.9987 before the combined 1.03 % is rounded, and so
   * 18. A course note: 0.57 with 9 and 0.25 with infinitely many have 12.8.
   */
  @Test
  void welchAndSatterthwaite() {
    assertEquals(16, effective(25, 18, 5.8, 24, 3.9, 5, 6.7, 8, 2.88675, 50, 16.599, 2));
    double z = new NormalDistribution(0, 1).inverseCumulativeProbability(0.995);
    assertEquals(2.92, Student.factor(Rational.of(BigDecimal.valueOf(z)), 16).doubleValue(), 0.005);
    assertEquals(25, effective(5.8, 24, 3.9, 5, 6.7, 8));
    assertEquals(18, effective(0.25, 9, 0.57, 4, 0.82, 14));
    assertEquals(12, effective(0.57, 9, 0.25, 0));
  }

  /** One contribution keeps its own; whole ones are not rounded to the next lower. */
  @Test
  void oneContributionKeepsItsDegrees() {
    for (int freedom = 1; freedom <= Student.MOST; freedom++) {
      assertEquals(freedom, effective(0.7, freedom));
      assertEquals(freedom, effective(0.7, freedom, 0, 3));
    }
    assertEquals(Student.MOST, effective(0.7, 1e9));
    assertEquals(12, effective(0.7, 12.9));
    assertNull(effective(0.7, 0, 1, 0));
  }

  /** JCGM 100, G.6.4: never fewer than the fewest of the parts, never more than all together. */
  @Test
  void theyLieBetweenTheFewestAndTheSum() {
    Random random = new Random(8);
    for (int i = 0; i < 500; i++) {
      int one = 1 + random.nextInt(40);
      int other = 1 + random.nextInt(40);
      int both =
          Objects.requireNonNull(
              effective(0.01 + random.nextDouble(), one, 0.01 + random.nextDouble(), other));
      assertTrue(
          both >= Math.min(one, other) && both <= one + other, one + " " + other + " " + both);
    }
  }
}
