package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;
import passband.evidence.WrittenFormula;
import passband.quantity.Rational;
import passband.quantity.Real;

/** The scatter of repeated readings against published examples and a second library. */
class ScatterTest {
  private static List<String> names(String quantity, int n) {
    List<String> names = new ArrayList<>();
    for (int i = 1; i <= n; i++) {
      names.add(quantity + "-" + i);
    }
    return names;
  }

  private static Map<String, Real> values(String quantity, String... read) {
    Map<String, Real> values = new HashMap<>();
    for (int i = 0; i < read.length; i++) {
      values.put(quantity + "-" + (i + 1), Real.of(Rational.of(new BigDecimal(read[i]))));
    }
    return values;
  }

  private static double standard(Scatter scatter) {
    return Math.sqrt(scatter.variance().doubleValue());
  }

  /** JCGM 100, table 1 (4.4.3): 20 temperatures: 100.14 °C, s = 1.49 °C, of the mean 0.33 °C. */
  @Test
  void temperatures() {
    String[] read =
        ("96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07 100.33 100.42 100.68 100.95"
                + " 101.11 101.20 101.57 101.84 102.36 102.72")
            .split(" ");
    Map<String, Real> values = values("t", read);
    Map<String, Real> slopes = new HashMap<>();
    names("t", 20).forEach(name -> slopes.put(name, Real.of(Rational.of(1, 20))));
    Scatter scatter = Scatter.of(List.of(names("t", 20)), values, slopes);
    assertEquals(0.333, standard(scatter), 0.0005);
    assertEquals(1.489, standard(scatter) * Math.sqrt(20), 0.0005);
    assertEquals(19, scatter.freedom().doubleValue(), 0);
  }

  private static final String[] VOLTS = {"5.007", "4.994", "5.005", "4.990", "4.999"};
  private static final String[] AMPERES = {
    "0.019663", "0.019639", "0.019640", "0.019685", "0.019678"
  };
  private static final String[] RADIANS = {"1.0456", "1.0438", "1.0468", "1.0428", "1.0433"};

  /**
   * JCGM 100, H.2: resistance, reactance and impedance from five readings each of voltage, current
   * and phase angle: 127.732, 219.847 and 254.260 Ω with u = 0.071, 0.295 and 0.236 Ω, correlated
   * by −0.588, −0.485 and 0.993. Of the reactance the example prints a digit of rounded parts:
   * without rounding it is 0.295 58 Ω.
   */
  @Test
  void impedance() {
    Map<String, Real> values = values("v", VOLTS);
    values.putAll(values("i", AMPERES));
    values.putAll(values("p", RADIANS));
    double v = mean(VOLTS);
    double i = mean(AMPERES);
    double p = mean(RADIANS);
    double[] resistance = {Math.cos(p) / i, -v / i / i * Math.cos(p), -v / i * Math.sin(p)};
    double[] reactance = {Math.sin(p) / i, -v / i / i * Math.sin(p), v / i * Math.cos(p)};
    double[] impedance = {1 / i, -v / i / i, 0};
    assertEquals(127.732, v / i * Math.cos(p), 0.0005);
    assertEquals(219.847, v / i * Math.sin(p), 0.0005);
    assertEquals(254.260, v / i, 0.0005);
    double r = variance(values, resistance);
    double x = variance(values, reactance);
    double z = variance(values, impedance);
    assertEquals(0.071, Math.sqrt(r), 0.0005);
    assertEquals(0.295, Math.sqrt(x), 0.001);
    assertEquals(0.29558, Math.sqrt(x), 0.000005);
    assertEquals(0.236, Math.sqrt(z), 0.0005);
    assertEquals(-0.588, correlation(values, resistance, reactance), 0.0005);
    assertEquals(-0.485, correlation(values, resistance, impedance), 0.0005);
    assertEquals(0.993, correlation(values, reactance, impedance), 0.0005);
  }

  private static double mean(String... read) {
    double sum = 0;
    for (String one : read) {
      sum += Double.parseDouble(one);
    }
    return sum / read.length;
  }

