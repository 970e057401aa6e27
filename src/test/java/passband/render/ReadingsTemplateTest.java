package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Judge;
import passband.judge.ReadingColumn;
import passband.judge.Readings;
import passband.judge.Verdict;
import passband.plan.Plan;
import passband.testing.GeneratedProcedures;
import passband.testing.Records;
import passband.testing.Sheets;
import passband.words.Language;

/** The empty table of readings has every item once; typed in completely it passes, else never. */
class ReadingsTemplateTest {
  private static final int GENERATED = 20;
  private static final String EMPTY = "";
  private static final int WRITE = 6;

  static Stream<Arguments> lists() {
    return Stream.concat(
            Sheets.demo().stream(),
            LongStream.range(0, GENERATED).mapToObj(GeneratedProcedures::plan))
        .map(plan -> Evidence.of(plan).list())
        .flatMap(list -> Stream.of(Arguments.of(list, false), Arguments.of(list, true)));
  }

  private static List<CsvRecord> table(ItemList list) {
    return CsvReader.builder().ofCsvRecord(ReadingsTemplate.of(list)).stream().toList();
  }

  @ParameterizedTest
  @MethodSource("lists")
  void everyItemThatIsWrittenStandsOnceInOrder(ItemList list, boolean adjusted) {
    List<CsvRecord> table = table(list);
    int point = table.get(0).getFields().indexOf("point");
    assertEquals(
        list.items().stream().filter(i -> !(i instanceof Item.Derived)).map(Item::id).toList(),
        table.stream().skip(1).map(row -> row.getField(point)).toList());
  }

  /** The table with good readings typed in, but for one line, by its place in the table. */
  private static Verdict judged(ItemList list, Map<String, String> readings, int left)
      throws BadInput, IOException {
    List<CsvRecord> table = table(list);
    List<String> heading = table.get(0).getFields();
    StringWriter typed = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().build(typed)) {
      csv.writeRecord(heading);
      for (int i = 1; i < table.size(); i++) {
        String[] cells = table.get(i).getFields().toArray(String[]::new);
        String id = cells[heading.indexOf("point")];
        cells[heading.indexOf("reading")] = i == left ? EMPTY : readings.getOrDefault(id, EMPTY);
        csv.writeRecord(cells);
      }
    }
    Readings read = Readings.parse(typed.toString().getBytes(StandardCharsets.UTF_8));
    return Judge.judge(list, read, null).overall();
  }

  @ParameterizedTest
  @MethodSource("lists")
  void typedInCompletelyItPassesAndWithAnyLineLeftEmptyNever(ItemList list, boolean adjusted)
      throws BadInput, IOException {
    Map<String, String> readings = new HashMap<>();
    Records.of(list, adjusted).readings().rows().forEach(r -> readings.put(r.point(), r.reading()));
    assertEquals(Verdict.PASS, judged(list, readings, 0));
    assertEquals(Verdict.INCOMPLETE, judged(list, Map.of(), 0));
    List<CsvRecord> table = table(list);
    int point = table.get(0).getFields().indexOf("point");
    for (int line = 1; line < table.size(); line++) {
      String id = table.get(line).getField(point);
      if (readings.containsKey(id)) {
        assertNotEquals(Verdict.PASS, judged(list, readings, line), id);
      }
    }
  }

  /** What may be written is said in the sheet's language; headings and kinds are those of all. */
  /** Nobody has to know of a column to use it. */
  @Test
  void everyColumnThatIsReadIsInTheTable() {
    List<String> heading = table(Evidence.of(Sheets.YARROW).list()).get(0).getFields();
    for (ReadingColumn.Use use : List.of(ReadingColumn.Use.NEEDED, ReadingColumn.Use.READ)) {
      for (ReadingColumn column : ReadingColumn.of(use)) {
        assertTrue(heading.contains(column.word()), column.word());
      }
    }
  }

  @Test
  void aGermanTableIsInGerman() {
    Set<String> english = new HashSet<>();
    List<CsvRecord> german = new ArrayList<>();
    for (Plan plan : Sheets.demo()) {
      List<CsvRecord> table = table(Evidence.of(plan).list());
      boolean own = plan.language().code().equals("de");
      for (CsvRecord row : table.subList(1, table.size())) {
        if (own) {
          german.add(row);
        } else {
          english.add(row.getField(WRITE));
        }
      }
      assertEquals("write", table.get(0).getField(WRITE));
    }
    assertTrue(!german.isEmpty() && english.size() > 3, english::toString);
    german.forEach(row -> assertFalse(english.contains(row.getField(WRITE)), row::toString));
  }

  /** The table is in the sheet's language; one in English, as older ones are, is read as well. */
  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void limitsAndNumbersAreInTheLanguageOfTheSheet(String code) {
    Language language = Language.orEnglish(code);
    int other = 0;
    for (Plan plan : Sheets.demo()) {
      ItemList english = Evidence.of(plan).list();
      for (Item item : english.items()) {
        for (ReadingColumn column : ReadingColumn.of(ReadingColumn.Use.COMPARED)) {
          String own = column.texts(item, language).get(0);
          assertFalse(Pattern.compile("\\d\\.\\d| to |at most|at least").matcher(own).find(), own);
          other += column.texts(item, language).size() - 1;
        }
      }
    }
    assertTrue(other > 100, other + " texts");
  }
}
