package passband.printed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.printed.PrintedText.Piece;
import passband.printed.PrintedText.Word;

/** The marks of a printed sheet that a technician goes by, in the order in which they are read. */
final class PrintedSheet {
  private static final float HEADING = 9.6f;

  /** Something that a technician goes by. */
  sealed interface Mark {
    /** On which page it stands, from 1. */
    int page();
  }

  /** A heading, of a test, a setup, a mode or a state. */
  record Heading(int page, float size, String text) implements Mark {}

  /** A numbered sentence. */
  record Step(int page, String text) implements Mark {}

  /** When the part under a heading is done, where that is not always. */
  record OnlyIf(int page, String text) implements Mark {}

  /**
   * A row of the table of a wiring.
   *
   * @param terminal where the lead is to be at the generator; empty for nowhere
   * @param owner the instrument whose jacks the heading says these are; empty where it says none
   * @param jack the same at an instrument
   * @param change what is done with it
   */
  record Wired(int page, String lead, String terminal, String owner, String jack, String change)
      implements Mark {}

  /** The head of a table with boxes; the columns' left edges by name. */
  record Head(int page, Map<String, Float> columns) implements Mark {}

  /** A numbered line of such a table; its cells by the columns' names. */
  record Line(int page, String number, Map<String, String> cells) implements Mark {}

  private record At(Piece piece, Mark mark) {}

  private final List<Piece> pieces;
  private final List<At> marks = new ArrayList<>();
  private final Set<Piece> taken = new HashSet<>();

  private PrintedSheet(List<Piece> pieces) {
    this.pieces = pieces;
  }

  /** The marks on the pages of a PDF. */
  static List<Mark> marks(byte[] pdf) {
    PrintedSheet sheet = new PrintedSheet(PrintedText.of(pdf));
    sheet.addSteps();
    sheet.addTables();
    sheet.addWires();
    sheet.addHeadings();
    sheet.marks.sort(
        Comparator.<At>comparingInt(at -> at.piece.page())
            .thenComparing(at -> at.piece.y())
            .thenComparing(at -> at.piece.x()));
    sheet.readColumns();
    return sheet.marks.stream().map(At::mark).toList();
  }

  /** Steps that stand in two columns are read by their numbers. */
  private void readColumns() {
    int start = 0;
    while (start < marks.size()) {
      int end = start;
      Set<String> numbers = new HashSet<>();
      while (end < marks.size() && isNumbered(marks.get(end))) {
        numbers.add(marks.get(end).piece.text());
        end++;
      }
      List<At> steps = marks.subList(start, end);
      if (numbers.size() == steps.size()) {
        steps.sort(Comparator.comparingDouble(at -> Double.parseDouble(at.piece.text())));
      }
      start = Math.max(end, start + 1);
    }
  }

  private static boolean isNumbered(At at) {
    return at.mark instanceof Step && at.piece.text().matches("[0-9]+\\.");
  }

  private void addSteps() {
    for (Piece piece : pieces) {
      if (piece.text().matches("[0-9]+\\.") && piece.size() < HEADING) {
        Piece text = rightOf(piece);
        if (text != null) {
          marks.add(new At(piece, new Step(piece.page(), whole(text))));
        }
      } else if (isAlone(piece)) {
        marks.add(new At(piece, new Step(piece.page(), whole(piece))));
      } else if (piece.text().startsWith("Only if ")) {
        marks.add(new At(piece, new OnlyIf(piece.page(), whole(piece))));
      }
    }
  }

  /** Whether it is the only sentence under its heading: that has no number. */
  private boolean isAlone(Piece piece) {
    boolean indented = Math.abs(piece.x() - 66) < 1 && piece.size() == 9.5f;
    return indented && !taken.contains(piece) && !numbered(piece);
  }

  private Piece rightOf(Piece number) {
    Piece nearest = null;
    for (Piece piece : pieces) {
      boolean beside =
          piece.page() == number.page()
              && Math.abs(piece.y() - number.y()) < 1.5f
              && piece.x() > number.x()
              && piece.x() < number.x() + 40;
      if (beside && (nearest == null || piece.x() < nearest.x())) {
        nearest = piece;
      }
    }
    return nearest;
  }

  /** A sentence with the lines below it that are indented as it is. */
  private String whole(Piece first) {
    StringBuilder text = new StringBuilder(first.text());
    Piece last = first;
    for (Piece next = below(last, first.x()); next != null; next = below(last, first.x())) {
      text.append(' ').append(next.text());
      taken.add(next);
      last = next;
    }
    taken.add(first);
    return text.toString();
  }

  private Piece below(Piece piece, float x) {
    for (Piece other : pieces) {
      float down = other.y() - piece.y();
      boolean sameKind = other.size() == piece.size() && Math.abs(other.x() - x) < 0.6f;
      if (other.page() == piece.page() && sameKind && down > 4 && down < 13.5f) {
        return numbered(other) ? null : other;
      }
    }
    return null;
  }

