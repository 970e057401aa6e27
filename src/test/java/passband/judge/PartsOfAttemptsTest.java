package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Calculation;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.WrittenFormula;
import passband.testing.Records;
import passband.testing.Sheets;

/** A derived value is never calculated from readings of different attempts. */
class PartsOfAttemptsTest {
  private static final int MOST = 3;
  private static final List<String> PARTS = List.of("peak-voltage", "voltage", "current");
  private static final String DERIVED = "t/derived";

  private static Item.Head head(String id) {
    return new Item.Head(id, id, null, "1. Test", List.of());
  }

  private static ItemList list() {
    Item.Where where = new Item.Where("t", null, null, null, null, null, null, Map.of());
    BigDecimal most = new BigDecimal(4);
    List<Item> items = new ArrayList<>();
    Map<String, String> parts = new LinkedHashMap<>();
    for (String part : PARTS) {
      Item.Scale scale = new Item.Scale(part, "1", BigDecimal.ONE, null, false);
      items.add(new Item.Reading(head("t/" + part), where, scale, null, List.of(), null));
      parts.put(part, "t/" + part);
    }
    items.add(
        new Item.Derived(
            head(DERIVED),
            where,
            new Item.Scale("derived", "1", BigDecimal.ONE, null, false),
            new Item.Limits(null, null, most, null, most, null, null, "rule"),
            new Calculation(
                new WrittenFormula("peak-voltage + 10 * voltage + 100 * current"),
                parts,
                new Item.Contribution("load error", BigDecimal.ZERO, BigDecimal.ZERO))));
    return new ItemList(
        Records.SOURCE,
        new ItemList.Decision("simple", new BigDecimal(2), null, BigDecimal.ZERO),
        List.of(),
        items);
  }

  /**
   * Of every number of attempts of each part, in any order of the rows, inside the limits or not.
   */
  @Test
  void partsOfDifferentAttemptsAreUnclear() throws BadInput {
    Random random = new Random(5);
    for (int i = 0; i < MOST * MOST * MOST; i++) {
      List<Integer> numbers = List.of(i % MOST + 1, i / MOST % MOST + 1, i / MOST / MOST + 1);
      List<Readings.Row> rows = new ArrayList<>();
      for (int part = 0; part < PARTS.size(); part++) {
        for (int attempt = 1; attempt <= numbers.get(part); attempt++) {
          String id = "t/" + PARTS.get(part);
          rows.add(new Readings.Row(id, "" + attempt, "", "", "" + attempt, "reading", attempt));
        }
      }
      Collections.shuffle(rows, random);
      Report report = Judge.judge(list(), new Readings("0".repeat(64), rows), null);
      held(report.judgements().get(PARTS.size()), numbers);
    }
  }

  private static void held(Judgement derived, List<Integer> numbers) {
    if (Collections.max(numbers).equals(Collections.min(numbers))) {
      assertEquals(Verdict.FAIL, derived.verdict(), numbers.toString());
      assertEquals(0, new BigDecimal(111 * numbers.get(0)).compareTo(derived.value()));
      return;
    }
    assertEquals(Verdict.UNCLEAR, derived.verdict(), numbers.toString());
    assertEquals(1, derived.causes().size());
    assertEquals(Cause.Code.ATTEMPTS_DIFFER, derived.causes().get(0).code());
    for (int part = 0; part < PARTS.size(); part++) {
      String named = PARTS.get(part) + " of attempt " + numbers.get(part);
      assertTrue(derived.why().contains(named), derived.why());
    }
  }

  /** In a whole record that is good but for one part that was read again, and well. */
  @Test
  void aSheetWithOnePartReadAgainDoesNotPass() throws BadInput {
    ItemList list = Evidence.of(Sheets.YARROW).list();
    int parts = 0;
    for (Item item : list.items()) {
      if (item instanceof Item.Derived derived && item.head().applies().isEmpty()) {
        for (String part : derived.calculation().parts().values()) {
          Records records = Records.of(list, false);
          assertEquals(Verdict.PASS, Judge.judge(list, records.readings(), null).overall());
          twice(records, part);
          assertEquals(Verdict.INCOMPLETE, Judge.judge(list, records.readings(), null).overall());
          parts++;
        }
        Records all = Records.of(list, false);
        derived.calculation().parts().values().forEach(part -> twice(all, part));
        assertEquals(Verdict.PASS, Judge.judge(list, all.readings(), null).overall());
      }
    }
    assertTrue(parts > 1);
  }

  private static void twice(Records records, String id) {
    String first =
        records.csv().lines().filter(line -> line.startsWith(id + ",")).findFirst().orElseThrow();
    String row = first.substring(id.length() + 1, first.lastIndexOf(','));
    records.with(id, row, row.replace(",1,reading", ",2,reading"));
  }
}
