package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Straight lines against published ones, and against a second library. */
class StraightLineTest {

  private static List<Double> numbers(String text) {
    return Arrays.stream(text.strip().split("\\s+")).map(Double::valueOf).toList();
  }

  private static StraightLine fit(String x, String y) {
    StraightLine line = StraightLine.fit(numbers(x), numbers(y));
    assertTrue(line != null);
    return line;
  }

  private static void assertRelative(double expected, double actual, double relative) {
    assertEquals(expected, actual, Math.abs(expected) * relative);
  }

  /** NIST Statistical Reference Datasets, linear regression, Norris: certified values. */
  @Test
  void norris() {
    StraightLine line =
        fit(
            """
            .2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 .4 .6 775.5 666.9 338.0
            447.5 11.6 556.0 228.1 995.8 887.6 120.2 .3 .3 556.8 339.1 887.2 999.0 779.0 11.1 118.3
            229.2 669.1 448.9 .5
            """,
            """
            .1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 .3 .1 778.1 668.8 339.3
            448.9 10.8 557.7 228.3 998.0 888.8 119.6 .3 .6 557.6 339.3 888.0 998.5 778.9 10.2 117.6
            228.9 668.4 449.2 .2
            """);
    assertEquals(36, line.count());
    assertRelative(-.262323073774029, line.start(), 1e-11);
    assertRelative(1.00211681802045, line.slope(), 1e-13);
    assertRelative(.232818234301152, line.startError(), 1e-10);
    assertRelative(.429796848199937e-3, line.slopeError(), 1e-10);
    assertRelative(.884796396144373, line.residual(), 1e-10);
    // Recomputed from the certified values with t = 2.03224450932.
    double half = line.predictionHalfWidth(500, 0.95);
    assertRelative(502.620377819, line.at(500) + half, 1e-10);
    assertRelative(498.971794054, line.at(500) - half, 1e-10);
  }

  /**
   * M. G. Natrella, Experimental Statistics, NBS Handbook 91, worksheet 5-4.1 and page 5-15, as
   * quoted by the tests of an uncertainty library: 91.45 is the variance of one new value at 750.
   */
  @Test
  void natrella() {
    StraightLine line =
        fit(
            "30 100 200 300 400 500 600 700 800 900 1000 1100 1200 1300 1400 1500",
            "4642 4612 4565 4513 4476 4433 4389 4347 4303 4251 4201 4140 4100 4073 4024 3999");
    assertEquals(-.44985482, line.slope(), 5e-9);
    assertEquals(4654.9846, line.start(), 5e-5);
    assertEquals(9.277617, line.residual(), 1e-6);
    assertEquals(19.879452, line.startError() * line.startError(), 2e-6);
    assertEquals(.000025649045, line.slopeError() * line.slopeError(), 2e-12);
    assertEquals(10.53, line.error(1200) * line.error(1200), .005);
    assertEquals(91.45, line.predictionError(750) * line.predictionError(750), .005);
    // With t = 2.14478668792; a band for the line itself would be a quarter as wide.
    assertEquals(4338.10440337, line.at(750) + line.predictionHalfWidth(750, 0.95), 1e-7);
    assertEquals(4322.56814719, line.at(750) + 2.14478668792 * line.error(750), 1e-7);
  }

  /** D. S. Moore, G. P. McCabe, Introduction to the Practice of Statistics, example 10.3. */
  @Test
  void mooreAndMcCabe() {
    StraightLine line =
        fit("15.6 26.8 37.8 36.4 35.5 18.6 15.3 7.9 0", "5.2 6.1 8.7 8.5 8.8 4.9 4.5 2.5 1.1");
    assertEquals(.011448491, line.slopeError(), 1e-9);
    assertEquals(.286036932, line.startError(), 1e-9);
  }

  /** JCGM 100, H.3.4: the correction at 30 °C has the standard uncertainty 0.0041 °C. */
  @Test
  void thermometer() {
    StraightLine line =
        fit(
            "1.521 2.012 2.512 3.003 3.507 3.999 4.513 5.002 5.503 6.010 6.511",
            "-.171 -.169 -.166 -.159 -.164 -.165 -.156 -.157 -.159 -.161 -.160");
    assertEquals(.0029, line.startError(), 5e-5);
    assertEquals(.00067, line.slopeError(), 5e-6);
    assertEquals(.0041, line.error(10), 5e-5);
    assertEquals(.00541857255, line.predictionError(10), 1e-9);
  }

