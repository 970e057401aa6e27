package passband.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import passband.model.Accuracy;
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
      }
    }
  }
}
