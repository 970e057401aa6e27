package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Judge;
import passband.judge.Report;
import passband.testing.Records;
import passband.testing.Sheets;
import passband.words.Language;

/** The printed budgets can be followed with a calculator. */
class BudgetTableTest {
  private static Report report() throws BadInput {
    ItemList list = Evidence.of(Sheets.SPREADS).list();
    return Judge.judge(list, Records.of(list, false).readings(), null);
  }

  private static double number(String text) {
    return Double.parseDouble(text.split(" ")[0]);
  }

  /**
   * Half-width over divisor is the standard uncertainty; these combine; U is k times that, rounded
   * up.
   */
  @Test
  void eachLineFollowsFromTheOnesBefore() throws BadInput {
    List<BudgetTable> tables = BudgetTable.of(report(), Language.ENGLISH);
    assertTrue(tables.size() > 3, tables.toString());
    int finite = 0;
    for (BudgetTable table : tables) {
      double square = 0;
      double shares = 0;
      for (BudgetTable.Part part : table.parts()) {
        double u = number(part.standard());
        if (table.formula().isEmpty()) {
          assertEquals(u, number(part.width()) / number(part.divisor()), u * 2e-3);
        }
        square += u * u;
        shares += number(part.share());
        finite += part.freedom().equals("∞") ? 0 : 1;
      }
      double all = number(table.standard());
      assertEquals(all, Math.sqrt(square), all * 2e-3);
      assertEquals(100, shares, 0.2);
      double expanded = all * number(table.factor());
      double printed = number(table.expanded());
      assertTrue(printed >= expanded * (1 - 2e-3) && printed <= expanded * 1.12, table.toString());
    }
    assertTrue(finite > 0, tables.toString());
  }

  /**
   * Of a calculated value each contribution follows from its half-width, divisor and sensitivities:
   * in four repeats of one reading (their values nearly alike) the error that is the same in all is
   * not divided by four, the resolution by two.
   */
  @Test
  void theMeanOfRepeatsHasItsScatter() throws BadInput {
    ItemList list = Evidence.of(Sheets.SPREADS).list();
    Records record = Records.of(list, false);
    int[] next = {0};
    for (Item item : list.items()) {
      if (item.id().startsWith("carve-mean/") && item.id().endsWith("/current")) {
        record.with(item.id(), Records.reading("" + (600 + 2 * next[0]++ % 8), "mA"));
      }
    }
    List<BudgetTable> tables =
        BudgetTable.of(Judge.judge(list, record.readings(), null), Language.ENGLISH);
    BudgetTable mean =
        tables.stream().filter(t -> t.quantity().equals("Middle")).findFirst().orElseThrow();
    assertEquals("(current-1 + current-2 + current-3 + current-4) / 4", mean.formula());
    assertEquals(3, mean.parts().size(), mean.toString());
    BudgetTable.Part error = mean.parts().get(0);
    assertTrue(error.source().endsWith("taken as the same in all"), error.source());
    double middle =
        (number(error.width().split(", ")[0]) + number(error.width().split(", ")[3])) / 2;
    assertEquals(middle / number(error.divisor()), number(error.standard()), 2e-3 * middle);
    BudgetTable.Part resolution = mean.parts().get(1);
    assertEquals(
        number(resolution.width()) / number(resolution.divisor()) / 2,
        number(resolution.standard()),
        1e-3);
    BudgetTable.Part scatter = mean.parts().get(2);
    assertEquals("3", scatter.freedom());
    // 600, 602, 604 and 606 mA: s = 2.582 mA, over the root of four.
    assertEquals(2.582 / 2, number(scatter.standard()), 1e-3);
  }

  /** A kind of reading is shown once, at its greatest uncertainty. */
  @Test
  void thePageHasATableForEachKindOfReading() throws BadInput {
    Report report = report();
    String page = JudgePage.of(report);
    for (BudgetTable table : BudgetTable.of(report, Language.ENGLISH)) {
      assertTrue(page.contains("combined at " + table.value()), table.value());
    }
    assertEquals(
        BudgetTable.of(report, Language.ENGLISH).size(),
        page.split("Degrees of freedom</th>", -1).length - 1);
  }
}
