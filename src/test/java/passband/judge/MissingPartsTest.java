package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Calculation;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.WrittenFormula;
import passband.testing.Records;

/** Limits files that lack what others have, or name what nobody knows. */
class MissingPartsTest {
  private static final String SERIAL = "sheet/generator-serial";
  private static final Item.Where WHERE =
      new Item.Where("t", null, null, null, null, null, null, Map.of());
  private static final Item.Limits LIMITS =
      new Item.Limits(null, null, new BigDecimal(9), null, new BigDecimal(9), null, null, "rule");

  private static Item.Head head(String id) {
    return new Item.Head(id, id, null, "Test", List.of());
  }

  private static Item.Scale scale(String unit) {
    return new Item.Scale("power", unit, BigDecimal.ONE, null, false);
  }

  private static Item.Reading reading(String id, String unit, Item.Limits limits) {
    return new Item.Reading(head(id), WHERE, scale(unit), limits, null, null);
  }

  private static ItemList list(Item... items) {
    return new ItemList(
        Records.SOURCE,
        new ItemList.Decision("simple", new BigDecimal(2), null, BigDecimal.ZERO),
        List.of(),
        Stream.concat(Stream.of(items), Stream.of(new Item.Recorded(head(SERIAL), null, null)))
            .toList());
  }

  private static Report judged(ItemList list, String... idReadingUnit) throws BadInput {
    List<Readings.Row> rows = new ArrayList<>();
    for (int i = 0; i < idReadingUnit.length; i += 3) {
      rows.add(
          new Readings.Row(
              idReadingUnit[i], idReadingUnit[i + 1], idReadingUnit[i + 2], "", "", "", i));
    }
    rows.add(new Readings.Row(SERIAL, "S 1", "", "", "", "record", 99));
    return Judge.judge(list, new Readings(null, rows), null);
  }

  private static Judgement first(Report report) {
    return report.judgements().get(0);
  }

  @Test
  void limitsInAnUnknownUnitGiveNoVerdict() throws BadInput {
    Judgement judged = first(judged(list(reading("x", "furlong", LIMITS)), "x", "5", "W"));
    assertEquals(Verdict.UNCLEAR, judged.verdict());
    assertTrue(judged.why().contains("furlong"), judged.why());
  }

  @Test
  void aSettingInAnUnknownUnitLeavesWhatIsCalculatedFromItUnclear() throws BadInput {
    Item.Where where =
        new Item.Where("t", null, null, BigDecimal.TEN, "furlong", null, null, Map.of());
    Item.Contribution none = new Item.Contribution("load error", BigDecimal.ZERO, BigDecimal.ZERO);
    Calculation doubled = new Calculation(new WrittenFormula("2 * x"), Map.of("x", "x"), none);
    Item derived = new Item.Derived(head("y"), where, scale("W"), LIMITS, doubled);
    Report report = judged(list(derived, reading("x", "W", null)), "x", "2", "W");
    assertEquals(Verdict.UNCLEAR, first(report).verdict());
  }

  @Test
  void aHistoryStartsWhereThePointGotItsLimits() throws BadInput {
    Report before = judged(list(reading("x", "W", null)), "x", "5", "W");
    Report after = judged(list(reading("x", "W", LIMITS)), "x", "6", "W");
    History history =
        History.of(
            List.of(
                new History.Dated(LocalDate.of(2025, 1, 1), before),
                new History.Dated(LocalDate.of(2026, 1, 1), after)),
            365);
    List<BigDecimal> readings = history.drifts().get(0).readings();
    assertNull(readings.get(0));
    assertEquals(0, new BigDecimal(6).compareTo(readings.get(1)));
  }
}
