package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import passband.quantity.Distribution;
import passband.quantity.Rational;

/** The probability that a sheet fails, beside published figures, closed forms and draws. */
class KernelTest {
  private static final Spread NORMAL =
      Spread.of(new Distribution(Distribution.Shape.NORMAL, Rational.ONE));
  private static final int VISITS = 400_000;

  private static Window window(String lower, String upper, String step) {
    return Window.of(
        lower == null ? null : Rational.parse(lower),
        upper == null ? null : Rational.parse(upper),
        Rational.parse(step));
  }

  private static ErrorTerm rectangular(String key, double half) {
    return new ErrorTerm(key, half, Spread.RECTANGULAR);
  }

  private static Observation reading(double truth, Window window, ErrorTerm own) {
    return new Observation(truth, window, own, Observation.NO_ERROR);
  }

  private static double failing(List<Observation> readings) {
    return new Kernel().failing(readings).value();
  }

  /** Four standard errors: one in 16,000 would fail by chance, and the seed does not change. */
  private static void assertDrawn(List<Observation> readings, double expected) {
    double drawn = Simulation.failing(readings, VISITS, 1);
    double error = Math.sqrt(expected * (1 - expected) / VISITS);
    assertEquals(expected, drawn, 4 * error + 1e-9);
  }

  /** The sum of two rectangular errors is a trapezoid (JCGM 101, 6.4.4). */
  @Test
  void oneReadingWithTwoErrors() {
    double truth = 400 * Math.sqrt(0.85);
    List<Observation> one =
        List.of(
            new Observation(
                truth,
                window("369", "428", "0.1"),
                rectangular("range", 0.01 * truth + 0.3),
                rectangular("load", 0.005 * truth)));
    assertEquals(0.521092, failing(one), 2e-6);
    assertEquals(trapezoid(368.95 - truth, 0.01 * truth + 0.3, 0.005 * truth), failing(one), 1e-7);
    assertDrawn(one, failing(one));
  }

  private static double trapezoid(double x, double a, double b) {
    double flat = Math.abs(a - b);
    double whole = a + b;
    double height = 1 / (2 * Math.max(a, b));
    return Math.abs(x) <= flat
        ? 0.5 + x * height
        : x > 0 ? 1 - Math.pow(whole - x, 2) / (8 * a * b) : Math.pow(whole + x, 2) / (8 * a * b);
  }

  @Test
  void manyReadingsWithOneErrorAreNotManyChances() {
    List<Observation> common = new ArrayList<>();
    List<Observation> apart = new ArrayList<>();
    for (double truth : new double[] {95.2, 95.0, 94.9}) {
      common.add(reading(truth, window("95", "105", "1"), rectangular("range", 1)));
      apart.add(reading(truth, window("95", "105", "1"), rectangular("range" + truth, 1)));
    }
    assertEquals(0.3, failing(common), 1e-12);
    assertEquals(0.55375, failing(apart), 1e-12);
    assertDrawn(common, 0.3);
    assertDrawn(apart, 0.55375);
  }

