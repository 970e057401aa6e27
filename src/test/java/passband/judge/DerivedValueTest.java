package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.BadInput;
import passband.evidence.Calculation;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.WrittenFormula;
import passband.quantity.Rational;
import passband.testing.Records;

/** The uncertainty of derived values, and the guard band that comes from it. */
class DerivedValueTest {
  private static final String PEAK = "t/-/m/1W/10ohm/peak-voltage";
  private static final String RMS = "t/-/m/1W/10ohm/voltage";
  private static final String CREST = "t/-/m/1W/10ohm/crest";

  private static Item.Head head(String id) {
    return new Item.Head(id, id, null, "1. Test", List.of());
  }

  private static BigDecimal d(String text) {
    return text == null ? null : new BigDecimal(text);
  }

  private static final Item.Where WHERE =
      new Item.Where("t", null, "m", d("1"), "W", d("10"), "Ohm", Map.of());

  private static Item.Contribution part(String name, String relative, String absolute) {
    return new Item.Contribution(name, d(relative), d(absolute));
  }

  private static Item.Reading reading(String id, String range, List<Item.Contribution> budget) {
    Item.Scale scale = new Item.Scale("voltage", "V", d("1"), range, false);
    return new Item.Reading(head(id), WHERE, scale, null, budget, null);
  }

  private static Item.Derived crest(String formula, String lower, String upper) {
    return new Item.Derived(
        head(CREST),
        WHERE,
        new Item.Scale("crest", "1", d("0.1"), null, false),
        new Item.Limits(null, d(lower), d(upper), d(lower), d(upper), null, null, "rule"),
        new Calculation(
            new WrittenFormula(formula),
            Map.of("peak-voltage", PEAK, "voltage", RMS),
            part("load error", "0.02", "0.1")));
  }

  private static DerivedValue value(Item.Derived crest, Item.Reading peak, Item.Reading rms) {
    return DerivedValue.of(
        crest,
        Map.of(
            "peak-voltage", new DerivedValue.Part(peak, Rational.of(300)),
            "voltage", new DerivedValue.Part(rms, Rational.of(150))),
        Rational.TWO);
  }

  /**
   * JCGM 100, 5.1.2: of q = x/y with uncorrelated x and y the relative variances add. 300 V with a
   * half-width of 3 % and 150 V with one of 1 %: (0.03² + 0.01²)/3 of 2², derived by hand.
   */
  @Test
  void relativeVariancesOfARatioAdd() {
    DerivedValue value =
        value(
            crest("peak-voltage / voltage", "1.8", "2.2"),
            reading(PEAK, "20 to 6000", List.of(part("analyzer error", "0.03", "0"))),
            reading(RMS, "10 to 1000", List.of(part("analyzer error", "0.01", "0"))));
    assertEquals(2, value.value().doubleValue(), 0);
    assertEquals(4 * (0.0009 + 0.0001) / 3, value.variance().doubleValue(), 1e-18);
  }

  /**
   * Of two readings in one range at one load the error may be common (JCGM 100, 5.2.2, r = 1): in a
   * sum it adds as widths, which is worse; in a ratio it would cancel, so r = 0 is taken. The
   * resolution never correlates.
   */
  @Test
  void theWorseOfNoAndFullCorrelationIsTaken() {
    List<Item.Contribution> budget =
        List.of(part("analyzer error", "0", "3"), part("resolution", "0", "0.5"));
    Item.Reading peak = reading(PEAK, "10 to 1000", budget);
    Item.Reading rms = reading(RMS, "10 to 1000", budget);
    DerivedValue sum = value(crest("peak-voltage + voltage", null, "999"), peak, rms);
    assertEquals((6 * 6 + 0.25 + 0.25) / 3, sum.variance().doubleValue(), 1e-12);
    DerivedValue difference = value(crest("peak-voltage - voltage", null, "999"), peak, rms);
    assertEquals((9 + 9 + 0.25 + 0.25) / 3, difference.variance().doubleValue(), 1e-12);
    Item.Reading other = reading(RMS, "1 to 100", budget);
    DerivedValue apart = value(crest("peak-voltage + voltage", null, "999"), peak, other);
    assertEquals((9 + 9 + 0.25 + 0.25) / 3, apart.variance().doubleValue(), 1e-12);
  }

