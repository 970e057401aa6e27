package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import passband.plan.Plan;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.testing.PdfInk;
import passband.testing.Sheets;

/** What one line holds, since its halves would be read wrongly. */
class UnbrokenTest {
  /** How far apart two words of one cell or paragraph stand at the most, in points. */
  private static final double A_SPACE = 6;

  /** Lines of one text follow each other more closely than anything else, in sizes of its type. */
  private static final double NEXT_LINE = 1.3;

  private static final Pattern ENDS_IN_A_NUMBER = Pattern.compile("(?:.* )?[(±+−-]*[0-9.,]*[0-9]");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          shows 55 W.              | shows, 55 W.
          within ± 5 % of setting  | within, ± 5 %, of, setting
          10 – 20 W or more        | 10 – 20 W, or, more
          the worst (10 mA)        | the, worst, (10 mA)
          Press "KEY 1" twice      | Press, "KEY 1", twice
          from LOAD + to RF -, REF | from, LOAD +, to, RF -,, REF
          U = 0.13 s, k = 2        | U = 0.13 s,, k = 2
          5 leads                  | 5, leads
          bis 230 °C warm          | bis, 230 °C, warm
          """)
  void aNumberStaysWithItsUnit(String text, String pieces) {
    assertEquals(pieces, String.join(", ", Unbroken.of(text)));
  }

  /** Every unit that a sheet can print. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void everyPrintedUnitStays(Paper paper) {
    assertFalse(Units.all().isEmpty());
    for (Unit unit : Units.all()) {
      if (!unit.printed().isEmpty()) {
        String amount = "7 " + unit.printed() + ".";
        assertEquals(List.of("from", amount), Unbroken.of("from " + amount), paper.toString());
      }
    }
  }

  /** A line of a text: letters with no more than a space between. */
  private record Line(String text, float x, float end, float y, float size) {}

  private static List<Line> lines(PdfInk.Page page) {
    TreeMap<Integer, List<PdfInk.Letter>> rows = new TreeMap<>();
    for (PdfInk.Letter letter : page.letters()) {
      if (letter.tagged()) {
        rows.computeIfAbsent(Math.round(letter.y() * 10), y -> new ArrayList<>()).add(letter);
      }
    }
    List<Line> lines = new ArrayList<>();
    for (List<PdfInk.Letter> row : rows.values()) {
      row.sort((a, b) -> Float.compare(a.x(), b.x()));
      int start = 0;
      for (int i = 1; i <= row.size(); i++) {
        if (i == row.size() || gap(row.get(i - 1), row.get(i)) > A_SPACE) {
          lines.add(line(row.subList(start, i)));
          start = i;
        }
      }
    }
    return lines;
  }

  private static float gap(PdfInk.Letter a, PdfInk.Letter b) {
    return b.x() - a.x() - a.width();
  }

  private static Line line(List<PdfInk.Letter> letters) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < letters.size(); i++) {
      PdfInk.Letter one = letters.get(i);
      boolean apart = i > 0 && gap(letters.get(i - 1), one) > 0.15 * one.size();
      text.append(apart ? " " : "").append(one.text());
    }
    PdfInk.Letter first = letters.get(0);
    PdfInk.Letter last = letters.get(letters.size() - 1);
    return new Line(text.toString(), first.x(), last.x() + last.width(), first.y(), first.size());
  }

  /** Whether a line goes on in another: right below it, in the same type, from the same edge. */
  private static boolean goesOn(Line line, Line next) {
    double down = next.y - line.y;
    return down > 0
        && down <= NEXT_LINE * line.size
        && Math.abs(next.x - line.x) < 0.5
        && line.size == next.size;
  }

  private static boolean beginsWithAUnit(String text) {
    Matcher first = Pattern.compile("[^ ]*").matcher(text);
    assertTrue(first.lookingAt());
    String word = first.group().replaceAll("[.,;:)]+$", "");
    return !word.isEmpty() && Units.recorded(word) != null;
  }

  /** Read back from the paper: no line ends in a number whose unit begins the next. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void noUnitBeginsALineOfTheDemo(Paper paper) throws IOException {
    int together = 0;
    for (Plan plan : Sheets.demo()) {
      for (byte[] pdf : List.of(ChecklistPdf.of(plan, paper), ReviewPdf.of(plan, paper))) {
        for (PdfInk.Page page : PdfInk.of(pdf).pages()) {
          List<Line> lines = lines(page);
          for (Line line : lines) {
            for (Line next : lines) {
              if (goesOn(line, next)) {
                together++;
                boolean parted =
                    ENDS_IN_A_NUMBER.matcher(line.text).matches() && beginsWithAUnit(next.text);
                assertFalse(parted, () -> plan.name().text() + ": " + line + " / " + next);
              }
            }
          }
        }
      }
    }
    assertTrue(together > 500, together + " lines that go on");
  }
}
