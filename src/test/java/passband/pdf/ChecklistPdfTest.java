package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.testing.Sheets;
import passband.words.Language;

/** The sheet on paper, read back with PDFBox and judged by veraPDF. */
class ChecklistPdfTest {

  static List<Plan> demo() {
    return Sheets.demo();
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document);
    }
  }

  private static List<String> pages(byte[] pdf) throws IOException {
    List<String> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        pages.add(stripper.getText(document));
      }
    }
    return pages;
  }

  /** As printed beside the box: what a reading has to be. */
  private static String accepted(Plan plan, Limit limit) {
    Language language = plan.language();
    String low = limit.end(limit.accept().lower());
    String high = limit.end(limit.accept().upper());
    String words =
        low == null
            ? language.of("limits.at-most", high)
            : high == null
                ? language.of("limits.at-least", low)
                : language.of("limits.between", low, high);
    return language.comma() ? words.replace('.', ',') : words;
  }

  @ParameterizedTest
  @MethodSource("demo")
  void everyLimitIsThereInOrder(Plan plan) throws IOException {
    String text = text(ChecklistPdf.of(plan, Paper.A4));
    int from = 0;
    for (Limit limit : plan.limits()) {
      int at = text.indexOf(accepted(plan, limit), from);
      assertTrue(at >= 0, limit.id() + ": " + accepted(plan, limit) + " after character " + from);
      from = at + 1;
    }
  }

  /** The line at the top of a page, with its outlets at the right. */
  private static boolean isCorner(String line) {
    return Pattern.compile(
            " \u00b7 r[e\u00e9]vision ", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
        .matcher(line)
        .find();
  }

  /** The sheet and the reviewer's charts are legible at arm's length: 9 pt, but for a rounding. */
  @ParameterizedTest
  @MethodSource("demo")
  void noTypeIsSmallerThanNinePoints(Plan plan) throws IOException {
    Map<String, Float> small = new TreeMap<>();
    AtomicInteger letters = new AtomicInteger();
    PDFTextStripper sizes =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition letter) {
            letters.incrementAndGet();
            if (letter.getYScale() < 8.95f && !letter.getUnicode().isBlank()) {
              small.merge(letter.getUnicode(), letter.getYScale(), Math::min);
            }
          }
        };
    for (Paper paper : Paper.values()) {
      for (byte[] pdf : List.of(ChecklistPdf.of(plan, paper), ReviewPdf.of(plan, paper))) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
          sizes.getText(document);
        }
      }
    }
    assertEquals(Map.of(), small);
    assertTrue(letters.get() > 1000, letters + " letters");
  }

  @ParameterizedTest
  @MethodSource("demo")
  void everyPageSaysWhatItIs(Plan plan) throws IOException {
    List<String> pages = pages(ChecklistPdf.of(plan, Paper.A4));
    for (int i = 0; i < pages.size(); i++) {
      String page = pages.get(i);
      assertTrue(
          page.contains(plan.name().text() + " \u00b7 " + plan.language().of("revision", "")),
          page);
      assertTrue(page.contains(plan.digest().substring(0, 12)), page);
      assertTrue(page.contains(plan.language().of("page", i + 1, pages.size())), page);
    }
    for (Point point : plan.points()) {
      if (point.limits().isEmpty()) {
        continue; // what is accepted of its readings stands in a row of its own
      }
      String outlet = point.outlet().title();
      String limit = accepted(plan, point.limits().get(0));
      assertTrue(
          pages.stream()
              .anyMatch(
                  p ->
                      p.contains(limit)
                          && p.lines().anyMatch(l -> isCorner(l) && l.contains(outlet))),
          point.id());
    }
  }

  @ParameterizedTest
  @MethodSource("demo")
  void everyTypeIsEmbedded(Plan plan) throws IOException {
    try (PDDocument document = Loader.loadPDF(ChecklistPdf.of(plan, Paper.A4))) {
      int seen = 0;
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertTrue(font.isEmbedded(), font.getName());
          seen++;
        }
      }
      assertTrue(seen > 0);
      assertNotNull(document.getDocumentCatalog().getStructureTreeRoot());
      assertEquals(plan.language().code(), document.getDocumentCatalog().getLanguage());
    }
  }

  @Test
  void theBytesDependOnNothingElse() {
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    byte[] first = ChecklistPdf.of(Sheets.YARROW, Paper.A4);
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
      assertArrayEquals(first, ChecklistPdf.of(Sheets.YARROW, Paper.A4));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  /**
   * Forty points of two readings: each point's number, setting and limits stand on one page, every
   * page of the table has its headings, and a setup is whole.
   */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void nothingIsBrokenAtThePagesEnd(Paper paper) throws IOException {
    Plan plan = Sheets.ofPoints(40);
    List<String> pages = pages(ChecklistPdf.of(plan, paper));
    assertTrue(pages.size() > 5, pages.size() + " pages");
    int number = 0;
    for (Point point : plan.points()) {
      number++;
      String row =
          number
              + " "
              + Pattern.quote(point.setting().text())
              + " "
              + Pattern.quote(point.load().text())
              + "(?:(?!\\n\\d+ \\d+ W).)*?"
              + Pattern.quote(accepted(plan, point.limits().get(0)))
              + "(?:(?!\\n\\d+ \\d+ W).)*?"
              + Pattern.quote(accepted(plan, point.limits().get(1)));
      Pattern whole = Pattern.compile("(?m)^" + row, Pattern.DOTALL);
      long found = pages.stream().filter(p -> whole.matcher(p).find()).count();
      assertEquals(1, found, point.id());
    }
    for (String page : pages) {
      if (page.contains("250 V")) {
        Matcher head = Pattern.compile("No\\. Setting Load Reading").matcher(page);
        assertTrue(head.find(), page);
      }
    }
    assertEquals(
        1,
        pages.stream()
            .filter(
                p ->
                    p.contains("Output off")
                        && p.contains("Lead Terminal Jack Change")
                        && p.split(" new\\b", -1).length == 4)
            .count());
  }
}