  @Test
  void aCommonErrorAndOneOfEachReadingsOwn() {
    List<Observation> ten = new ArrayList<>();
    List<Observation> apart = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      ErrorTerm each = new ErrorTerm("load " + i, 1, NORMAL);
      Window window = window("-3", "3", "0.000000001");
      ten.add(new Observation(1, window, new ErrorTerm("range", 1, NORMAL), each));
      apart.add(new Observation(1, window, new ErrorTerm("range " + i, 1, NORMAL), each));
    }
    assertEquals(0.360562, failing(ten), 1e-6);
    assertEquals(0.570256, 1 - Math.pow(1 - failing(apart.subList(0, 1)), 10), 1e-6);
    assertEquals(0.570256, failing(apart), 1e-6);
    assertDrawn(ten, failing(ten));
  }

  @Test
  void resolutionIsRoundingAndNoNoise() {
    List<Observation> one =
        List.of(reading(10.4, window(null, "10", "1"), rectangular("range", 0.3)));
    assertEquals(1.0 / 3, failing(one), 1e-12);
    assertDrawn(one, 1.0 / 3);
  }

  /**
   * The operating characteristic of a chart with limits of three standard deviations, and its run
   * lengths: NIST/SEMATECH handbook, 6.3.2.3, gives 370.4 at no shift; the others follow from 1/((1
   * − Φ(3 − d)) + (1 − Φ(3 + d))). The much-quoted 43.96 at one deviation is of one side alone.
   */
  @ParameterizedTest
  @CsvSource({
    "0,    .002699796063, 370.39835, 740.79669",
    "0.25, .003556788277, 281.15252, 335.59713",
    "0.5,  .006442294405, 155.22420, 161.03927",
    "1,    .022781803190, 43.894682, 43.955789",
    "1.5,  .066810598940, 14.967685, 14.968446",
    "2,    .158655540600, 6.302963,  6.3029744",
    "3,    .500000001,    2.0000000, 2.0000000",
    "4,    .841344746100, 1.1885734, 1.1885734"
  })
  void operatingCharacteristic(double shift, double power, double runs, double runsOneSided) {
    ErrorTerm error = new ErrorTerm("range", 1, NORMAL);
    List<Observation> both = List.of(reading(shift, window("-3", "3", "0.000000000001"), error));
    List<Observation> upper = List.of(reading(shift, window(null, "3", "0.000000000001"), error));
    assertEquals(power, failing(both), 3e-9);
    assertEquals(runs, 1 / failing(both), runs * 1e-6);
    assertEquals(runsOneSided, 1 / failing(upper), runsOneSided * 2e-6);
  }

  /**
   * Specific risk at 9.8 of at most 10 with a standard uncertainty of 0.1 (JCGM 106, 9.3), and a
   * guard band of twice that, which leaves 2.275 % at the limit.
   */
  @Test
  void conformityOfOneReading() {
    ErrorTerm error = new ErrorTerm("range", 0.1, NORMAL);
    Window upper = window(null, "10", "0.000000000001");
    assertEquals(0.022750131948180, failing(List.of(reading(9.8, upper, error))), 1e-9);
    Window guarded = window("9.2", "10", "0.000000000001");
    assertEquals(1 - 0.022750131948180, failing(List.of(reading(9, guarded, error))), 1e-9);
    ErrorTerm rectangular = rectangular("range", 0.1 * Math.sqrt(3));
    assertTrue(new Kernel().failing(List.of(reading(9, guarded, rectangular))).sure());
  }

  /**
   * The joint risks of the resistors (JCGM 106, 9.5.3): deviation normal of 0.12, reading normal of
   * 0.04, limits ±0.20. That of a good one that fails is an integral of this kernel's answers.
   */
  @Test
  void producersRisk() {
    double risk = 0;
    Window window = window("-0.2", "0.2", "0.000000000001");
    ErrorTerm error = new ErrorTerm("range", 0.04, NORMAL);
    var deviation = org.apache.commons.statistics.distribution.NormalDistribution.of(0, 0.12);
    var rule = new GaussIntegratorFactory().legendre(60, -0.2, 0.2);
    for (int i = 0; i < rule.getNumberOfPoints(); i++) {
      double truth = rule.getPoint(i);
      risk +=
          rule.getWeight(i)
              * deviation.density(truth)
              * failing(List.of(reading(truth, window, error)));
    }
    assertEquals(0.037207800, risk, 1e-8);
  }

  /** Sampling by attributes: n independent readings, each failing with p (binomial). */
  @Test
  void independentReadingsAreBinomial() {
    List<Observation> readings = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      readings.add(
          reading(0.987, window(null, "1", "0.000000000001"), rectangular("range " + i, 0.02)));
    }
    double p = failing(readings.subList(0, 1));
    assertEquals(0.175, p, 1e-9);
    assertEquals(1 - BinomialDistribution.of(20, p).probability(0), failing(readings), 1e-12);
  }

  @Test
  void whatIsSureIsProved() {
    Window window = window("5", null, "0.1");
    Kernel kernel = new Kernel();
    assertTrue(kernel.failing(List.of(reading(0, window, Observation.NO_ERROR))).sure());
    assertTrue(kernel.failing(List.of(reading(9, window, rectangular("a", 0.1)))).never());
    assertTrue(kernel.failing(List.of(reading(Double.NaN, window, rectangular("a", 0.1)))).sure());
    assertTrue(kernel.failing(List.of()).never());
    ErrorTerm endless = new ErrorTerm("a", 0.001, NORMAL);
    assertEquals(
        Chance.Proof.QUADRATURE, kernel.failing(List.of(reading(9, window, endless))).proof());
    assertEquals("> 0.9999", kernel.failing(List.of(reading(1, window, endless))).text());
  }

  /** At the edge of a step the greater one is displayed; the pass bounds are whole steps. */
  @Test
  void edgesOfTheWindow() {
    Window window = window("9.8", "10.2", "0.25");
    assertEquals(40, window.least().longValueExact());
    assertEquals(40, window.greatest().longValueExact());
    Kernel kernel = new Kernel();
    assertTrue(kernel.failing(List.of(reading(9.875, window, Observation.NO_ERROR))).never());
    assertTrue(kernel.failing(List.of(reading(10.125, window, Observation.NO_ERROR))).sure());
    Window none = window("10.01", "10.04", "0.25");
    assertTrue(kernel.failing(List.of(reading(10, none, Observation.NO_ERROR))).sure());
  }

  /** Any readings with any errors: draws and quadrature agree within the error of the draws. */
  @ParameterizedTest
  @EnumSource(Distribution.Shape.class)
  void drawsAgreeForEveryShape(Distribution.Shape shape) {
    Spread spread = Spread.of(new Distribution(shape, Rational.ONE));
    SplittableRandom random = new SplittableRandom(shape.ordinal());
    int undecided = 0;
    for (int round = 0; round < 12; round++) {
      List<Observation> readings = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        readings.add(
            new Observation(
                random.nextDouble(93, 107),
                window("95", "105", i % 2 == 0 ? "0.1" : "1"),
                new ErrorTerm("range " + random.nextInt(3), 1 + random.nextDouble(), spread),
                new ErrorTerm("load " + random.nextInt(4), random.nextDouble() - 0.5, spread)));
      }
      double power = failing(readings);
      undecided += power > 0.01 && power < 0.99 ? 1 : 0;
      double drawn = Simulation.failing(readings, 100_000, round);
      double error = Math.sqrt(power * (1 - power) / 100_000);
      assertEquals(power, drawn, 4 * error + 1e-4, readings.toString());
    }
    assertTrue(undecided >= 4, undecided + " undecided");
  }
}
