package passband.judge;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.evidence.BadInput;

/**
 * Recorded readings: the sheet's own export, or any CSV with the columns {@code point}, {@code
 * reading} and {@code unit}, and where there are phases {@code phase}.
 *
 * @param digest what the readings say that they were taken by; null where they say nothing
 * @param rows in the order of the file: several for one point are retests, the first stays
 * @param records serial numbers and the like, by name
 */
public record Readings(String digest, List<Row> rows, Map<String, String> records) {
  private static final List<String> NEEDED = List.of("point", "reading", "unit");

  /**
   * One line.
   *
   * @param phase empty where there is none
   * @param undone whether it says that the reading was not taken
   */
  public record Row(String point, String reading, String unit, String phase, boolean undone) {}

  /** Reads the table. */
  public static Readings parse(String text) throws BadInput {
    List<NamedCsvRecord> records;
    try {
      records =
          CsvReader.builder()
              .skipEmptyLines(true)
              .ofNamedCsvRecord(text.startsWith("\ufeff") ? text.substring(1) : text)
              .stream()
              .toList();
    } catch (CsvParseException | IllegalArgumentException e) {
      throw new BadInput("it is no table of comma-separated values: " + e.getMessage());
    }
    List<Row> rows = new ArrayList<>();
    Map<String, String> said = new LinkedHashMap<>();
    String digest = null;
    for (NamedCsvRecord record : records) {
      for (String needed : NEEDED) {
        if (record.findField(needed).isEmpty()) {
          throw new BadInput("it has no column " + needed);
        }
      }
      String own = optional(record, "digest");
      if (!own.isEmpty() && digest != null && !digest.equals(own)) {
        throw new BadInput("its rows are of two digests");
      }
      digest = own.isEmpty() ? digest : own;
      String kind = optional(record, "kind");
      switch (kind) {
        case "", "reading", "not-done" ->
            rows.add(
                new Row(
                    field(record, "point"),
                    field(record, "reading"),
                    field(record, "unit"),
                    optional(record, "phase"),
                    kind.equals("not-done")));
        default ->
            said.put(
                kind + ":" + Cell.read(record.getField("point")),
                Cell.read(record.getField("reading")));
      }
    }
    return new Readings(digest, rows, said);
  }

  private static String field(NamedCsvRecord record, String name) {
    return Cell.read(record.getField(name)).strip();
  }

  private static String optional(NamedCsvRecord record, String name) {
    return Cell.read(record.findField(name).orElse("")).strip();
  }
}
