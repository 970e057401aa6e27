package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import passband.plan.Plan;
import passband.testing.GeneratedProcedures;
import passband.testing.PdfInk;
import passband.testing.Sheets;

/** How much of the paper the demo's sheets take, and how much of each page. */
class PageFillTest {

  /** How far down the room between head and foot there is ink, in parts of it, page by page. */
  private static List<Double> fills(Plan plan, Paper paper) throws IOException {
    List<Double> fills = new ArrayList<>();
    for (PdfInk.Page page : PdfInk.of(ChecklistPdf.of(plan, paper)).pages()) {
      double lowest = Paper.TOP;
      for (PdfInk.Letter letter : page.letters()) {
        lowest = letter.tagged() ? Math.max(lowest, letter.y()) : lowest;
      }
      for (float[] corner : page.corners()) {
        boolean inside = corner[1] <= paper.height() - Paper.BOTTOM + 1;
        lowest = inside ? Math.max(lowest, corner[1]) : lowest;
      }
      fills.add((lowest - Paper.TOP) / paper.room());
    }
    return fills;
  }

  private static final Set<String> FIRST_DEMOS =
      Set.of("campion-2-energy", "fescue-3-service", "tussock-4-output");

  /** What is printed for the 65 lines of the three smaller demos in English. */
  @Test
  void theFirstDemosTakeTwentyFourPages() throws IOException {
    int pages = 0;
    for (Plan plan : Sheets.demo()) {
      if (FIRST_DEMOS.contains(plan.name().text())) {
        pages += fills(plan, Paper.A4).size();
      }
    }
    assertTrue(pages <= 24, pages + " pages");
  }

  /**
   * All demos together. Letter has 39 points less of room than A4, so that less goes with what is
   * whole; a table that becomes lower saves a page or leaves more of one empty, hence both bounds.
   */
  @ParameterizedTest
  @CsvSource({"A4, 71, 0.75", "LETTER, 76, 0.75"})
  void pagesAreFewAndFull(Paper paper, int most, double least) throws IOException {
    List<Double> all = new ArrayList<>();
    for (Plan plan : Sheets.demo()) {
      List<Double> fills = fills(plan, paper);
      all.addAll(fills);
    }
    assertTrue(all.size() <= most, () -> paper + ": " + all.size() + " pages");
    double mean = all.stream().mapToDouble(fill -> fill).average().orElseThrow();
    assertTrue(mean >= least, () -> paper + ": " + mean + " of each page, " + all);
  }

  /** How many lines of text are on a page between its head and its foot. */
  private static long lines(PdfInk.Page page) {
    return page.letters().stream()
        .filter(PdfInk.Letter::tagged)
        .map(letter -> Math.round(letter.y()))
        .distinct()
        .count();
  }

  /** Neither of the demo nor of procedures that nobody laid out by hand. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void noPageHasLessThanThreeLines(Paper paper) throws IOException {
    List<Plan> plans = new ArrayList<>(Sheets.demo());
    LongStream.range(0, 40).mapToObj(GeneratedProcedures::plan).forEach(plans::add);
    for (Plan plan : plans) {
      List<PdfInk.Page> pages = PdfInk.of(ChecklistPdf.of(plan, paper)).pages();
      for (int i = 0; i < pages.size(); i++) {
        long lines = lines(pages.get(i));
        assertTrue(lines >= 3, plan.name().text() + ", page " + (i + 1) + ": " + lines);
      }
    }
  }

  /** The page of each row of a table, table by table, of what the reviewer gets. */
  private static List<List<Integer>> tables(byte[] pdf) throws IOException {
    List<List<Integer>> tables = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      Deque<PDStructureNode> open = new ArrayDeque<>();
      open.add(document.getDocumentCatalog().getStructureTreeRoot());
      while (!open.isEmpty()) {
        PDStructureNode node = open.pop();
        boolean table =
            node instanceof PDStructureElement e && e.getStructureType().equals("Table");
        List<Integer> rows = new ArrayList<>();
        for (Object kid : node.getKids()) {
          if (kid instanceof PDStructureElement row && table) {
            collect(row, document, rows);
          } else if (kid instanceof PDStructureElement inner) {
            open.add(inner);
          }
        }
        if (table) {
          tables.add(rows);
        }
      }
    }
    return tables;
  }

  /** The page on which a row ends; of its head, and of a group of rows, those of each. */
  private static void collect(PDStructureElement row, PDDocument document, List<Integer> rows) {
    int page = -1;
    for (Object kid : row.getKids()) {
      if (kid instanceof PDStructureElement cell && cell.getStructureType().equals("TR")) {
        collect(cell, document, rows);
      } else if (kid instanceof PDStructureElement cell && cell.getPage() != null) {
        page = Math.max(page, document.getPages().indexOf(cell.getPage()));
      }
    }
    if (page >= 0) {
      rows.add(page);
    }
  }

  /**
   * Where a table goes on over pages, its head and three rows stay together, and its last three.
   */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void noTableOfTheReviewerLeavesARowAlone(Paper paper) throws IOException {
    int broken = 0;
    for (Plan plan : Sheets.demo()) {
      for (List<Integer> rows : tables(ReviewPdf.of(plan, paper))) {
        int last = rows.size() - 1;
        if (rows.get(0).equals(rows.get(last))) {
          continue;
        }
        broken++;
        String where = plan.name().text() + ": " + rows;
        assertEquals(rows.get(0), rows.get(3), where);
        assertEquals(rows.get(last), rows.get(last - 2), where);
      }
    }
    assertTrue(broken > 1, broken + " tables go on over pages");
  }
}
