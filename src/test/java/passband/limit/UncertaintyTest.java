package passband.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import passband.model.Accuracy;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * JCGM 100, 4.3.7 (a rectangular distribution's half-width over √3) and 5.1.2 (combined in
 * quadrature), worked out here in decimals, a part at a time.
 */
class UncertaintyTest {
  private static final MathContext DIGITS = new MathContext(60);

  private static BigDecimal decimal(Rational value) {
    return value.toDecimal(60, RoundingMode.HALF_EVEN);
  }

  private static BigDecimal square(BigDecimal value) {
    return value.multiply(value, DIGITS);
  }

  /** The divisors of JCGM 100, 4.3.3, 4.3.7 and 4.3.9, and of H.1.3.4 for a U-shaped one. */
  @Test
  void distributionsHaveTheirOwnDivisors() {
    Rational two = Rational.of(2);
    assertEquals(3, divisor(Distribution.RECTANGULAR));
    assertEquals(6, divisor(spread("triangular", null)));
    assertEquals(2, divisor(spread("u-shaped", null)));
    assertEquals(4, divisor(spread("normal", two)));
    // H.1.3.4: a cycle of ±0.5 °C has the standard uncertainty 0.35 °C.
    assertEquals(0.35, Math.sqrt(spread("u-shaped", null).variance().doubleValue()) * 0.5, 0.005);
    assertNull(Distribution.find("normal", null));
    assertNull(Distribution.find("triangular", two));
    assertNull(Distribution.find("trapezoid", null));
    assertEquals("normal, k = 2", spread("normal", two).text());
  }

  private static Distribution spread(String word, @Nullable Rational coverage) {
    return Objects.requireNonNull(Distribution.find(word, coverage));
  }

  private static int divisor(Distribution spread) {
    return (int) Math.round(1 / spread.variance().doubleValue());
  }

  @Test
  void eachErrorCountsByItsDistribution() {
    Random random = new Random(29);
    List<Distribution> spreads =
        List.of(
            Distribution.RECTANGULAR,
            spread("triangular", null),
            spread("u-shaped", null),
            spread("normal", Rational.parse("1.96")));
    for (int i = 0; i < 500; i++) {
      Distribution own = spreads.get(random.nextInt(4));
      Distribution loads = spreads.get(random.nextInt(4));
      double share = random.nextInt(50) / 1000.0;
      double fixed = random.nextInt(20) / 1000.0;
      double step = (1 + random.nextInt(10)) / 1000.0;
      double load = random.nextInt(30) / 1000.0;
      Uncertainty uncertainty =
          new Uncertainty(
              new Accuracy(exact(share), exact(fixed), own),
              exact(step),
              exact(load),
              loads,
              Rational.of(2));
      double x = 1 + random.nextInt(4000) / 10.0;
      double expected =
          Math.sqrt(
              Math.pow(share * x + fixed, 2) * factor(own)
                  + Math.pow(load * x, 2) * factor(loads)
                  + step * step / 12);
      double found =
          uncertainty
              .standard(Real.of(exact(x)))
              .toDecimal(20, RoundingMode.HALF_EVEN)
              .doubleValue();
      assertEquals(expected, found, expected * 1e-12);
    }
  }

  private static Rational exact(double value) {
    return Rational.parse(BigDecimal.valueOf(value).toPlainString());
  }

  private static double factor(Distribution spread) {
    return switch (spread.shape()) {
      case RECTANGULAR -> 1.0 / 3;
      case TRIANGULAR -> 1.0 / 6;
      case U_SHAPED -> 1.0 / 2;
      case NORMAL -> 1 / (1.96 * 1.96);
    };
  }

  @Test
  void partsInQuadrature() {
    Random random = new Random(23);
    for (int i = 0; i < 2000; i++) {
      Rational share = Rational.of(random.nextInt(50), 1000);
      Rational fixed = Rational.of(random.nextInt(20), 1000);
      Rational step = Rational.of(1 + random.nextInt(10), 1000);
      Rational load = Rational.of(random.nextInt(30), 1000);
      Rational coverage = Rational.of(10 + random.nextInt(20), 10);
      Rational power = Rational.of(1 + random.nextInt(4000), 10);
      Real root = Real.of(power).sqrt();
      Uncertainty uncertainty = new Uncertainty(new Accuracy(share, fixed), step, load, coverage);
      for (Real reading : new Real[] {Real.of(power), root, root.negate()}) {
        BigDecimal x = reading.abs().toDecimal(60, RoundingMode.HALF_EVEN);
        BigDecimal error = decimal(share).multiply(x).add(decimal(fixed));
        BigDecimal half = decimal(step).divide(BigDecimal.valueOf(2));
        BigDecimal sum =
            square(error).add(square(half)).add(square(decimal(load).multiply(x, DIGITS)));
        BigDecimal standard = sum.divide(BigDecimal.valueOf(3), DIGITS).sqrt(DIGITS);
        MathContext shown = new MathContext(40, RoundingMode.HALF_EVEN);
        assertEquals(
            standard.round(shown).stripTrailingZeros(),
            uncertainty
                .standard(reading)
                .toDecimal(40, RoundingMode.HALF_EVEN)
                .stripTrailingZeros());
        assertEquals(
            standard.multiply(decimal(coverage)).round(shown).stripTrailingZeros(),
            uncertainty
                .expanded(reading)
                .toDecimal(40, RoundingMode.HALF_EVEN)
                .stripTrailingZeros());
        double expanded = standard.multiply(decimal(coverage)).doubleValue();
        assertEquals(expanded, uncertainty.expanded(reading.doubleValue()), 1e-12 * expanded);
      }
    }
  }
}
