package passband.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.model.Accuracy;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.DecisionKind;
import passband.testing.Snippet;

/**
 * Conversions, uncertainties and limits against published figures; those marked derived are worked
 * out from a cited formula.
 */
class PublishedLimitsTest {

  private static BigDecimal rounded(Real value, String like) {
    return value.toDecimal(new BigDecimal(like).precision(), RoundingMode.HALF_UP);
  }

  /**
   * OpenStax, College Physics 2e, 20.4 (m42714): 12.0 V over 0.350 Ω hot gives 411 W, and √(411 W /
   * 0.350 Ω) = 34.3 A.
   */
  @Test
  void headlightExample() {
    Real power =
        Conversion.convert(Real.of(Rational.of(12)), "voltage", "power", Rational.parse("0.350"));
    assertEquals(new BigDecimal("411"), rounded(power, "411"));
    assertEquals(
        new BigDecimal("34.3"),
        rounded(
            Conversion.convert(
                Real.of(Rational.of(411)), "power", "current", Rational.parse("0.350")),
            "34.3"));
  }

  /**
   * OpenStax, College Physics 2e: 21.1 (m42356), series and parallel circuits; 20.4 (m42714),
   * problems. I, R and P as printed there.
   */
  @ParameterizedTest
  @CsvSource({
    "0.600, 1.00, 0.360",
    "0.600, 6.00, 2.16",
    "0.600, 13.0, 4.68",
    "12.0, 1.00, 144",
    "2.00, 6.00, 24.0",
    "5.00, 0.0600, 1.50",
    "5.00, 0.300, 7.50",
    "1.61, 6.00, 15.6"
  })
  void powerInResistors(String amperes, String ohms, String watts) {
    Real power =
        Conversion.convert(
            Real.of(Rational.parse(amperes)), "current", "power", Rational.parse(ohms));
    assertEquals(0, new BigDecimal(watts).compareTo(rounded(power, watts)));
    Real back = Conversion.convert(power, "power", "current", Rational.parse(ohms));
    assertEquals(Rational.parse(amperes), back.rational());
  }

  /**
   * Derived from P = I²R with 40-digit decimals; the rounded limits go inward, where the nearest
   * would sometimes go outward.
   */
  @ParameterizedTest
  @CsvSource({
    "46, 450, 20 % of setting, 1, 285.968141, 350.238014, 286, 350",
    "46, 450, '15 % of setting or 4 W, whichever is greater', 1, 294.769213, 342.863757, 295, 342",
    "23, 450, '15 % of setting or 4 W, whichever is greater', 1, 205.480467, 244.948974, 206, 244",
    "184, 250, 20 % of setting, 1, 767.333044, 939.787210, 768, 939",
    "85, 650, 20 % of setting, 10, 323.443016, 396.135175, 330, 390",
    "10, 600, '15 % of setting or 4 W, whichever is greater', 1, 100, 152.752523, 100, 152",
    "66, 150, 20 % of setting, 1, 593.295879, 726.636085, 594, 726",
    "9, 500, 20 % of setting, 1, 120, 146.969385, 120, 146",
    "20, 400, 20 % of setting, 1, 200, 244.948974, 200, 244"
  })
  void powerReadAsCurrent(
      String setting,
      String load,
      String rule,
      String resolution,
      String low,
      String high,
      String lower,
      String upper) {
    Limit limit = compiled(setting, load, rule, resolution, "simple");
    assertEquals(new BigDecimal(low), milli(limit.exact().lower(), low));
    assertEquals(new BigDecimal(high), milli(limit.exact().upper(), high));
    assertEquals(lower, limit.end(limit.printed().lower()));
    assertEquals(upper, limit.end(limit.printed().upper()));
  }

  private static BigDecimal milli(Real amperes, String like) {
    return amperes
        .times(Real.of(Rational.of(1000)))
        .toDecimal(new BigDecimal(like).precision(), RoundingMode.HALF_EVEN)
        .setScale(new BigDecimal(like).scale());
  }

  private static Limit compiled(
      String setting, String load, String rule, String resolution, String decision) {
    String source =
        """
        device gen "Gen" {
          outlet out "Out" { pole a "a" }
          mode hew "Hew" on out {
            setting power 1 W to 400 W step 1 W
            load %s ohm
          }
        }
        analyzer meter "Meter" {
          jack high "H" floating
          jack low "L"
          load from high to low { values 1 ohm to 1000 ohm step 1 ohm }
          measure current {
            range 1 mA to 3 A
            resolution %s mA
            error 2.5 %% of reading + 2 mA
          }
        }
        procedure p "P" {
          revision "A" on 2026-01-01
          device gen
          analyzer meter
          decision %s
          caution burn "Burns."
          test t "T" {
            outlet out
            accept power within %s, read as current
            table {
              mode | setting/W | load/ohm
              hew  | %s        | %s
            }
          }
        }
        """
            .formatted(load, resolution, decision, rule, setting, load);
    Snippet snippet = Snippet.compile(source);
    assertEquals(1, snippet.plans().size(), snippet.report());
    assertEquals(1, snippet.plans().get(0).limits().size(), snippet.report());
    return snippet.plans().get(0).limits().get(0);
  }

