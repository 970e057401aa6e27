package passband.pdf;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.render.Sheet;

/** The rows of a table of readings: a box, the limits and the ticks for each. */
final class ReadingRows {
  private final List<String> table;
  private final Sheet.Group group;
  private final PartWriter write;
  private final TableColumns columns;
  private final Part head;
  private final Part.Heading heading;

  /**
   * The rows of a group.
   *
   * @param above what stands above the headings where the table goes on on a further page
   */
  ReadingRows(List<String> table, Sheet.Group group, List<Part> above, PartWriter write) {
    this.table = table;
    this.group = group;
    this.write = write;
    this.columns = new TableColumns(group, write);
    RowPart row = write.headRow(table, columns.widths(), columns.titles());
    this.head = under(extraRows("head", columns.extraTitles(), null), row);
    List<Part> again = new ArrayList<>(above);
    again.add(head);
    this.heading = new Part.Heading(head, new RowStack(again));
  }

  /** The headings. */
  Part head() {
    return head;
  }

  /**
   * A line of the table.
   *
   * @param after the space after it
   */
  Part line(Sheet.Line line, double after) {
    List<List<TableCell>> lines = new ArrayList<>();
    for (Sheet.Box box : line.boxes()) {
      lines.add(
          Collections.unmodifiableList(lines.isEmpty() ? first(line, box) : further(line, box)));
    }
    String key = "line-" + line.number();
    RowPart row =
        new RowPart(
            table,
            key,
            columns.widths(),
            lines.get(0),
            lines.subList(1, lines.size()),
            heading,
            after,
            false,
            0);
    return under(extraRows(key, line.extras(), heading), row);
  }

  /** The rows of further settings with the line's own row; that alone where there are none. */
  private static Part under(List<Part> extras, RowPart row) {
    if (extras.isEmpty()) {
      return row;
    }
    extras.add(row);
    return new RowStack(extras);
  }

  /**
   * Further settings where they are not beside the others, as many in a row as there are columns.
   */
  private List<Part> extraRows(String key, List<String> texts, Part.@Nullable Heading above) {
    List<Part> rows = new ArrayList<>();
    int most = columns.widths().size();
    for (int from = 0; !columns.extrasBeside() && from < texts.size(); from += most) {
      List<String> some = texts.subList(from, Math.min(from + most, texts.size()));
      rows.add(extraRow(key + "-settings-" + from, some, most, above));
    }
    return rows;
  }

  private RowPart extraRow(String key, List<String> texts, int most, Part.@Nullable Heading above) {
    List<Double> widths = new ArrayList<>();
    List<TableCell> cells = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      int span = i + 1 < texts.size() ? 1 : most - i;
      double width = write.inner() * span / most;
      double size = above == null ? PartWriter.HEAD_SIZE : TableColumns.EXTRA_SIZE;
      TextBlock text = write.block(size, true, width - 7, texts.get(i));
      widths.add(width);
      cells.add(new WordsCell(List.of(text), above == null ? "TH" : "TD", span));
    }
    return new RowPart(table, key, widths, cells, above, 0);
  }

  /** The line's first box, with what stands beside all of them. */
  private List<TableCell> first(Sheet.Line line, Sheet.Box box) {
    int rows = line.boxes().size();
    List<TableCell> cells = new ArrayList<>();
    beside(cells, rows, Integer.toString(line.number()), TableColumns.NUMBER_SIZE);
    if (group.hasSetting()) {
      beside(cells, rows, text(line.setting()), TableColumns.AMOUNT_SIZE);
    }
    if (columns.extrasBeside()) {
      line.extras().forEach(e -> beside(cells, rows, e, TableColumns.EXTRA_SIZE));
    }
    if (group.hasLoad()) {
      beside(cells, rows, text(line.load()), TableColumns.AMOUNT_SIZE);
    }
    box(cells, line, box);
    return cells;
  }

  /** A box under the first. */
  private List<TableCell> further(Sheet.Line line, Sheet.Box box) {
    int before = columns.titles().indexOf(write.says("reading"));
    List<TableCell> cells = new ArrayList<>(Collections.nCopies(before, null));
    box(cells, line, box);
    return cells;
  }

  private void box(List<TableCell> cells, Sheet.Line line, Sheet.Box box) {
    cells.add(columns.reading(line, box));
    cells.add(limits(box, columns.width(cells.size())));
    List<List<String>> ticks = columns.ticks(box.judged());
    cells.add(write.ticks(ticks, columns.width(cells.size()), null));
  }

  private static String text(@Nullable String value) {
    return value == null ? "" : value;
  }

  private void beside(List<TableCell> cells, int rows, String text, double size) {
    cells.add(beside(write.words(text, true, columns.width(cells.size()), size), rows));
  }

  private static TableCell beside(TableCell cell, int rows) {
    return rows == 1 ? cell : new BesideCell(cell, rows, false);
  }

  private TableCell limits(Sheet.Box box, double width) {
    List<TextBlock> blocks = new ArrayList<>();
    blocks.add(write.block(TableColumns.LIMITS_SIZE, box.judged(), width - 7, box.limits()));
    if (box.tolerance() != null) {
      blocks.add(
          write.block(
              TableColumns.TOLERANCE_SIZE,
              false,
              width - 7,
              write.says("limits.tolerance", box.tolerance())));
    }
    return new WordsCell(blocks, "TD");
  }
}
