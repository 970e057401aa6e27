package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import nu.validator.htmlparser.dom.HtmlDocumentBuilder;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import passband.detect.Detection;
import passband.diagnostic.Code;
import passband.draw.Drawing;
import passband.draw.Svg;
import passband.plan.Plan;
import passband.render.BudgetTable;
import passband.render.Checklist;
import passband.render.DetectPage;
import passband.render.DetectWords;
import passband.render.Drawings;
import passband.render.Sheet;
import passband.render.SheetMaker;
import passband.testing.LongTexts;
import passband.testing.PdfInk;
import passband.testing.Snippet;

/**
 * Every word that the author wrote and the page shows stands on the paper, the sheet's or the
 * reviewer's, as often as on the page, inside the margins and over no other, whatever its length;
 * or the sheet is refused because a drawing does not fit. The bytes are the same a second time.
 */
final class PaperLaw {
  private static final Set<String> NOT_SHOWN = Set.of("script", "style", "title", "desc", "button");

  private static final Set<String> IN_A_LINE = Set.of("b", "strong", "em", "i", "span", "small");
  private static final Set<String> WITH_NEXT = Set.of("b", "strong", "em", "i", "span");

  private PaperLaw() {}

  // ---- the words ----

  private static Map<String, Integer> words(String text) {
    Map<String, Integer> words = new TreeMap<>();
    Matcher matcher = LongTexts.WORD.matcher(text);
    while (matcher.find()) {
      words.merge(matcher.group().toLowerCase(Locale.ROOT), 1, Integer::sum);
    }
    return words;
  }

  /** The author's words on the page, each with how often it stands there. */
  static Map<String, Integer> words(Plan plan) {
    return words(shown(plan).replaceAll("\\s+", ""));
  }

  /** What the page shows, but for its buttons. */
  static String shown(Plan plan) {
    try {
      StringBuilder text = new StringBuilder();
      String html = Checklist.of(plan);
      addText(new HtmlDocumentBuilder().parse(new InputSource(new StringReader(html))), text);
      // The charts of the limits are the reviewer's; on the page they do not stand.
      for (String chart : Drawings.limits(plan).values()) {
        addText(new HtmlDocumentBuilder().parse(new InputSource(new StringReader(chart))), text);
      }
      return text.toString();
    } catch (SAXException | IOException e) {
      throw new AssertionError(e);
    }
  }

  private static void addText(Node node, StringBuilder text) {
    if (node.getNodeType() == Node.TEXT_NODE) {
      text.append(node.getNodeValue());
    }
    for (Node kid = node.getFirstChild(); kid != null; kid = kid.getNextSibling()) {
      if (!NOT_SHOWN.contains(kid.getNodeName())) {
        text.append(IN_A_LINE.contains(kid.getNodeName()) ? "" : " ");
        addText(kid, text);
        if (kid instanceof Element use && use.getTagName().equals("use")) {
          // What another drawing of the page has too stands in that one.
          addText(
              kid.getOwnerDocument().getElementById(use.getAttribute("href").substring(1)), text);
        }
        text.append(WITH_NEXT.contains(kid.getNodeName()) ? "" : " ");
      }
    }
  }

  // ---- the places ----

  private static void insideTheMargins(PdfInk ink, Paper paper, String where) {
    for (PdfInk.Page page : ink.pages()) {
      for (PdfInk.Letter letter : page.letters()) {
        double top = letter.y() - 0.8 * letter.size();
        double bottom = letter.y() + 0.25 * letter.size();
        double above = letter.tagged() ? Paper.TOP : 18;
        double below = letter.tagged() ? Paper.BOTTOM : 18;
        boolean inside =
            letter.x() >= Paper.MARGIN - 0.1
                && letter.x() + letter.width() <= paper.width() - Paper.MARGIN + 0.1
                && top >= above
                && bottom <= paper.height() - below;
        assertTrue(inside, () -> where + ": " + letter);
      }
      for (float[] corner : page.corners()) {
        boolean inside =
            corner[0] >= Paper.MARGIN - 1
                && corner[0] <= paper.width() - Paper.MARGIN + 1
                && corner[1] >= 30
                && corner[1] <= paper.height() - Paper.BOTTOM + 1;
        boolean serial =
            corner[1] >= paper.height() - 37
                && corner[1] <= paper.height() - 18
                && corner[0] > paper.width() / 3
                && corner[0] < paper.width() - Paper.MARGIN - 50;
        assertTrue(inside || serial, () -> where + ": a line at " + corner[0] + ", " + corner[1]);
      }
    }
  }

