package passband.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;

/**
 * What was written down: the sheet's own export, or any table with the columns of {@link
 * ReadingColumn}.
 *
 * @param digest of the procedure they were taken by; null where they do not say
 */
public record Readings(@Nullable String digest, List<Row> rows) {

  /**
   * One row.
   *
   * @param point an item's identity, with or without its phase
   * @param phase empty where there is none
   * @param attempt empty where there is none
   * @param kind {@code reading}, {@code record}, {@code choice}, {@code tick}, {@code not-done} or
   *     empty
   * @param line in the file, from 1
   * @param said of the columns that are compared with the limits file, those that are not blank
   */
  public record Row(
      String point,
      String reading,
      String unit,
      String phase,
      String attempt,
      String kind,
      int line,
      Map<ReadingColumn, String> said) {

    /** One that says nothing of the conditions. */
    public Row(
        String point,
        String reading,
        String unit,
        String phase,
        String attempt,
        String kind,
        int line) {
      this(point, reading, unit, phase, attempt, kind, line, Map.of());
    }

    /** Whether it says that the item was not done. */
    boolean undone() {
      return kind.equals("not-done");
    }
  }

  /** Reads a table: UTF-8 or UTF-16, cells separated by commas, semicolons or tabs. */
  public static Readings parse(byte[] bytes) throws BadInput {
    return ReadingsTable.read(bytes);
  }

  /**
   * Records by the name at the end of their identity; of one name those of the sheet itself come
   * before those of a section. A row without a kind may be one.
   */
  public Map<String, String> records() {
    Map<String, String> records = new LinkedHashMap<>();
    recordRows().forEach((name, row) -> records.put(name, row.reading()));
    return records;
  }

  /** The rows of {@link #records}. */
  Map<String, Row> recordRows() {
    Map<String, Row> records = new LinkedHashMap<>();
    for (Row row : rows) {
      if (row.kind().equals("record") || row.kind().isEmpty()) {
        String name = row.point().substring(row.point().lastIndexOf('/') + 1);
        boolean own = row.point().equals("sheet/" + name);
        records.merge(name, row, (was, now) -> own ? now : was);
      }
    }
    return records;
  }
}
