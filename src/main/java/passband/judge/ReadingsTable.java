package passband.judge;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import passband.evidence.BadInput;

/** Tables of readings as programs and spreadsheets write them. */
final class ReadingsTable {
  private static final List<String> NEEDED = List.of("point", "reading", "unit");
  private static final Set<String> KINDS =
      Set.of("", "reading", "derived", "not-done", "record", "choice", "tick");

  private ReadingsTable() {}

  static Readings read(byte[] bytes) throws BadInput {
    String text = decoded(bytes);
    List<NamedCsvRecord> records = records(text);
    List<Readings.Row> rows = new ArrayList<>();
    Set<String> digests = new HashSet<>();
    for (NamedCsvRecord record : records) {
      if (optional(record, "point").isEmpty() && optional(record, "reading").isEmpty()) {
        continue;
      }
      rows.add(row(record));
      digests.add(optional(record, "digest"));
    }
    boolean without = digests.remove("");
    if (without && !digests.isEmpty()) {
      throw new BadInput("some rows carry a digest and others do not: of what are the others?");
    }
    if (digests.size() > 1) {
      throw new BadInput("the rows carry " + digests.size() + " different digests");
    }
    return new Readings(digests.stream().findFirst().orElse(null), rows);
  }

  /** The text; spreadsheets write UTF-16 with a mark at its start. */
  private static String decoded(byte[] bytes) throws BadInput {
    boolean little = starts(bytes, 0xFF, 0xFE);
    boolean big = starts(bytes, 0xFE, 0xFF);
    Charset charset =
        little
            ? StandardCharsets.UTF_16LE
            : big ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_8;
    try {
      String text =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
      return text.startsWith("\ufeff") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new BadInput("this is not " + charset.name() + " text");
    }
  }

  private static boolean starts(byte[] bytes, int first, int second) {
    return bytes.length >= 2 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }

  private static List<NamedCsvRecord> records(String text) throws BadInput {
    List<NamedCsvRecord> records;
    try {
      records =
          CsvReader.builder()
              .fieldSeparator(separator(text))
              .skipEmptyLines(true)
              .ofNamedCsvRecord(text)
              .stream()
              .toList();
    } catch (CsvParseException | IllegalArgumentException e) {
      throw new BadInput("this is not a CSV file: " + e.getMessage());
    }
    for (String needed : NEEDED) {
      if (!records.isEmpty() && !records.get(0).getHeader().contains(needed)) {
        throw new BadInput("there is no column '" + needed + "'");
      }
    }
    return records;
  }

  /** What stands between the columns of the heading. */
  private static char separator(String text) {
    String heading = text.lines().findFirst().orElse("");
    char best = ',';
    for (char c : new char[] {';', '\t'}) {
      if (count(heading, c) > count(heading, best)) {
        best = c;
      }
    }
    return best;
  }

  private static long count(String text, char c) {
    return text.chars().filter(x -> x == c).count();
  }

  private static Readings.Row row(NamedCsvRecord record) throws BadInput {
    int line = (int) record.getStartingLineNumber();
    if (record.getFieldCount() != record.getHeader().size()) {
      throw new BadInput(
          "line "
              + line
              + " has "
              + record.getFieldCount()
              + " cells, the heading has "
              + record.getHeader().size());
    }
    String kind = optional(record, "kind");
    if (!KINDS.contains(kind)) {
      throw new BadInput("line " + line + ": unknown kind '" + kind + "'");
    }
    return new Readings.Row(
        optional(record, "point"),
        optional(record, "reading"),
        optional(record, "unit"),
        optional(record, "phase"),
        optional(record, "attempt"),
        kind,
        line);
  }

  private static String optional(NamedCsvRecord record, String name) {
    return Cell.read(record.findField(name).orElse("")).strip();
  }
}
