package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.testing.Records;

/** A blank with a unit holds a number in that unit, or in one that converts, or is unclear. */
class RecordedNumberTest {
  private static final String ID = "inspection/blank";

  private static Judgement judged(Unit asked, String value, String unit) throws BadInput {
    return judged(asked, null, value, unit);
  }

  private static Judgement judged(Unit asked, Item.Accepts accepts, String value, String unit)
      throws BadInput {
    Item.Head head = new Item.Head(ID, "Blank", null, "Inspection", List.of());
    ItemList list =
        new ItemList(
            Records.SOURCE,
            new ItemList.Decision("guarded", new BigDecimal(2), null, new BigDecimal(2)),
            List.of(),
            List.of(new Item.Recorded(head, asked.ucum(), accepts)));
    Readings.Row row = new Readings.Row(ID, value, unit, "", "1", "record", 2);
    return Judge.judge(list, new Readings("0".repeat(64), List.of(row)), null).judgements().get(0);
  }

  private static boolean converts(Unit from, Unit to) {
    return from.dimension().equals(to.dimension());
  }

  /** Of every pair of units, and of none given. */
  @Test
  void onlyUnitsThatConvertCount() throws BadInput {
    for (Unit asked : Units.all()) {
      assertEquals(Cause.Code.NO_UNIT, judged(asked, "80", "").causes().get(0).code());
      for (Unit given : Units.all()) {
        for (String name : List.of(given.ucum(), given.symbol(), given.printed())) {
          Judgement judged = judged(asked, "80", name);
          if (converts(given, asked)) {
            assertEquals(Verdict.PASS, judged.verdict(), asked + " " + given);
            assertValue(Rational.of(80).times(given.factor()).over(asked.factor()), judged);
          } else {
            assertEquals(Cause.Code.OTHER_UNIT, judged.causes().get(0).code());
            assertEquals(Verdict.UNCLEAR, judged.verdict());
          }
        }
      }
    }
  }

  /** Exact where the decimal ends, else to the digits that are printed. */
  private static void assertValue(Rational value, Judgement judged) {
    assertEquals(0, new BigDecimal(value.toPlain()).compareTo(judged.value()));
    assertEquals(0, judged.value().compareTo(new BigDecimal(judged.attempts().get(0))));
  }

  /** Whether below zero makes sense is the quantities' own. */
  @Test
  void belowZeroIsUnclearWhereEveryQuantityOfTheUnitIsNeverBelowIt() throws BadInput {
    int never = 0;
    for (Unit unit : Units.all()) {
      List<QuantityKind> kinds =
          QuantityKind.all().stream()
              .filter(kind -> kind.dimension().equals(unit.dimension()))
              .toList();
      boolean impossible = !kinds.isEmpty() && kinds.stream().allMatch(QuantityKind::nonNegative);
      never += impossible ? 1 : 0;
      for (String value : List.of("-0.1", "\u2212" + "80")) {
        Judgement judged = judged(unit, value, unit.ucum());
        assertEquals(impossible ? Verdict.UNCLEAR : Verdict.PASS, judged.verdict(), unit.symbol());
        assertTrue(!impossible || judged.causes().get(0).code() == Cause.Code.NEGATIVE);
      }
      assertEquals(Verdict.PASS, judged(unit, "0", unit.ucum()).verdict());
    }
    assertTrue(never > 0 && never < Units.all().size());
  }

  @ParameterizedTest
  @CsvSource({
    "banana, not-a-number",
    "-, not-a-number",
    "n/a, not-a-number",
    "1e3, not-a-number",
    "80 %, not-a-number",
    "about 80, not-a-number",
    "'8,0', decimal-comma"
  })
  void whatIsNoNumberIsUnclear(String value, String code) throws BadInput {
    for (Unit unit : Units.all()) {
      Judgement judged = judged(unit, value, unit.ucum());
      assertEquals(Verdict.UNCLEAR, judged.verdict());
      assertEquals(code, judged.causes().get(0).code().word());
      assertEquals(value, judged.causes().get(0).written());
    }
  }

  /** Inclusive, as they are, whatever the decision rule; too coarse a number is unclear. */
  @ParameterizedTest
  @CsvSource({
    "2.7, , 2.7, V, PASS, ",
    "2.7, , 2.69999, V, FAIL, below-limit",
    "2.7, , 2.700, V, PASS, ",
    "2.7, , 3, V, UNCLEAR, too-few-decimals",
    "2.7, , 2700, mV, PASS, ",
    "2.7, , 2699, mV, FAIL, below-limit",
    "2.7, , 0.00270, kV, PASS, ",
    "2.7, , 2.7, A, UNCLEAR, other-unit",
    ", 400, 400, V, PASS, ",
    ", 400, 401, V, FAIL, above-limit",
    ", 400, -1, V, UNCLEAR, negative",
    "10, 12.5, 9.9, V, FAIL, below-limit",
    "10, 12.5, 12.6, V, FAIL, above-limit",
    "10, 12.5, 11, V, UNCLEAR, too-few-decimals",
    "10, 12.5, 11.0, V, PASS, ",
    "10, 12.5, about 11, V, UNCLEAR, not-a-number",
  })
  void aLimitIsInclusiveAndHasNoGuardBand(
      BigDecimal lower, BigDecimal upper, String value, String unit, Verdict verdict, String code)
      throws BadInput {
    Item.Accepts accepts = new Item.Accepts(lower, upper);
    Judgement judged = judged(Units.find("V"), accepts, value, unit);
    assertEquals(verdict, judged.verdict());
    assertEquals(code, judged.causes().isEmpty() ? null : judged.causes().get(0).code().word());
  }

  @Test
  void nothingFilledInIsNotDone() throws BadInput {
    for (Unit unit : Units.all()) {
      assertEquals(Verdict.NOT_DONE, judged(unit, "", unit.ucum()).verdict());
    }
  }
}
