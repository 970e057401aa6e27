package passband.parse;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Text of CSV files as spreadsheets write them. */
public final class SpreadsheetText {
  private SpreadsheetText() {}

  /**
   * The text of a charset, without a mark at its start.
   *
   * @throws CharacterCodingException when it is not of that charset
   */
  public static String decoded(byte[] bytes, Charset charset) throws CharacterCodingException {
    String text =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT)
            .decode(ByteBuffer.wrap(bytes))
            .toString();
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  /**
   * UTF-8 or, as some spreadsheets write, UTF-16; without a mark that is known by the zero beside
   * the first letter of the heading.
   */
  public static Charset charset(byte[] bytes) {
    int first = bytes.length < 2 ? 1 : bytes[0] & 0xFF;
    int second = bytes.length < 2 ? 1 : bytes[1] & 0xFF;
    if (first == 0xFF && second == 0xFE || first != 0 && second == 0) {
      return StandardCharsets.UTF_16LE;
    }
    return first == 0xFE && second == 0xFF || first == 0 && second != 0
        ? StandardCharsets.UTF_16BE
        : StandardCharsets.UTF_8;
  }

  /** What stands between the columns of the heading, the first line that is not blank. */
  public static char separator(String text) {
    String heading = text.lines().filter(line -> !stripped(line).isEmpty()).findFirst().orElse("");
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

  /**
   * The records of a CSV text, without those whose cells are all blank.
   *
   * @throws CsvParseException when it is no CSV
   */
  public static List<CsvRecord> records(String text, char separator) {
    return CsvReader.builder()
        .fieldSeparator(separator)
        .skipEmptyLines(true)
        .allowExtraFields(true)
        .allowMissingFields(true)
        .allowUnclosedQuote(false)
        .ofCsvRecord(text)
        .stream()
        .filter(record -> record.getFields().stream().anyMatch(f -> !stripped(f).isEmpty()))
        .toList();
  }

  /** Without blanks of any kind at its ends, those that do not break among them. */
  public static String stripped(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && isBlank(text.charAt(from))) {
      from++;
    }
    while (from < to && isBlank(text.charAt(to - 1))) {
      to--;
    }
    return text.substring(from, to);
  }

  private static boolean isBlank(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\ufeff';
  }
}
