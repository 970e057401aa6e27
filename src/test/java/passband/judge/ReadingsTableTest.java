package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.testing.ReadingsFiles;

/** Tables of readings: which are read, which refused, and why. */
class ReadingsTableTest {
  private static final Map<String, byte[]> FILES = ReadingsFiles.all();

  private static Readings read(String name) throws BadInput {
    return Readings.parse(FILES.get(name));
  }

  private static String refused(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return assertThrows(BadInput.class, () -> Readings.parse(bytes)).getMessage();
  }

  /** Whatever stands between the cells and however the letters are coded, it is the same table. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "semicolons",
        "tabs",
        "crlf",
        "cr",
        "no line end",
        "utf-8 with a mark",
        "UTF-16LE",
        "UTF-16BE",
        "UTF-16LE without a mark",
        "UTF-16BE without a mark",
        "UTF-16LE with tabs",
        "UTF-16BE with tabs"
      })
  void theSameTableIsReadInEveryForm(String name) throws BadInput {
    assertEquals(read("commas").rows(), read(name).rows());
    assertEquals(name.equals("semicolons"), read(name).semicolons());
    assertEquals("\u00b5 \u03a9 \u2265", read(name).rows().get(1).reading());
    assertEquals("11", read(name).digest());
  }

  /** Every column that there is can stand in a table, in any place. */
  @ParameterizedTest
  @EnumSource(ReadingColumn.class)
  void everyColumnOfTheTableIsKnownByItsExactNameOnly(ReadingColumn column) throws BadInput {
    String word = column.word();
    List<String> others =
        Stream.of("point", "reading", "unit").filter(c -> !c.equals(word)).toList();
    String rest = String.join(",", others);
    String blanks = ",".repeat(others.size());
    String empty = word + "," + rest + "\n" + blanks + "\n";
    assertEquals(List.of(), Readings.parse(empty.getBytes(StandardCharsets.UTF_8)).rows());
    for (String wrong :
        List.of(
            word.toUpperCase(Locale.ROOT),
            word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1),
            word + "s",
            word.substring(1),
            word.replace(word.charAt(1), '-'))) {
      assertTrue(refused(wrong + "," + empty).startsWith("unknown column '" + wrong + "'"), wrong);
    }
    assertEquals("the column '" + word + "' stands twice", refused(word + "," + empty));
  }

  /** What is refused says which column or line it is. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "column attemt|unknown column 'attemt' (the columns are: point, reading, unit, phase,",
        "column constructor|unknown column 'constructor' (the columns are: point",
        "separator line of a spreadsheet|unknown column 'sep='",
        "no heading|unknown column 'a/b'",
        "without unit|there is no column 'unit'",
        "twice digest|the column 'digest' stands twice",
        "nameless column with contents|column 5 has no heading, but line 2 has something in it",
        "too few cells|line 4 has 3 cells, the heading has 7",
        "too many cells|line 4 has 8 cells, the heading has 7",
        "decimal comma|line 2 has 8 cells, the heading has 7",
        "mixed|line 2 has 1 cells, the heading has 7",
        "reading without a point|line 4 has a reading but no point",
        "kind Reading|line 2: unknown kind 'Reading'",
        "line breaks in cells|line 6: unknown kind 'guess'",
        "unclosed quote|this is not a CSV file",
        "unclosed quote at the end|this is not a CSV file",
        "text after a quote|this is not a CSV file",
        "empty|this file is empty",
        "only blanks|this file is empty",
        "only a mark|this file is empty",
        "latin 1|this is not UTF-8 text",
        "UTF-16LE cut off|this is not UTF-16LE text",
        "two digests|the rows carry 2 different digests",
        "some without a digest|some rows carry a digest and others do not"
      })
  void whatIsRefusedIsLocated(String name, String message) {
    String said = assertThrows(BadInput.class, () -> read(name)).getMessage();
    assertTrue(said.startsWith(message), said);
  }

  @Test
  void rowsThatSayNothingAreLeftOut() throws BadInput {
    assertEquals(2, read("row without a point or reading").rows().size());
    assertEquals(
        read("commas").rows().stream().map(Readings.Row::point).toList(),
        read("blank lines").rows().stream().map(Readings.Row::point).toList());
    assertEquals(1, read("nameless column, blank").rows().size());
  }

  @Test
  void cellsAreReadAsTheyWereMeant() throws BadInput {
    assertEquals("1, \"2\"\n3", read("quotes").rows().get(0).reading());
    assertEquals(4, read("quotes").rows().get(1).line());
    assertEquals("5\" plug", read("quote inside").rows().get(0).reading());
    assertEquals(
        List.of("-x", "'-x", "'5"),
        read("apostrophes").rows().stream().map(Readings.Row::reading).toList());
    Readings.Row row = read("blanks of many kinds").rows().get(0);
    assertEquals(
        List.of("a/b", "1", "V", ""), List.of(row.point(), row.reading(), row.unit(), row.phase()));
    Readings.Row whole = read("every column").rows().get(0);
    assertEquals("380 to 420 mA", whole.said().get(ReadingColumn.LIMITS));
    assertEquals(6, whole.said().size());
  }
}