  /**
   * Common practice, no source: ±20 % of power is −10.5573 % and +9.5445 % of current, ±15 % is
   * −7.8046 % and +7.2381 %.
   */
  @ParameterizedTest
  @CsvSource({"20, -10.5573, 9.5445", "15, -7.8046, 7.2381", "10, -5.1317, 4.8809"})
  void powerToleranceAsCurrentTolerance(String percent, String down, String up) {
    Limit limit = compiled("100", "100", percent + " % of setting", "1", "simple");
    assertEquals(new BigDecimal(down), percent(limit.exact().lower()));
    assertEquals(new BigDecimal(up), percent(limit.exact().upper()));
  }

  private static BigDecimal percent(Real amperes) {
    return amperes
        .minus(Real.of(Rational.ONE))
        .times(Real.of(Rational.HUNDRED))
        .toDecimal(12, RoundingMode.HALF_EVEN)
        .setScale(4, RoundingMode.HALF_EVEN);
  }

  /**
   * Derived by JCGM 100, 4.3.7 and 5.1.2: a meter to ±(2.5 % of reading + 2 mA), rectangular, k =
   * 2, moves 282.842712 mA by 10.474367 mA and 346.410162 mA by 12.309401 mA.
   */
  @Test
  void guardBandOfAMeter() {
    Uncertainty meter =
        new Uncertainty(
            new Accuracy(Rational.parse("0.025"), Rational.parse("0.002")),
            Rational.ZERO,
            Rational.ZERO,
            Rational.TWO);
    Real low = Conversion.convert(Real.of(Rational.of(40)), "power", "current", Rational.of(500));
    Real high = Conversion.convert(Real.of(Rational.of(60)), "power", "current", Rational.of(500));
    assertEquals(new BigDecimal("10.474367"), milli(meter.expanded(low), "10.474367"));
    assertEquals(new BigDecimal("12.309401"), milli(meter.expanded(high), "12.309401"));
    Rational milli = Rational.of(1, 1000);
    assertEquals(Rational.of(294, 1000), low.plus(meter.expanded(low)).ceilingTo(milli));
    assertEquals(Rational.of(334, 1000), high.minus(meter.expanded(high)).floorTo(milli));
  }

  /**
   * Derived by JCGM 100, 5.1.2: with a load to ±1 % besides, u(P)/P at 316.227766 mA is
   * 0.0366283636, so U = 3.66283636 W of 50 W.
   */
  @Test
  void powerUncertaintyOfMeterAndLoad() {
    Real reading = Real.of(Rational.parse("0.1")).sqrt();
    Uncertainty meter =
        new Uncertainty(
            new Accuracy(Rational.parse("0.025"), Rational.parse("0.002")),
            Rational.ZERO,
            Rational.of(1, 200),
            Rational.TWO);
    Real relativeOfPower = meter.standard(reading).over(reading).times(Real.of(Rational.TWO));
    assertEquals(
        new BigDecimal("0.0366283636"), relativeOfPower.toDecimal(9, RoundingMode.HALF_EVEN));
    Real ratio = Real.of(Rational.TEN).over(relativeOfPower.times(Real.of(Rational.of(100))));
    assertEquals(new BigDecimal("2.730125"), ratio.toDecimal(7, RoundingMode.HALF_EVEN));
  }

  /**
   * Standard normal quantiles (any table): risks of 5 %, 2.5 % and 2 % are 1.6448536, 1.9599640 and
   * 2.0537489 standard uncertainties.
   */
  @ParameterizedTest
  @CsvSource({
    "5, 1.6448536",
    "2.5, 1.9599640",
    "2, 2.0537489",
    "10, 1.2815516",
    "0.1, 3.0902323",
    "50, 0"
  })
  void riskAsStandardUncertainties(String percent, String quantile) {
    Decision decision =
        new Decision(
            DecisionKind.RISK, Rational.parse(percent).over(Rational.HUNDRED), Rational.TWO);
    BigDecimal guard =
        decision.guard().toDecimal(12, RoundingMode.HALF_EVEN).setScale(7, RoundingMode.HALF_UP);
    assertEquals(0, new BigDecimal(quantile).compareTo(guard));
  }

  /**
   * A guard band moves both limits inward, each by the uncertainty at that limit, and is rounded
   * once.
   */
  @Test
  void guardedLimitsAreRoundedOnce() {
    Limit guarded = compiled("50", "500", "20 % of setting", "1", "guarded");
    assertEquals("283", guarded.end(guarded.printed().lower()));
    Real u = guarded.uncertainty().expanded(guarded.exact().lower());
    assertEquals(
        guarded.exact().lower().plus(u).ceilingTo(guarded.resolution()), guarded.accept().lower());
    assertTrue(guarded.accept().upper().compareTo(guarded.printed().upper()) < 0);
    assertEquals(
        new MathContext(3).getPrecision(),
        guarded.expanded().toDecimal(3, RoundingMode.UP).precision());
  }
}
