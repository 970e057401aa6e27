package passband.pdf;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.render.Sheet;

/** The rows of a table of readings: a box, the limits and the ticks for each. */
final class ReadingRows {
  private final List<String> table;
  private final TableColumns columns;
  private final RowPart head;
  private final Sheet.Group group;
  private final PartWriter write;

  ReadingRows(
      List<String> table, TableColumns columns, RowPart head, Sheet.Group group, PartWriter write) {
    this.table = table;
    this.columns = columns;
    this.head = head;
    this.group = group;
    this.write = write;
  }

  /**
   * A line of the table.
   *
   * @param after the space after it
   */
  RowPart line(Sheet.Line line, double after) {
    List<List<RowPart.Cell>> lines = new ArrayList<>();
    for (Sheet.Box box : line.boxes()) {
      List<RowPart.Cell> cells = new ArrayList<>();
      boolean first = lines.isEmpty();
      beside(cells, first, Integer.toString(line.number()), 11);
      if (group.hasSetting()) {
        beside(cells, first, text(line.setting()), 12);
      }
      line.extras().forEach(e -> beside(cells, first, e, TableColumns.EXTRA_SIZE));
      if (group.hasLoad()) {
        beside(cells, first, text(line.load()), 12);
      }
      cells.add(reading(box, line.boxes().size() > 1, columns.width(cells.size())));
      cells.add(limits(box, columns.width(cells.size())));
      List<List<String>> ticks =
          box.judged()
              ? List.of(List.of("pass", "fail"), List.of("not done"))
              : List.of(List.of("not done"));
      cells.add(new RowPart.Ticks(ticks, 9, null));
      if (group.hasTimes()) {
        cells.add(first ? times(line, columns.width(cells.size())) : null);
      }
      lines.add(Collections.unmodifiableList(cells));
    }
    return new RowPart(
        table,
        "line-" + line.number(),
        columns.widths(),
        lines,
        head,
        after,
        !line.asks().isEmpty());
  }

  private RowPart.Cell times(Sheet.Line line, double width) {
    List<TextBlock> blocks = new ArrayList<>();
    if (line.on() != null) {
      blocks.add(write.block(9, false, width - 7, "on " + line.on()));
    }
    if (line.rest() != null) {
      blocks.add(write.block(9, false, width - 7, "rest " + line.rest()));
    }
    return new RowPart.Words(blocks, "TD");
  }

  private static String text(@Nullable String value) {
    return value == null ? "" : value;
  }

  private void beside(List<RowPart.Cell> cells, boolean first, String text, double size) {
    cells.add(first ? write.words(text, true, columns.width(cells.size()), size) : null);
  }

  private RowPart.Cell reading(Sheet.Box box, boolean named, double width) {
    TextBlock title = named ? write.block(8.5, false, width - 7, box.title()) : null;
    return new RowPart.Digits(title, box.cells(), box.unit(), box.id());
  }

  private RowPart.Cell limits(Sheet.Box box, double width) {
    List<TextBlock> blocks = new ArrayList<>();
    blocks.add(write.block(11, box.judged(), width - 7, box.limits()));
    if (box.tolerance() != null) {
      blocks.add(write.block(8.5, false, width - 7, "tolerance " + box.tolerance()));
    }
    return new RowPart.Words(blocks, "TD");
  }
}
