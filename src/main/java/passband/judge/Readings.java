package passband.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Item;

/**
 * What was written down: the sheet's own export, or any table with the columns of {@link
 * ReadingColumn}.
 *
 * @param digest of the procedure they were taken by; null where they do not say
 * @param semicolons whether semicolons separate the cells of the file
 */
public record Readings(@Nullable String digest, List<Row> rows, boolean semicolons) {
  /** Of a file whose cells are separated by commas or tabs. */
  public Readings(@Nullable String digest, List<Row> rows) {
    this(digest, rows, false);
  }

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
   * @param notes what it says for the record
   */
  public record Row(
      String point,
      String reading,
      String unit,
      String phase,
      String attempt,
      String kind,
      int line,
      Map<ReadingColumn, String> said,
      Notes notes) {

    /** One that says nothing of the conditions, and nothing for the record. */
    public Row(
        String point,
        String reading,
        String unit,
        String phase,
        String attempt,
        String kind,
        int line) {
      this(point, reading, unit, phase, attempt, kind, line, Map.of(), Notes.NONE);
    }

    /** The same with another reading. */
    Row reading(String other) {
      return new Row(point, other, unit, phase, attempt, kind, line, said, notes);
    }

    /** Whether it says that the item was not done. */
    boolean undone() {
      return kind.equals("not-done");
    }
  }

  /**
   * What a row says for the record beside its value; empty where it says nothing.
   *
   * @param by who read it, where not the one who did the rest
   * @param reason why it was read again, or was not done
   */
  public record Notes(String by, String reason, String remark) {
    static final Notes NONE = new Notes("", "", "");
  }

  /** Reads a table: UTF-8 or UTF-16, cells separated by commas, semicolons or tabs. */
  public static Readings parse(byte[] bytes) throws BadInput {
    return ReadingsTable.read(bytes);
  }

  /**
   * What the sheet itself asks for, by the name of the blank, its attempts in order: one where
   * nothing is doubtful.
   */
  public Map<String, List<String>> records() {
    Map<String, List<Row>> rows = new LinkedHashMap<>();
    for (Row row : this.rows) {
      boolean record = row.kind().equals("record") || row.kind().isEmpty();
      if (record && row.point().startsWith(Item.SHEET)) {
        String name = row.point().substring(Item.SHEET.length());
        rows.computeIfAbsent(name, n -> new ArrayList<>()).add(row);
      }
    }
    Map<String, List<String>> records = new LinkedHashMap<>();
    rows.forEach(
        (name, of) ->
            records.put(
                name,
                Attempts.of(Item.SHEET + name, of).rows().stream().map(Row::reading).toList()));
    return records;
  }

  /**
   * What was last written in a blank that the sheet itself asks for; null where nothing was, or it
   * cannot be told what came last.
   */
  public @Nullable String record(String name) {
    List<Row> of = new ArrayList<>();
    for (Row row : rows) {
      if (row.point().equals(Item.SHEET + name)) {
        of.add(row);
      }
    }
    Attempts attempts = Attempts.of(Item.SHEET + name, of);
    return attempts.trouble() != null || attempts.none() ? null : attempts.last().reading();
  }
}
