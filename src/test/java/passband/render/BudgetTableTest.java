package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.judge.Judge;
import passband.judge.Report;
import passband.testing.Records;
import passband.testing.Sheets;

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
    List<BudgetTable> tables = BudgetTable.of(report());
    assertTrue(tables.size() > 3, tables.toString());
    int finite = 0;
    for (BudgetTable table : tables) {
      double square = 0;
      double shares = 0;
      for (BudgetTable.Part part : table.parts()) {
        double u = number(part.standard());
        assertEquals(u, number(part.width()) / number(part.divisor()), u * 2e-3);
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

  /** A kind of reading is shown once, at its greatest uncertainty. */
  @Test
  void thePageHasATableForEachKindOfReading() throws BadInput {
    Report report = report();
    String page = JudgePage.of(report);
    for (BudgetTable table : BudgetTable.of(report)) {
      assertTrue(page.contains("combined at " + table.value()), table.value());
    }
    assertEquals(
        BudgetTable.of(report).size(), page.split("Degrees of freedom</th>", -1).length - 1);
  }
}
