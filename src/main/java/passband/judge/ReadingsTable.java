package passband.judge;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.parse.SpreadsheetText;

/**
 * Tables of readings as programs and spreadsheets write them. The script of the sheet reads them by
 * the same rules, with the same messages ({@code readings.js}).
 */
public final class ReadingsTable {
  /** What the column 'kind' may hold. */
  public static final List<String> KINDS =
      List.of("", "reading", "derived", "not-done", "record", "choice", "tick");

  /** By column, which cell of a row is its. */
  private final Map<ReadingColumn, Integer> columns = new EnumMap<>(ReadingColumn.class);

  /** Cells whose heading is blank. */
  private final List<Integer> unnamed = new ArrayList<>();

  private final int width;

  private ReadingsTable(List<String> heading) throws BadInput {
    width = heading.size();
    for (int i = 0; i < width; i++) {
      String name = SpreadsheetText.stripped(Cell.read(heading.get(i)));
      ReadingColumn column = ReadingColumn.find(name);
      if (name.isEmpty()) {
        unnamed.add(i);
      } else if (column == null) {
        throw new BadInput(
            "unknown column '" + name + "' (the columns are: " + ReadingColumn.words() + ")");
      } else if (columns.put(column, i) != null) {
        throw new BadInput("the column '" + name + "' stands twice");
      }
    }
    for (ReadingColumn needed : ReadingColumn.of(ReadingColumn.Use.NEEDED)) {
      if (!columns.containsKey(needed)) {
        throw new BadInput("there is no column '" + needed.word() + "'");
      }
    }
  }

  static Readings read(byte[] bytes) throws BadInput {
    String text = decoded(bytes);
    char separator = SpreadsheetText.separator(text);
    List<CsvRecord> records = records(text, separator);
    if (records.isEmpty()) {
      throw new BadInput("this file is empty");
    }
    ReadingsTable table = new ReadingsTable(records.get(0).getFields());
    List<Readings.Row> rows = new ArrayList<>();
    Set<String> digests = new HashSet<>();
    for (CsvRecord record : records.subList(1, records.size())) {
      Readings.Row row = table.row(record);
      if (row != null) {
        rows.add(row);
        digests.add(table.cell(record, ReadingColumn.DIGEST));
      }
    }
    boolean without = digests.remove("");
    if (without && !digests.isEmpty()) {
      throw new BadInput("some rows carry a digest and others do not: of what are the others?");
    }
    if (digests.size() > 1) {
      throw new BadInput("the rows carry " + digests.size() + " different digests");
    }
    return new Readings(digests.stream().findFirst().orElse(null), rows, separator == ';');
  }

  // ---- text ----

  private static String decoded(byte[] bytes) throws BadInput {
    Charset charset = SpreadsheetText.charset(bytes);
    try {
      return SpreadsheetText.decoded(bytes, charset);
    } catch (CharacterCodingException e) {
      throw new BadInput("this is not " + charset.name() + " text");
    }
  }

  /** Without those whose cells are all blank. */
  private static List<CsvRecord> records(String text, char separator) throws BadInput {
    try {
      return SpreadsheetText.records(text, separator);
    } catch (CsvParseException | IllegalArgumentException e) {
      throw new BadInput("this is not a CSV file: " + e.getMessage());
    }
  }

  // ---- rows ----

  /** Null for one that is of no item and has no reading. */
  private Readings.@Nullable Row row(CsvRecord record) throws BadInput {
    int line = (int) record.getStartingLineNumber();
    if (record.getFieldCount() != width) {
      throw new BadInput(
          "line " + line + " has " + record.getFieldCount() + " cells, the heading has " + width);
    }
    for (int cell : unnamed) {
      if (!SpreadsheetText.stripped(record.getField(cell)).isEmpty()) {
        throw new BadInput(
            "column " + (cell + 1) + " has no heading, but line " + line + " has something in it");
      }
    }
    String point = cell(record, ReadingColumn.POINT);
    String reading = cell(record, ReadingColumn.READING);
    String kind = cell(record, ReadingColumn.KIND);
    if (!KINDS.contains(kind)) {
      throw new BadInput("line " + line + ": unknown kind '" + kind + "'");
    }
    if (point.isEmpty() && !reading.isEmpty()) {
      throw new BadInput("line " + line + " has a reading but no point");
    }
    return point.isEmpty()
        ? null
        : new Readings.Row(
            point,
            reading,
            cell(record, ReadingColumn.UNIT),
            cell(record, ReadingColumn.PHASE),
            cell(record, ReadingColumn.ATTEMPT),
            kind,
            line,
            said(record),
            new Readings.Notes(
                cell(record, ReadingColumn.BY),
                cell(record, ReadingColumn.REASON),
                cell(record, ReadingColumn.REMARK)));
  }

  private Map<ReadingColumn, String> said(CsvRecord record) {
    Map<ReadingColumn, String> said = new EnumMap<>(ReadingColumn.class);
    for (ReadingColumn column : ReadingColumn.values()) {
      String text = column.isCompared() ? cell(record, column) : "";
      if (!text.isEmpty()) {
        said.put(column, text);
      }
    }
    return said;
  }

  /** Empty where there is no such column. */
  private String cell(CsvRecord record, ReadingColumn column) {
    Integer at = columns.get(column);
    return at == null ? "" : SpreadsheetText.stripped(Cell.read(record.getField(at)));
  }
}
