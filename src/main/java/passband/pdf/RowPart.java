package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.jspecify.annotations.Nullable;

/**
 * A row of a table, or the lines of one test point: its first and last cells stand beside all of
 * them.
 *
 * @param key unique in its table
 * @param widths of the columns, in points
 * @param lines each a cell for every column; null where the cell above goes on
 * @param head the row with the headings; null for the heading itself
 * @param keep whether it stays with what follows, as a heading always does
 */
record RowPart(
    List<String> table,
    String key,
    List<Double> widths,
    List<List<Cell>> lines,
    @Nullable RowPart head,
    double after,
    boolean keep)
    implements Part {
  private static final double PAD = 3.5;

  /** A row that a page's end may part from the next. */
  RowPart(
      List<String> table,
      String key,
      List<Double> widths,
      List<List<Cell>> lines,
      @Nullable RowPart head,
      double after) {
    this(table, key, widths, lines, head, after, false);
  }

  /** What is in a cell. */
  interface Cell {
    double height();

    void draw(Canvas canvas, double x, double y, double width) throws IOException;

    /** How many of the table's columns it takes. */
    default int columns() {
      return 1;
    }

    /** The identity of the item that it asks for; null for none. */
    default @Nullable String item() {
      return null;
    }

    /** Whether it is a heading: of a column, or of its row. */
    default String role() {
      return "TD";
    }
  }

  @Override
  public double height() {
    double sum = after;
    for (int i = 0; i < lines.size(); i++) {
      sum += lineHeight(i);
    }
    return sum;
  }

  @Override
  public @Nullable Part heading() {
    return head;
  }

  @Override
  public boolean staysWithNext() {
    return keep || head == null;
  }

  private double lineHeight(int line) {
    double most = 0;
    for (Cell cell : lines.get(line)) {
      double share = cell == null ? 0 : cell.height();
      boolean spans = lines.size() > 1 && cell != null && line == 0 && below(cell);
      most = Math.max(most, spans ? share / lines.size() : share);
    }
    return most + 2 * PAD;
  }

  private boolean below(Cell cell) {
    return lines.get(1).get(lines.get(0).indexOf(cell)) == null;
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    canvas.artifact(() -> borders(canvas, x, y));
    double top = y;
    for (int i = 0; i < lines.size(); i++) {
      drawLine(canvas, i, x, top);
      top += lineHeight(i);
    }
  }

  private void drawLine(Canvas canvas, int line, double x, double top) throws IOException {
    double left = x;
    for (int c = 0; c < widths.size(); c++) {
      Cell cell = lines.get(line).get(c);
      if (cell != null) {
        double room = line == 0 && spansAll(c) ? height() - after : lineHeight(line);
        double at = top + (room - cell.height()) / 2;
        double from = left + PAD;
        double width = widths.get(c) - 2 * PAD;
        List<String> path = new ArrayList<>(table);
        path.add("TR:" + key + (line == 0 ? "" : "-" + line));
        path.add(cell.role() + ":" + c);
        if (cell.item() != null) {
          canvas.item(path, cell.item());
        }
        PDStructureElement made = canvas.tagged(path, () -> cell.draw(canvas, from, at, width));
        if (made != null) {
          Tags.spans(made, line == 0 && spansAll(c) ? lines.size() : 1, cell.columns());
        }
      }
      left += widths.get(c);
    }
  }

  private boolean spansAll(int column) {
    return lines.size() > 1 && lines.get(1).get(column) == null;
  }

  private void borders(Canvas canvas, double x, double y) throws IOException {
    double height = height() - after;
    double left = x;
    for (int c = 0; c < widths.size(); c++) {
      double top = y;
      for (int line = 0; line < lines.size(); line++) {
        Cell cell = lines.get(line).get(c);
        if (cell != null) {
          double room = line == 0 && spansAll(c) ? height : lineHeight(line);
          if (head == null || cell.role().startsWith("TH")) {
            canvas.grey(left, top, widths.get(c), room, 0.93);
          }
          canvas.rect(left, top, widths.get(c), room, 0.7);
        }
        top += lineHeight(line);
      }
      left += widths.get(c);
    }
  }

  /** Cells of text. */
  record Words(List<TextBlock> blocks, String role, int columns) implements Cell {
    Words(List<TextBlock> blocks, String role) {
      this(blocks, role, 1);
    }

    static Words of(TextBlock block) {
      return new Words(List.of(block), "TD");
    }

    @Override
    public double height() {
      double sum = 0;
      for (TextBlock block : blocks) {
        sum += block.height();
      }
      return sum;
    }

    @Override
    public void draw(Canvas canvas, double x, double y, double width) throws IOException {
      double top = y;
      for (TextBlock block : blocks) {
        block.draw(canvas, x, top);
        top += block.height();
      }
    }
  }

  /** Room to write in. */
  record Blank(double height, @Nullable String item) implements Cell {
    @Override
    public void draw(Canvas canvas, double x, double y, double width) {}
  }

  /** A box for each digit, the decimal point between them, the unit after. */
  record Digits(@Nullable TextBlock title, String cells, String unit, String item) implements Cell {
    static final double CELL = 14;
    private static final double HIGH = 20;
    private static final double POINT = 9;

    /** How wide it is without the unit. */
    static double width(String cells) {
      long points = cells.chars().filter(c -> c == '.').count();
      return (cells.length() - points) * CELL + points * POINT;
    }

    @Override
    public double height() {
      return HIGH + (title == null ? 0 : title.height() + 2);
    }

    @Override
    public void draw(Canvas canvas, double x, double y, double width) throws IOException {
      double top = y;
      if (title != null) {
        title.draw(canvas, x, y);
        top += title.height() + 2;
      }
      double left = x;
      for (int i = 0; i < cells.length(); i++) {
        if (cells.charAt(i) == '.') {
          canvas.text(".", left + 2, top + HIGH - 1, 18, true);
          left += POINT;
        } else {
          canvas.rect(left, top, CELL, HIGH, 0.9);
          left += CELL;
        }
      }
      canvas.text(unit, left + 4, top + HIGH - 3, 10.5, true);
    }
  }

  /** Boxes to tick, each with a word. */
  record Ticks(List<List<String>> rows, double size, @Nullable String item) implements Cell {
    private static final double LINE = 15;
    private static final double BOX = 9;

    @Override
    public double height() {
      return rows.size() * LINE - 3;
    }

    @Override
    public void draw(Canvas canvas, double x, double y, double width) throws IOException {
      double top = y;
      for (List<String> row : rows) {
        double left = x;
        for (String word : row) {
          canvas.rect(left, top + 1, BOX, BOX, 0.9);
          canvas.text(word, left + BOX + 3, top + 9, size, false);
          left += width / 2;
        }
        top += LINE;
      }
    }
  }
}
