package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.print.PageSize;
import org.openqa.selenium.print.PrintOptions;
import passband.diff.ChangeGroup;
import passband.diff.PlanDiff;
import passband.plan.Plan;
import passband.render.DiffPage;
import passband.testing.Repository;
import passband.testing.Snippet;

/** What a reviewer is given of a revision, printed by the browser. */
class ReviewPageTest {
  private static final String MAIN = "yarrow/yarrow-service.pband";

  /** A file, what stands in it, and what comes instead. */
  private static final String[][] EDITS = {
    {MAIN, "  caution mains ", "  # caution mains "},
    {MAIN, "at most 50 uA", "at most 100 uA"},
    {MAIN, "from 95 ohm to 155 ohm", "from 100 ohm to 150 ohm"},
    {MAIN, "| 450      | 70", "| 450      | 72"},
    {"yarrow/yarrow.pband", "10 s on, 20 s off", "10 s on, 30 s off"},
    {MAIN, "    record  analyzer-due \"Analyzer serial and due\"\n", ""},
    {MAIN, "revision \"A\"", "revision \"B\""},
  };

  @TempDir Path folder;

  private static Plan plan(Map<String, String> library) {
    Snippet snippet = Snippet.compile(library, MAIN, null);
    assertEquals(1, snippet.plans().size());
    assertEquals("", snippet.report());
    return snippet.plans().get(0);
  }

  private List<String> printed(String html, double width, double height) throws IOException {
    Path page = folder.resolve("diff.html");
    Files.writeString(page, html);
    List<String> pages = new ArrayList<>();
    try (Browser browser = new Browser(folder, false)) {
      browser.open(page);
      PrintOptions options = new PrintOptions();
      options.setPageSize(new PageSize(height, width));
      String pdf = browser.driver().print(options).getContent();
      byte[] bytes = Base64.getDecoder().decode(pdf.getBytes(StandardCharsets.US_ASCII));
      try (PDDocument document = Loader.loadPDF(bytes)) {
        for (int i = 1; i <= document.getNumberOfPages(); i++) {
          PDFTextStripper text = new PDFTextStripper();
          text.setStartPage(i);
          text.setEndPage(i);
          pages.add(text.getText(document).replaceAll("\\s+", " "));
        }
      }
    }
    return pages;
  }

  /** Seven edits are seven things to tick, the worst first, on three pages at the most. */
  @Test
  void sevenEditsAreSignedOnThreePages() throws IOException {
    Map<String, String> library = new TreeMap<>(Repository.texts(Repository.LIBRARY));
    Plan was = plan(library);
    for (String[] edit : EDITS) {
      String text = library.get(edit[0]);
      assertTrue(text.contains(edit[1]), edit[1]);
      library.put(edit[0], text.replace(edit[1], edit[2]));
    }
    List<PlanDiff> diffs = PlanDiff.between(List.of(was), List.of(plan(library)));
    List<ChangeGroup> groups = diffs.get(0).groups();
    List<String> kinds = groups.stream().map(group -> group.kind().word()).toList();
    assertEquals(EDITS.length, groups.size(), kinds.toString());
    for (int i = 1; i < groups.size(); i++) {
      assertTrue(groups.get(i - 1).kind().compareTo(groups.get(i).kind()) <= 0, kinds.toString());
    }
    assertEquals("caution removed", kinds.get(0));
    String html = DiffPage.of(diffs, null);
    for (double[] paper : new double[][] {{21.0, 29.7}, {21.59, 27.94}}) {
      List<String> pages = printed(html, paper[0], paper[1]);
      assertTrue(pages.size() <= 3, pages.size() + " pages");
      String all = String.join(" ", pages);
      assertTrue(pages.get(0).contains(kinds.get(0)), pages.get(0));
      kinds.forEach(kind -> assertTrue(all.contains(kind), kind));
      String last = pages.get(pages.size() - 1);
      assertTrue(last.contains("Reviewed by"), last);
      assertTrue(last.contains(kinds.get(kinds.size() - 1)), "signatures stand alone: " + last);
    }
  }
}