  /**
   * Each error that may be common is taken at its worse, whatever another is: of a − b + c + d, a
   * and b in one range and c and d in another, the first error counts apart and the second in
   * common, which is worse than both apart or both in common.
   */
  @Test
  void eachCommonErrorIsTakenAtItsWorse() {
    List<Item.Contribution> budget = List.of(part("analyzer error", "0", "3"));
    Item.Derived sum =
        new Item.Derived(
            head(CREST),
            WHERE,
            new Item.Scale("sum", "V", d("1"), null, true),
            new Item.Limits(null, null, d("999"), null, d("999"), null, null, "rule"),
            new Calculation(
                new WrittenFormula("a - b + c + d"),
                Map.of("a", "a", "b", "b", "c", "c", "d", "d"),
                part("load error", "0", "0")));
    Map<String, DerivedValue.Part> parts = new java.util.LinkedHashMap<>();
    for (String name : List.of("a", "b", "c", "d")) {
      String range = name.compareTo("c") < 0 ? "10 to 1000" : "1 to 100";
      parts.put(name, new DerivedValue.Part(reading(name, range, budget), Rational.of(50)));
    }
    DerivedValue value = DerivedValue.of(sum, parts, Rational.TWO);
    assertEquals((9 + 9 + 36) / 3.0, value.variance().doubleValue(), 1e-12);
    assertEquals(
        List.of(Effect.Sharing.APART, Effect.Sharing.COMMON),
        value.effects().stream().map(Effect::sharing).toList());
  }

  /** The error of one load is common to readings in any range at it, and to the load itself. */
  @Test
  void theErrorOfALoadIsCommonToAllAtIt() {
    List<Item.Contribution> budget = List.of(part("load error", "0.02", "0"));
    Item.Reading peak = reading(PEAK, "20 to 6000", budget);
    Item.Reading rms = reading(RMS, "10 to 1000", budget);
    DerivedValue sum = value(crest("peak-voltage + voltage", null, "999"), peak, rms);
    assertEquals(9 * 9 / 3.0, sum.variance().doubleValue(), 1e-12);
  }

  /** A formula that uses the load carries the load's error: 2 % of 10 Ω and 0.1 Ω. */
  @Test
  void theLoadsErrorCounts() {
    Item.Reading exact = reading(PEAK, null, List.of());
    Item.Reading other = reading(RMS, null, List.of());
    DerivedValue value = value(crest("voltage / load", null, "999"), exact, other);
    double width = 150 / 100.0 * 0.3;
    assertEquals(width * width / 3, value.variance().doubleValue(), 1e-12);
    assertEquals(15, value.value().doubleValue(), 0);
    DerivedValue setting = value(crest("voltage / setting", null, "999"), exact, other);
    assertEquals(150, setting.value().doubleValue(), 0);
    assertEquals(0, setting.variance().doubleValue(), 0);
  }

  @Test
  void withoutABudgetTheVarianceIsNotKnown() {
    Item.Reading unknown = reading(PEAK, null, null);
    Item.Reading known = reading(RMS, null, List.of());
    assertNull(value(crest("peak-voltage / voltage", "1", "3"), unknown, known).variance());
  }

  // ---- the guard band ----

  private static Judgement judged(String guard, String peak, String lower, String upper)
      throws BadInput {
    List<Item.Contribution> budget = List.of(part("analyzer error", "0", "3"));
    Item.Reading one = reading(PEAK, "a", guard.equals("unknown") ? null : budget);
    Item.Reading other = reading(RMS, "b", List.of());
    ItemList list =
        new ItemList(
            Records.SOURCE,
            new ItemList.Decision(
                "guarded", d("2"), null, guard.equals("unknown") ? d("2") : d(guard)),
            List.of(),
            List.of(one, other, crest("peak-voltage / voltage", lower, upper)));
    Readings readings =
        new Readings(
            null,
            List.of(
                new Readings.Row(PEAK, peak, "V", "", "1", "reading", 2),
                new Readings.Row(RMS, "100", "V", "", "1", "reading", 3)));
    return Judge.judge(list, readings, null).judgements().get(2);
  }