  private boolean numbered(Piece text) {
    for (Piece piece : pieces) {
      boolean before =
          piece.page() == text.page()
              && Math.abs(piece.y() - text.y()) < 1.5f
              && piece.x() < text.x()
              && piece.x() > text.x() - 40;
      if (before && piece.text().matches("[0-9]+\\.")) {
        return true;
      }
    }
    return false;
  }

  private void addTables() {
    for (Piece piece : pieces) {
      if (piece.text().equals("No.")) {
        Map<String, Float> columns = columns(piece);
        if (columns.containsKey("Reading")) {
          marks.add(new At(piece, new Head(piece.page(), columns)));
          addLines(piece, columns);
        }
      }
    }
  }

  private void addWires() {
    for (WiringTables.Row row : WiringTables.of(pieces)) {
      int page = row.letter().page();
      marks.add(
          new At(
              row.letter(),
              new Wired(page, row.lead(), row.terminal(), row.owner(), row.jack(), row.change())));
    }
  }

  private Map<String, Float> columns(Piece number) {
    Map<String, Float> columns = new LinkedHashMap<>();
    for (Piece piece : pieces) {
      if (piece.page() == number.page() && Math.abs(piece.y() - number.y()) < 1) {
        taken.add(piece);
        piece.words().forEach(word -> columns.put(word.text(), word.x()));
      }
    }
    return columns;
  }

  private void addLines(Piece head, Map<String, Float> columns) {
    float end = endOf(head);
    for (Piece piece : pieces) {
      boolean line =
          piece.page() == head.page()
              && piece.y() > head.y()
              && piece.y() < end
              && piece.size() > HEADING
              && Math.abs(piece.x() - head.x()) < 1
              && piece.words().get(0).text().matches("[0-9]+");
      if (line) {
        String number = piece.words().get(0).text();
        marks.add(new At(piece, new Line(piece.page(), number, cells(piece, columns))));
      }
    }
  }

  /** Where the next table's head on the page is, or the page's end. */
  private float endOf(Piece head) {
    float end = Float.MAX_VALUE;
    for (Piece piece : pieces) {
      boolean later =
          piece.page() == head.page() && piece.y() > head.y() && piece.text().equals("No.");
      end = later ? Math.min(end, piece.y()) : end;
    }
    return end;
  }

  private Map<String, String> cells(Piece number, Map<String, Float> columns) {
    Map<String, String> cells = new LinkedHashMap<>();
    for (Piece piece : pieces) {
      if (piece.page() == number.page() && Math.abs(piece.y() - number.y()) < 2) {
        taken.add(piece);
        for (Word word : piece.words()) {
          cells.merge(column(word, columns), word.text(), (a, b) -> a + " " + b);
        }
      }
    }
    if (columns.containsKey("Activation")) {
      cells.put("Activation", broken(number, columns));
    }
    return cells;
  }

  /** The words of a cell that may stand on several lines, around that of the number. */
  private String broken(Piece number, Map<String, Float> columns) {
    StringBuilder text = new StringBuilder();
    for (Piece piece : pieces) {
      boolean here =
          piece.page() == number.page()
              && Math.abs(piece.y() - number.y()) < 22
              && piece.size() == number.size();
      for (Word word : here ? piece.words() : List.<Word>of()) {
        if (column(word, columns).equals("Activation")) {
          text.append(text.isEmpty() ? "" : " ").append(word.text());
          taken.add(piece);
        }
      }
    }
    return text.toString();
  }

  private static String column(Word word, Map<String, Float> columns) {
    String column = "";
    float nearest = Float.NEGATIVE_INFINITY;
    for (Map.Entry<String, Float> entry : columns.entrySet()) {
      if (entry.getValue() <= word.x() + 1 && entry.getValue() > nearest) {
        column = entry.getKey();
        nearest = entry.getValue();
      }
    }
    return column;
  }

  private void addHeadings() {
    for (Piece piece : pieces) {
      boolean caution = piece.size() == 10.5f && Math.abs(piece.x() - 39) < 1;
      boolean none = piece.y() < 40 || caution;
      if (piece.size() > HEADING && !none && !taken.contains(piece)) {
        marks.add(new At(piece, new Heading(piece.page(), piece.size(), heading(piece))));
      }
    }
  }

  /** A heading with the lines that it goes on in. */
  private String heading(Piece first) {
    StringBuilder text = new StringBuilder(first.text());
    Piece last = first;
    for (Piece piece : pieces) {
      float down = piece.y() - last.y();
      boolean goesOn =
          piece.page() == last.page()
              && piece.size() == last.size()
              && Math.abs(piece.x() - last.x()) < 0.6f
              && down > 4
              && down < 1.4f * last.size();
      if (goesOn && !taken.contains(piece)) {
        text.append(' ').append(piece.text());
        taken.add(piece);
        last = piece;
      }
    }
    return text.toString();
  }
}