  private static double variance(Map<String, Real> values, double... slopes) {
    Map<String, Real> each = new HashMap<>();
    List<List<String>> repeats = new ArrayList<>();
    for (int q = 0; q < slopes.length; q++) {
      List<String> names = names(List.of("v", "i", "p").get(q), 5);
      Real slope = Real.of(Rational.of(new BigDecimal(slopes[q])).over(Rational.of(5)));
      names.forEach(name -> each.put(name, slope));
      repeats.add(names);
    }
    return Scatter.of(repeats, values, each).variance().doubleValue();
  }

  /** From the variance of a sum. */
  private static double correlation(Map<String, Real> values, double[] one, double[] other) {
    double[] sum = new double[one.length];
    for (int q = 0; q < one.length; q++) {
      sum[q] = one[q] + other[q];
    }
    double a = variance(values, one);
    double b = variance(values, other);
    return (variance(values, sum) - a - b) / 2 / Math.sqrt(a * b);
  }

  /**
   * The impedance as the language writes it: u = 0.236 336 Ω, and 0.204 076 Ω where the correlation
   * of voltage and current were left out (recomputed exactly); the mean of the five ratios has
   * 0.236 248 Ω (H.2.4), here of first order.
   */
  @Test
  void impedanceAsAFormula() {
    Map<String, Real> values = values("v", VOLTS);
    values.putAll(values("i", AMPERES));
    String means = "(v-1 + v-2 + v-3 + v-4 + v-5) / 5 / ((i-1 + i-2 + i-3 + i-4 + i-5) / 5)";
    Gradient.Dual of = Gradient.at(new WrittenFormula(means).tree(), values);
    List<List<String>> repeats = List.of(names("v", 5), names("i", 5));
    assertEquals(254.2597019, of.value().doubleValue(), 5e-8);
    assertEquals(0.23633613, standard(Scatter.of(repeats, values, of.slopes())), 5e-9);
    Scatter volts = Scatter.of(repeats.subList(0, 1), values, of.slopes());
    Scatter amperes = Scatter.of(repeats.subList(1, 2), values, of.slopes());
    assertEquals(0.20407643, Math.hypot(standard(volts), standard(amperes)), 5e-9);
    String ratios = "(v-1 / i-1 + v-2 / i-2 + v-3 / i-3 + v-4 / i-4 + v-5 / i-5) / 5";
    Gradient.Dual mean = Gradient.at(new WrittenFormula(ratios).tree(), values);
    assertEquals(254.2600496, mean.value().doubleValue(), 5e-8);
    assertEquals(0.2362475, standard(Scatter.of(repeats, values, mean.slopes())), 2e-4);
  }

  @Test
  void agreesWithASecondLibrary() {
    Random random = new Random(5);
    for (int run = 0; run < 200; run++) {
      int n = 2 + random.nextInt(9);
      String[] one = new String[n];
      String[] other = new String[n];
      double[][] data = new double[n][2];
      SummaryStatistics alone = new SummaryStatistics();
      for (int k = 0; k < n; k++) {
        one[k] = BigDecimal.valueOf(random.nextInt(100_000), 3).toPlainString();
        other[k] = BigDecimal.valueOf(random.nextInt(100_000), 3).toPlainString();
        data[k] = new double[] {Double.parseDouble(one[k]), Double.parseDouble(other[k])};
        alone.addValue(data[k][0]);
      }
      Map<String, Real> values = values("a", one);
      values.putAll(values("b", other));
      Map<String, Real> slopes = new HashMap<>();
      names("a", n).forEach(name -> slopes.put(name, Real.of(Rational.of(2, n))));
      names("b", n).forEach(name -> slopes.put(name, Real.of(Rational.of(-3, n))));
      Scatter both = Scatter.of(List.of(names("a", n), names("b", n)), values, slopes);
      double[][] s = new Covariance(data).getCovarianceMatrix().getData();
      double expected = (4 * s[0][0] - 12 * s[0][1] + 9 * s[1][1]) / n;
      assertEquals(expected, both.variance().doubleValue(), 1e-9 * (1 + Math.abs(expected)));
      Scatter first = Scatter.of(List.of(names("a", n)), values, slopes);
      assertEquals(2 * alone.getStandardDeviation() / Math.sqrt(n), standard(first), 1e-9);
      assertEquals(n - 1, first.freedom().doubleValue(), 0);
    }
  }
}