  /** u = 3 V/√3/100 V = √3/100 = 0.0173…; twice that is 0.0346…: 2.2 − 0.0346 = 2.1653…. */
  @ParameterizedTest
  @CsvSource({
    "2, 216, , 2.2, pass, ''",
    "2, 217, , 2.2, fail, in the guard band of 2.2",
    "2, 220, , 2.2, fail, in the guard band of 2.2",
    "2, 221, , 2.2, fail, above 2.2",
    "2, 184, 1.8, , pass, ''",
    "2, 183, 1.8, , fail, in the guard band of 1.8",
    "2, 180, 1.8, , fail, in the guard band of 1.8",
    "2, 179, 1.8, , fail, below 1.8",
    "0, 220, , 2.2, pass, ''",
    "0, 180, 1.8, , pass, ''",
    "0, 221, , 2.2, fail, above 2.2",
    "unknown, 200, , 2.2, unclear, the uncertainty of its parts is not known",
    "unknown, 230, , 2.2, fail, above 2.2"
  })
  void theGuardBandComesFromTheReadings(
      String guard, String peak, String lower, String upper, String verdict, String why)
      throws BadInput {
    Judgement judgement = judged(guard, peak, lower, upper);
    assertEquals(verdict, judgement.verdict().word(), judgement.why());
    assertTrue(judgement.why().contains(why), judgement.why());
    if (!guard.equals("unknown")) {
      assertEquals(2 * Math.sqrt(3) / 100, judgement.uncertainty(), 1e-12);
    }
  }

  // ---- what no wave can be ----

  private static @Nullable String reversed(String peak, String other, String value, String unit) {
    String name = "t/-/m/1W/10ohm/" + other;
    Item.Scale scale = new Item.Scale(other, unit, d("0.1"), null, false);
    Item.Reading rms = new Item.Reading(head(name), WHERE, scale, null, null, null);
    String peakUnit = peak.equals("peak-voltage") ? "V" : "A";
    Item.Reading top =
        new Item.Reading(
            head(PEAK),
            WHERE,
            new Item.Scale(peak, peakUnit, d("0.1"), null, false),
            null,
            null,
            null);
    return PeakAndRms.reversed(
        crest("1", null, "9"),
        Map.of(
            peak, new DerivedValue.Part(top, Rational.of(d("20"))),
            other, new DerivedValue.Part(rms, Rational.of(d(value)))));
  }

  /** Into 10 ohm, 20 V is of 2 A and 20 A of 200 V: the RMS value may come from the other one. */
  @ParameterizedTest
  @CsvSource({
    "peak-voltage, voltage, 20, V, ''",
    "peak-voltage, voltage, 20.1, V, peak-voltage is below voltage",
    "peak-voltage, voltage, 20000, mV, ''",
    "peak-voltage, voltage, 20001, mV, peak-voltage is below voltage",
    "peak-voltage, current, 2, A, ''",
    "peak-voltage, current, 2001, mA, peak-voltage is below current times the load",
    "peak-current, current, 20, A, ''",
    "peak-current, current, 20.1, A, peak-current is below current",
    "peak-current, voltage, 200, V, ''",
    "peak-current, voltage, 201, V, peak-current is below voltage over the load",
    "peak-voltage, power, 9999, W, ''"
  })
  void aPeakIsComparedWithTheRmsValueOfTheSameWave(
      String peak, String other, String value, String unit, String why) {
    String found = reversed(peak, other, value, unit);
    assertEquals(why, found == null ? "" : found);
  }

  @ParameterizedTest
  @CsvSource({"false, unclear", "true, pass"})
  void aDerivedQuantityThatIsNeverNegativeIsUnclearBelowZero(boolean may, String verdict)
      throws BadInput {
    Item.Derived one = crest("voltage - peak-voltage", null, "9");
    Item.Derived difference =
        new Item.Derived(
            one.head(),
            one.where(),
            new Item.Scale("x", "V", d("0.1"), null, may),
            one.limits(),
            new Calculation(
                new WrittenFormula("low - high"),
                Map.of("low", RMS, "high", PEAK),
                part("load error", "0", "0")));
    ItemList list =
        new ItemList(
            Records.SOURCE,
            new ItemList.Decision("simple", d("2"), null, BigDecimal.ZERO),
            List.of(),
            List.of(reading(PEAK, "a", List.of()), reading(RMS, "b", List.of()), difference));
    Readings readings =
        new Readings(
            null,
            List.of(
                new Readings.Row(PEAK, "101", "V", "", "1", "reading", 2),
                new Readings.Row(RMS, "100", "V", "", "1", "reading", 3),
                new Readings.Row(difference.id(), "-1.0", "V", "", "1", "derived", 4)));
    Judgement judgement = Judge.judge(list, readings, null).judgements().get(2);
    assertEquals(verdict, judgement.verdict().word(), judgement.why());
  }
}
