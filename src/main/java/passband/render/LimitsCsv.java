package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.evidence.ItemList;
import passband.judge.Cell;

/** {@code limits.csv}: a row for each item with limits. RFC 4180, lines ended by LF. */
public final class LimitsCsv {
  private LimitsCsv() {}

  /** The names of the columns, in order. */
  public static List<String> columns() {
    return LimitColumn.ALL.stream().map(LimitColumn::name).toList();
  }

  /**
   * The whole file: numbers are plain decimals in their unit, units are UCUM codes, and a cell is
   * empty where there is nothing.
   */
  public static String of(ItemList list) {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      csv.writeRecord(columns());
      for (LimitColumn.Row row : LimitColumn.rows(list)) {
        csv.writeRecord(cells(row));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static List<@Nullable String> cells(LimitColumn.Row row) {
    List<@Nullable String> cells = new ArrayList<>();
    for (LimitColumn column : LimitColumn.ALL) {
      String text = column.cell().apply(row);
      cells.add(text == null ? null : Cell.written(text));
    }
    return cells;
  }
}