  @Test
  void agreesWithASecondLibrary() {
    Random random = new Random(3);
    for (int run = 0; run < 300; run++) {
      int n = 3 + random.nextInt(20);
      List<Double> x = new ArrayList<>();
      List<Double> y = new ArrayList<>();
      SimpleRegression other = new SimpleRegression();
      for (int i = 0; i < n; i++) {
        x.add(random.nextDouble() * 1000);
        y.add(100 + x.get(i) / 50 + random.nextGaussian());
        other.addData(x.get(i), y.get(i));
      }
      StraightLine line = StraightLine.fit(x, y);
      assertTrue(line != null);
      assertRelative(other.getSlopeStdErr(), line.slopeError(), 1e-9);
      assertRelative(other.getInterceptStdErr(), line.startError(), 1e-9);
      double t = new TDistribution(n - 2).inverseCumulativeProbability(0.975);
      assertRelative(t * line.predictionError(1400), line.predictionHalfWidth(1400, 0.95), 1e-8);
    }
  }

  /** The next value lies in the interval as often as it says. */
  @Test
  void theIntervalHoldsAsOftenAsItSays() {
    Random random = new Random(11);
    List<Double> x = List.of(0.0, 365.0, 730.0, 1100.0);
    int inside = 0;
    int runs = 20000;
    for (int run = 0; run < runs; run++) {
      List<Double> y = new ArrayList<>();
      x.forEach(day -> y.add(300 - day / 100 + 4 * random.nextGaussian()));
      StraightLine line = StraightLine.fit(x, y);
      assertTrue(line != null);
      double next = 300 - 14.65 + 4 * random.nextGaussian();
      if (Math.abs(next - line.at(1465)) <= line.predictionHalfWidth(1465, 0.95)) {
        inside++;
      }
    }
    // Four standard deviations of such a share.
    assertEquals(0.95, (double) inside / runs, 4 * Math.sqrt(0.95 * 0.05 / runs));
  }

  @Test
  void whatIsNotKnownIsNotANumber() {
    assertNull(StraightLine.fit(List.of(), List.of()));
    assertNull(StraightLine.fit(List.of(4.0, 4.0, 4.0), List.of(1.0, 2.0, 3.0)));
    StraightLine two = fit("1 2", "5 7");
    assertEquals(2, two.slope());
    for (double unknown :
        new double[] {
          two.residual(),
          two.slopeError(),
          two.startError(),
          two.predictionError(3),
          two.predictionHalfWidth(3, 0.95)
        }) {
      assertTrue(Double.isNaN(unknown));
    }
    StraightLine nearly = fit("110.7178495 110.7264895 110.7351295", "8915.102 8919.302 8923.502");
    assertFalse(nearly.residual() < 0);
    assertEquals(0, nearly.residual(), 1e-8);
  }

  /**
   * Readings that did not change in their last digit, or lie on a line by chance, are not exact:
   * the next may be one step off (JCGM 100, F.2.2.1). With much scatter the step does not matter.
   */
  @ParameterizedTest
  @CsvSource({"10, 10, 10", "10, 9, 8", "8, 9, 10", "10, 10, 11"})
  void equalReadingsAreNotExact(double one, double two, double three) {
    List<LocalDate> days =
        List.of(LocalDate.of(2024, 3, 1), LocalDate.of(2025, 3, 1), LocalDate.of(2026, 3, 1));
    LocalDate last = days.get(2);
    LocalDate next = last.plusYears(1);
    List<Double> readings = List.of(one, two, three);
    Trend coarse = Trend.of(days, readings, Double.NaN, Double.NaN, 1);
    Trend exact = Trend.of(days, readings, Double.NaN, Double.NaN, 0);
    double least = 1.96 / Math.sqrt(12) * Math.sqrt(1 + 1.0 / 3 + 4.0 / 2);
    assertEquals(Math.max(least, exact.halfWidth(next)), coarse.halfWidth(next), 0.01 * least);
    double line = coarse.at(next);
    Trend close = Trend.of(days, readings, Double.NaN, line + 0.4, 1);
    assertTrue(close.crosses(next), "a limit less than a step above the line is not safe");
    assertTrue(close.daysInside(last) < 366);
  }
}
