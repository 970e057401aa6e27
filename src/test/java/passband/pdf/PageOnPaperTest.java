package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import passband.draw.Drawing;
import passband.draw.WiringSize;
import passband.plan.Plan;
import passband.testing.GeneratedProcedures;
import passband.testing.PdfInk;
import passband.testing.Sheets;

/**
 * What the page shows is on the paper, the sheet's or the reviewer's: the compiler's sentences as
 * well as the author's.
 */
class PageOnPaperTest {
  /** In HTML a character; on paper a box is drawn. */
  private static final String BOX = "\u2610";

  private static Stream<Plan> plans() {
    return Stream.concat(
        Sheets.demo().stream(), LongStream.range(0, 25).mapToObj(GeneratedProcedures::plan));
  }

  /** The paper has more: numbers of steps, blanks, a box for a reading that was not taken. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void everyWordOfThePage(Paper paper) throws IOException {
    for (Plan plan : plans().toList()) {
      Map<String, Integer> missing = new TreeMap<>();
      for (String word : PaperLaw.shown(plan).strip().split("\\s+")) {
        missing.merge(word, 1, Integer::sum);
      }
      assertTrue(missing.size() > 100, plan.name().text());
      missing.remove(BOX);
      for (byte[] pdf : List.of(ChecklistPdf.of(plan, paper), ReviewPdf.of(plan, paper))) {
        PdfInk.of(pdf).words().forEach((word, count) -> missing.merge(word, -count, Integer::sum));
      }
      missing.values().removeIf(count -> count <= 0);
      assertEquals(Map.of(), missing, plan.name().text());
    }
  }

  /** The highest drawing has room under a heading and the outlet's name. */
  @Test
  void theHighestDrawingFits() {
    double height = WiringSize.MOST_HEIGHT * Drawing.UNITS_PER_MM * SetupPart.UNIT;
    for (Paper paper : Paper.values()) {
      assertTrue(height + 90 <= paper.room(), paper + " " + paper.room());
    }
  }
}
