package passband.printed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import passband.printed.PrintedText.Piece;

/** The rows of the tables beside the wiring drawings, by where their words stand. */
final class WiringTables {
  private static final float SIZE = 9;

  /** Lines of one cell are closer to each other than this, those of two rows are not. */
  private static final float LINES = 12.5f;

  /**
   * A row: the piece with the lead's letter, and its cells from left to right.
   *
   * @param owner the instrument whose jacks the heading says these are; empty where it says none
   */
  record Row(
      Piece letter, String lead, String terminal, String owner, String jack, String change) {}

  /** The lines of a cell, and where its middle is. */
  private record Cell(float middle, String text) {}

  private final List<Piece> pieces;

  private WiringTables(List<Piece> pieces) {
    this.pieces = pieces;
  }

  /** All rows of a sheet. */
  static List<Row> of(List<Piece> pieces) {
    WiringTables tables = new WiringTables(pieces);
    List<Row> rows = new ArrayList<>();
    for (Piece piece : pieces) {
      if (piece.text().equals("Lead") && piece.size() == SIZE) {
        tables.add(piece, rows);
      }
    }
    return rows;
  }

  private void add(Piece head, List<Row> rows) {
    float terminal = edge(head, "Terminal");
    float jack = edge(head, "Jack");
    float change = edge(head, "Change");
    String owner = owner(head, jack);
    for (Piece letter : pieces) {
      boolean row =
          letter.page() == head.page()
              && letter.size() == SIZE
              && letter.y() > head.y()
              && letter.y() < endOf(head)
              && letter.x() < head.x()
              && letter.x() > head.x() - 35
              && letter.text().matches("[A-Z]{1,2}")
              && !cell(letter, head.x()).isEmpty();
      if (row) {
        rows.add(
            new Row(
                letter,
                cell(letter, head.x()),
                cell(letter, terminal),
                owner,
                cell(letter, jack),
                cell(letter, change)));
      }
    }
  }

  /** The left edge of a column, by the beginning of its heading. */
  private float edge(Piece head, String title) {
    for (Piece piece : pieces) {
      boolean below = piece.page() == head.page() && Math.abs(piece.y() - head.y()) < 30;
      if (below && piece.x() > head.x() && piece.text().matches(title + "(, .*|,)?")) {
        return piece.x();
      }
    }
    throw new AssertionError("no column " + title + " on page " + head.page());
  }

  /** The instrument whose jacks these are, as the heading says; empty where the cells do. */
  private String owner(Piece head, float jack) {
    for (Cell cell : cells(head.page(), jack)) {
      if (Math.abs(cell.middle - head.y()) < 30 && cell.text.startsWith("Jack, ")) {
        return cell.text.substring("Jack, ".length());
      }
    }
    return "";
  }

  private float endOf(Piece head) {
    float end = Float.MAX_VALUE;
    for (Piece piece : pieces) {
      boolean later = piece.page() == head.page() && piece.y() > head.y();
      if (later && piece.text().equals("Lead") && piece.size() == SIZE) {
        end = Math.min(end, piece.y());
      }
    }
    return end;
  }

  /** What stands in a column beside a letter; empty where nothing does. */
  private String cell(Piece letter, float x) {
    for (Cell cell : cells(letter.page(), x)) {
      if (Math.abs(cell.middle - letter.y()) < 2) {
        return cell.text;
      }
    }
    return "";
  }

  private List<Cell> cells(int page, float x) {
    List<Piece> column = new ArrayList<>();
    for (Piece piece : pieces) {
      if (piece.page() == page && piece.size() == SIZE && Math.abs(piece.x() - x) < 0.6) {
        column.add(piece);
      }
    }
    column.sort(Comparator.comparing(Piece::y));
    List<Cell> cells = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= column.size(); i++) {
      if (i == column.size() || column.get(i).y() - column.get(i - 1).y() > LINES) {
        List<Piece> lines = column.subList(from, i);
        float middle = (lines.get(0).y() + lines.get(lines.size() - 1).y()) / 2;
        cells.add(new Cell(middle, String.join(" ", lines.stream().map(Piece::text).toList())));
        from = i;
      }
    }
    return cells;
  }
}
