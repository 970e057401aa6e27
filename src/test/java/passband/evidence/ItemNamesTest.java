package passband.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import passband.judge.Judge;
import passband.judge.Readings;
import passband.plan.Plan;
import passband.render.JudgePage;
import passband.render.JudgeReport;
import passband.testing.GeneratedProcedures;
import passband.testing.Records;
import passband.testing.Sheets;

/** What a person reads of an item are its words; no two items have the same. */
class ItemNamesTest {
  private static List<Plan> plans() {
    List<Plan> plans = new ArrayList<>(List.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW));
    plans.addAll(Sheets.demo());
    LongStream.range(0, 100).mapToObj(GeneratedProcedures::plan).forEach(plans::add);
    return plans;
  }

  @Test
  void noTwoItemsHaveTheSameName() {
    int plain = 0;
    for (Plan plan : plans()) {
      ItemList list = Evidence.of(plan).list();
      ItemNames names = ItemNames.of(list);
      Set<String> seen = new HashSet<>();
      for (Item item : list.items()) {
        String name = names.of(item);
        assertTrue(seen.add(name), plan.name().text() + ": " + name);
        assertEquals(name, names.of(item.id()));
        plain += name.contains(item.id()) ? 0 : 1;
      }
    }
    assertTrue(plain > 1_000, plain + " have no need of their identity");
  }

  /** Its identity follows only where the words of two are the same, as of a tick at each line. */
  @Test
  void aMeasuredValueNeedsNoIdentity() {
    for (Plan plan : plans()) {
      ItemList list = Evidence.of(plan).list();
      ItemNames names = ItemNames.of(list);
      for (Item item : list.items()) {
        if (item instanceof Item.Measured) {
          assertFalse(names.of(item).contains(item.id()), names.of(item));
        }
      }
    }
  }

  /** Of a record in which everything fails or is missing, so that every cause is said. */
  @Test
  void theReportOfTheJudgeHasNoIdentities() throws Exception {
    int looked = 0;
    for (Plan plan : plans().subList(0, 20)) {
      ItemList list = Evidence.of(plan).list();
      ItemNames names = ItemNames.of(list);
      for (Readings readings :
          List.of(Records.of(list, false).readings(), Records.of(list, true).readings())) {
        var report = Judge.judge(list, readings, null);
        String said = JudgeReport.text(report) + JudgePage.of(report);
        for (Item item : list.items()) {
          if (!names.of(item).contains(item.id())) {
            int at = said.indexOf(item.id());
            assertFalse(
                at >= 0,
                () -> said.substring(Math.max(0, at - 200), Math.min(said.length(), at + 200)));
            looked++;
          }
        }
      }
    }
    assertTrue(looked > 1_000, looked + " identities");
  }
}
