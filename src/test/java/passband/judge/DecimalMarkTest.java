package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.plan.Plan;
import passband.testing.Sheets;

/** What may be two numbers is never judged as one; what is one is, whoever wrote it. */
class DecimalMarkTest {
  private static Judgement judged(String language, String separator, String text) throws BadInput {
    ItemList list = list(language);
    Item.Reading item =
        list.items().stream()
            .filter(Item.Reading.class::isInstance)
            .map(Item.Reading.class::cast)
            .filter(reading -> reading.scale().unit().equals("mA"))
            .findFirst()
            .orElseThrow();
    String csv =
        String.join(separator, "point", "reading", "unit", "digest")
            + "\n"
            + String.join(separator, item.id(), '"' + text + '"', "A", list.source().digest())
            + "\n";
    Readings readings = Readings.parse(csv.getBytes(StandardCharsets.UTF_8));
    return Judge.judge(list, readings, null).judgements().stream()
        .filter(one -> one.item().id().equals(item.id()))
        .findFirst()
        .orElseThrow();
  }

  /** As the limits file says it. */
  private static ItemList list(String language) throws BadInput {
    Plan plan = language.equals("de") ? german() : Sheets.YARROW;
    ItemList list = LimitsReader.read(LimitsWriter.of(Evidence.of(plan).list()));
    assertEquals(language, list.source().language());
    return list;
  }

  private static Plan german() {
    return Sheets.demo().stream()
        .filter(plan -> plan.language().code().equals("de"))
        .findFirst()
        .orElseThrow();
  }

  /** Each text by what says that a comma is decimal: the language, the file, both or neither. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // text      | en ,     | en ;     | de ,      | de ;
        "12.3456     | 12345.6  | 12345.6  | 12345.6   | 12345.6",
        "1.2345      | 1234.5   | 1234.5   | 1234.5    | 1234.5",
        "1.234       | 1234     | 1234     | 1234      | ?",
        "12,3456     | ?        | 12345.6  | 12345.6   | 12345.6",
        "0,123       | ?        | 123      | 123       | 123",
        "0,12345     | ?        | 123.45   | 123.45    | 123.45",
        "1,234       | ?        | ?        | ?         | 1234",
        "123,456     | ?        | ?        | ?         | 123456",
        "1.234,5     | ?        | ?        | ?         | ?",
        "1,234,567   | ?        | ?        | ?         | ?",
        "1.234 ?     | ?        | ?        | ?         | ?",
        "1,2 ?       | ?        | ?        | ?         | ?",
      })
  void oneNumberOrNone(String text, String en, String enFile, String de, String deFile)
      throws BadInput {
    Map<List<String>, String> expected =
        Map.of(
            List.of("en", ","), en,
            List.of("en", ";"), enFile,
            List.of("de", ","), de,
            List.of("de", ";"), deFile);
    for (Map.Entry<List<String>, String> one : expected.entrySet()) {
      Judgement judged = judged(one.getKey().get(0), one.getKey().get(1), text);
      String where = text + " in " + one.getKey() + ": " + judged.causes();
      if (one.getValue().equals("?")) {
        assertEquals(Verdict.UNCLEAR, judged.verdict(), where);
        assertEquals(Cause.Code.DECIMAL_COMMA, judged.causes().get(0).code(), where);
      } else {
        assertEquals(List.of(one.getValue()), plain(judged), where);
      }
    }
  }

  /** In the item's unit, without zeros at the end. */
  private static List<String> plain(Judgement judged) {
    return judged.attempts().stream()
        .map(text -> new BigDecimal(text).stripTrailingZeros().toPlainString())
        .toList();
  }
}
