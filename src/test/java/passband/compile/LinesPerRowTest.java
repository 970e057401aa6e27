package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * How many lines an author writes for a row of a service manual. Counted are the lines of the
 * procedure's own file without blank lines, comments and lone braces. A row is a value with limits
 * at an outlet, mode, setting and load; in several phases it is one row.
 */
class LinesPerRowTest {
  private static final String MAIN = "sedge-170/sedge-170-full.pband";

  private static long lines(String text) {
    return text.lines()
        .map(String::strip)
        .filter(line -> !line.isEmpty() && !line.startsWith("#"))
        .filter(line -> !line.equals("{") && !line.equals("}"))
        .count();
  }

  private static int rows(Plan plan) {
    Set<String> rows = new HashSet<>();
    for (Item item : Evidence.of(plan).list().items()) {
      if (item instanceof Item.Measured measured && measured.limits() != null) {
        String phase = item.head().phase();
        rows.add(phase == null ? item.id() : item.id().replace("/" + phase + "/", "/"));
      }
    }
    return rows.size();
  }

  @Test
  void braceCommentAndBlankLinesDoNotCount() {
    assertEquals(2, lines("# a\n\nsetup a {\n  # b\n  link x from y to z\n}\n"));
  }

  @Test
  void theFullVisitHasAtMostOneAndAHalf() {
    Snippet visit = Snippet.compile(Repository.texts(Repository.PROCEDURES), MAIN, null);
    assertEquals(List.of(), visit.codes());
    long lines = lines(Repository.text(Repository.PROCEDURES.resolve(MAIN)));
    int rows = rows(visit.plan());
    assertTrue(2 * lines <= 3L * rows, lines + " lines for " + rows + " rows");
  }
}
