package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.Repository;
import passband.testing.Snippet;

/** An option's title is what is printed for it; what identifies a row is its name. */
class OptionTitlesTest {
  private static final String MAIN = "sedge-170/sedge-170-full.pband";
  private static final String TESTER = "analyzers/linden-3.pband";

  private static Plan visit(String from, String to) {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.PROCEDURES));
    String tester = files.get(TESTER);
    assertTrue(tester.contains(from), from);
    files.put(TESTER, tester.replace(from, to));
    Snippet snippet = Snippet.compile(files, MAIN, null);
    assertEquals("", snippet.report());
    return snippet.plan();
  }

  private static List<String> identities(Plan plan) {
    return Evidence.of(plan).list().items().stream().map(Item::id).toList();
  }

  /** The words of the sheet; identities, which attributes and the script hold, keep the names. */
  private static String printed(Plan plan) {
    String page = Checklist.of(plan);
    return page.substring(page.indexOf("<body"), page.indexOf("<script"))
        .replaceAll("<[^>]*>", "|");
  }

  @Test
  void anotherTitleIsPrintedAndIdentifiesTheSame() {
    Plan was = visit("N OPEN", "N OPEN");
    Plan now = visit("N OPEN", "NEUTRAL OFF");
    assertEquals(identities(was), identities(now));
    assertNotEquals(was.digest(), now.digest());
    assertTrue(printed(was).contains("N OPEN"));
    assertFalse(printed(was).contains("neutral-open"));
    assertEquals(printed(was).split("N OPEN").length, printed(now).split("NEUTRAL OFF").length);
    assertFalse(printed(now).contains("N OPEN"));
  }

  @Test
  void withoutATitleTheNameIsPrinted() {
    Plan plain = visit(" \"N OPEN\"", "");
    assertEquals(identities(visit("N OPEN", "N OPEN")), identities(plain));
    assertTrue(printed(plain).contains("|neutral-open|"));
  }

  /** A title that is a word of the program's own too is printed as it is written. */
  @Test
  void aTitleStaysAsItIsWritten() {
    String page = printed(visit("normal \"NORMAL\", neutral", "normal \"Open\", neutral"));
    assertTrue(page.contains("Turn SUPPLY to Open."));
    assertFalse(page.contains("Turn SUPPLY to open."));
  }

  /** What it is left at is printed by its title too, wherever it is set back. */
  @Test
  void theRestPositionIsPrintedByItsTitle() {
    String page = printed(visit("normal \"NORMAL\", neutral", "normal \"MAINS\", neutral"));
    assertTrue(page.contains("Turn SUPPLY to MAINS."));
    assertFalse(page.contains("Turn SUPPLY to normal."));
    assertTrue(page.contains("set Supply to MAINS"), "if you stop here");
  }
}
