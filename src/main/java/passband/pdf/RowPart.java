package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.jspecify.annotations.Nullable;

/**
 * A row of a table, or the lines of one test point: some cells of the first line stand beside all
 * of them.
 *
 * @param key unique in its table
 * @param widths of the columns, in points
 * @param first a cell for every column
 * @param more lines under the first; null where a cell of the first goes on
 * @param head the row with the headings; null for the heading itself
 * @param keep whether it stays with what follows, as a heading always does
 * @param from the number of the first line; not 0 where others stand on the page before
 */
record RowPart(
    List<String> table,
    String key,
    List<Double> widths,
    List<TableCell> first,
    List<List<TableCell>> more,
    Part.@Nullable Heading head,
    double after,
    boolean keep,
    int from)
    implements Part {
  /** Less room than this is left empty at the end of a page. */
  static final double LEAST = 60;

  /** For a table that has no heading to say again. */
  static final Part.Heading NO_HEAD = Part.Heading.of(nothing());

  private static final double PAD = 3;

  /** A row of one line that a page's end may part from the next. */
  RowPart(
      List<String> table,
      String key,
      List<Double> widths,
      List<TableCell> cells,
      Part.@Nullable Heading head,
      double after) {
    this(table, key, widths, cells, List.of(), head, after, false, 0);
  }

  private static Part nothing() {
    return new Part() {
      @Override
      public double height() {
        return 0;
      }

      @Override
      public void draw(Canvas canvas, double x, double y) {}
    };
  }

  @Override
  public boolean isLine() {
    for (TableCell cell : first) {
      if (cell instanceof DigitsCell) {
        return true;
      }
    }
    return false;
  }

  private List<TableCell> line(int number) {
    return number == 0 ? first : more.get(number - 1);
  }

  private int lines() {
    return more.size() + 1;
  }

  @Override
  public double height() {
    double sum = after;
    for (int i = 0; i < lines(); i++) {
      sum += lineHeight(i);
    }
    return sum;
  }

  @Override
  public boolean isHigherThan(double room) {
    double sum = after;
    for (int i = 0; i < lines() && sum <= room; i++) {
      sum += lineHeight(i);
    }
    return sum > room;
  }

  @Override
  public Part.@Nullable Heading heading() {
    return head;
  }

  @Override
  public boolean staysWithNext() {
    return keep || head == null;
  }

  /** A line's height; cells beside several lines have a share in each. */
  private double lineHeight(int number) {
    double most = 0;
    for (TableCell cell : first) {
      if (isBeside(cell)) {
        most = Math.max(most, cell.height() / lines());
      }
    }
    return Math.max(most + 2 * PAD, ownHeight(number));
  }

  /** A line's height, whatever stands beside it. */
  private double ownHeight(int number) {
    double most = 0;
    for (TableCell cell : line(number)) {
      most = Math.max(most, cell == null || isBeside(cell) ? 0 : cell.height());
    }
    return most + 2 * PAD;
  }

  /** Whether a cell of the first line stands beside the others too. */
  private boolean isBeside(TableCell cell) {
    return lines() > 1 && cell.rows() > 1;
  }

  // ---- over a page's end ----

  /** Between its lines where that can be, else within the first. */
  @Override
  public @Nullable Broken broken(double room) {
    if (room < LEAST) {
      return null;
    }
    int count = linesIn(room);
    if (count > 0) {
      RowPart upper = with(first, more.subList(0, count - 1), from, 0, false);
      if (!upper.isHigherThan(room)) {
        return new Broken(upper, without(count));
      }
    }
    return brokenLine(room);
  }

  /** How many lines have room, whatever stands beside them; at most all but one. */
  private int linesIn(double room) {
    int count = 0;
    double used = ownHeight(0);
    while (count < more.size() && used <= room) {
      count++;
      used += ownHeight(count);
    }
    return count;
  }

  private RowPart with(
      List<TableCell> cells, List<List<TableCell>> others, int start, double space, boolean keeps) {
    return new RowPart(table, key, widths, cells, others, head, space, keeps, start);
  }

  /** The lines after this many; what stands beside them is said again. */
  private RowPart without(int count) {
    List<TableCell> cells = new ArrayList<>();
    for (int c = 0; c < widths.size(); c++) {
      TableCell beside = first.get(c);
      cells.add(beside instanceof BesideCell cell ? cell.again() : line(count).get(c));
    }
    return with(cells, more.subList(count, more.size()), from + count, after, keep);
  }

  /** In the first line: each cell as far as it has room; null where none has. */
  private @Nullable Broken brokenLine(double room) {
    double most = 0;
    for (TableCell cell : first) {
      most = Math.max(most, cell.height());
    }
    double inside = Math.min(room - 2 * PAD, most - 0.01);
    List<TableCell> upper = new ArrayList<>();
    List<TableCell> lower = new ArrayList<>();
    boolean some = false;
    for (TableCell cell : first) {
      TableCell.Halves halves = cell.broken(inside);
      upper.add(halves.upper());
      lower.add(halves.lower());
      some |= halves.upper().height() > 0;
    }
    return some
        ? new Broken(with(upper, List.of(), from, 0, false), with(lower, more, from, after, keep))
        : null;
  }

  // ---- drawing ----

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double all = height() - after;
    canvas.artifact(() -> borders(canvas, x, y, all));
    double top = y;
    for (int i = 0; i < lines(); i++) {
      drawLine(canvas, i, x, top, all);
      top += lineHeight(i);
    }
  }

  private void drawLine(Canvas canvas, int number, double x, double top, double all)
      throws IOException {
    double left = x;
    double high = lineHeight(number);
    for (int c = 0; c < widths.size(); c++) {
      TableCell cell = line(number).get(c);
      if (cell != null) {
        double at = top + ((isBeside(cell) ? all : high) - cell.height()) / 2;
        drawCell(canvas, path(number, c, cell), cell, left + PAD, at, widths.get(c) - 2 * PAD);
      }
      left += widths.get(c);
    }
  }

  private List<String> path(int number, int column, TableCell cell) {
    List<String> path = new ArrayList<>(table);
    path.add("TR:" + key + (from + number == 0 ? "" : "-" + (from + number)));
    path.add(cell.role() + ":" + column);
    return path;
  }

  private static void drawCell(
      Canvas canvas, List<String> path, TableCell cell, double x, double y, double width)
      throws IOException {
    if (cell.repeats()) {
      canvas.again(() -> cell.draw(canvas, x, y, width));
      return;
    }
    if (cell.item() != null) {
      canvas.item(path, cell.item());
    }
    PDStructureElement made = canvas.tagged(path, () -> cell.draw(canvas, x, y, width));
    if (made != null) {
      Tags.spans(made, cell.rows(), cell.columns());
    }
  }

  private void borders(Canvas canvas, double x, double y, double all) throws IOException {
    double left = x;
    for (int c = 0; c < widths.size(); c++) {
      double top = y;
      for (int i = 0; i < lines(); i++) {
        TableCell cell = line(i).get(c);
        double high = lineHeight(i);
        if (cell != null) {
          border(canvas, cell, left, top, widths.get(c), isBeside(cell) ? all : high);
        }
        top += high;
      }
      left += widths.get(c);
    }
  }

  private void border(
      Canvas canvas, TableCell cell, double x, double y, double width, double height)
      throws IOException {
    if (head == null || cell.role().startsWith("TH")) {
      canvas.grey(x, y, width, height, 0.93);
    }
    canvas.rect(x, y, width, height, 0.7);
  }
}