  /** By the middles of the letters, where each is black. */
  private static void overNoOther(PdfInk ink, String where) {
    for (PdfInk.Page page : ink.pages()) {
      Map<Long, List<PdfInk.Letter>> near = new HashMap<>();
      for (PdfInk.Letter letter : page.letters()) {
        long column = Math.round(letter.x() / 16.0);
        long row = Math.round(letter.y() / 16.0);
        for (long c = column - 1; c <= column + 1; c++) {
          for (long r = row - 1; r <= row + 1; r++) {
            for (PdfInk.Letter other : near.getOrDefault(c * 1000 + r, List.of())) {
              assertTrue(apart(letter, other), () -> where + ": " + letter + " over " + other);
            }
          }
        }
        near.computeIfAbsent(column * 1000 + row, k -> new ArrayList<>()).add(letter);
      }
    }
  }

  private static boolean apart(PdfInk.Letter a, PdfInk.Letter b) {
    double across = Math.min(a.x() + a.width(), b.x() + b.width()) - Math.max(a.x(), b.x());
    double down = Math.min(a.y(), b.y()) - Math.max(a.y() - a.size() / 2, b.y() - b.size() / 2);
    return across < 0.5 || down < 0.5;
  }

  // ---- the law ----

  /** The words of the budgets, which only the reviewer's paper has. */
  private static Map<String, Integer> budgets(Plan plan) {
    StringBuilder text = new StringBuilder();
    for (BudgetTable one : BudgetTable.expected(SheetMaker.sheet(plan).items(), plan.language())) {
      String formula = one.formula().isEmpty() ? "" : one.quantity() + " " + one.formula();
      text.append(String.join(" ", one.item(), formula)).append(' ');
      one.parts().forEach(part -> text.append(String.join(" ", part.cells())).append(' '));
    }
    return words(text.toString());
  }

  /** Whether it is printed; false where it is refused. */
  static boolean holds(Snippet snippet, Paper paper, boolean drawn, String where)
      throws IOException {
    Set<Code> wrong = new TreeSet<>();
    snippet.diagnostics().stream()
        .map(d -> d.code())
        .filter(code -> !code.allowable())
        .forEach(wrong::add);
    if (!wrong.isEmpty()) {
      assertEquals(Set.of(Code.DRAWING_OFF_PAPER), wrong, () -> where + "\n" + snippet.report());
      assertTrue(drawn, where);
      return false;
    }
    Plan plan = snippet.plans().get(0);
    byte[] pdf = ChecklistPdf.of(plan, paper);
    byte[] review = ReviewPdf.of(plan, paper);
    Map<String, Integer> words = words(PdfInk.of(pdf).said());
    words(PdfInk.of(review).said())
        .forEach((word, count) -> words.merge(word, count, Integer::sum));
    words(headOfReview(plan)).forEach((word, count) -> words.merge(word, -count, Integer::sum));
    detection(plan).forEach((word, count) -> words.merge(word, -count, Integer::sum));
    budgets(plan).forEach((word, count) -> words.merge(word, -count, Integer::sum));
    words.values().removeIf(count -> count == 0);
    assertEquals(words(plan), words, where);
    for (byte[] one : List.of(pdf, review)) {
      insideTheMargins(PdfInk.of(one), paper, where);
      overNoOther(PdfInk.of(one), where);
    }
    assertArrayEquals(pdf, ChecklistPdf.of(plan, paper), where);
    assertArrayEquals(review, ReviewPdf.of(plan, paper), where);
    return true;
  }

  /** What the reviewer's paper says again of the sheet's head. */
  private static String headOfReview(Plan plan) {
    Sheet.Head head = SheetMaker.sheet(plan).head();
    String all = head.title() + head.revision() + head.device() + head.analyzer();
    return (all + head.decision()).replaceAll("\\s+", "");
  }

  /** What the reviewer's paper says of the faults that are caught, by their own page's words. */
  private static Map<String, Integer> detection(Plan plan) throws IOException {
    Detection detection = Detection.asItIs(plan);
    DetectWords words = new DetectWords(plan.language());
    StringBuilder text = new StringBuilder(words.summary(detection));
    words.assumptions(detection).forEach(text::append);
    if (!DetectPage.matrix(detection, words).isEmpty()) {
      DetectPage.placeNames(detection).forEach(text::append);
    }
    try {
      for (Drawing curve : DetectPage.curves(detection, plan.language())) {
        String svg = Svg.file(curve);
        addText(new HtmlDocumentBuilder().parse(new InputSource(new StringReader(svg))), text);
      }
    } catch (SAXException e) {
      throw new AssertionError(e);
    }
    return words(text.toString().replaceAll("\\s+", ""));
  }
}
