package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.judge.Judge;
import passband.judge.Readings;
import passband.judge.Verdict;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.render.ReadingsTemplate;
import passband.testing.Examples;
import passband.testing.Snippet;

/**
 * The limits of a recorded value are written with its unit or one that converts: never a number
 * that is taken for a hundred times as much.
 */
class RecordedLimitUnitsTest {
  /** # stands where a unit goes. */
  private static final List<String> FORMS =
      List.of(
          "from 3# to 8#",
          "from 3# to 2 * 4#",
          "at least 3#",
          "at most 8#",
          "at most 2 * 4#",
          "at most max(3#, 8#)",
          "within 5 % of 50#");

  private static Snippet compiled(String record) {
    return Examples.compile(
        """
        use "bench.pband"
        procedure example "Example" {
          revision "A" on 2026-01-31
          device gen
          analyzer meter
          leads set
          caution burn "Output burns."
          section before "Before" {
            %s
          }
          setup bipolar "Bipolar" {
            connect red   from outlet.left   to analyzer.high
            connect black from outlet.right  to analyzer.low
            connect grey  from outlet.switch to analyzer.key
          }
          test t "T" {
            outlet bip
            setup  bipolar
            accept power from output, read as current
            table {
              mode | setting/W | load/ohm
              thin | 20        | 100
            }
          }
        }
        """
            .formatted(record)
            .getBytes(StandardCharsets.UTF_8));
  }

  private static boolean fits(String record, String said) {
    Snippet snippet = compiled(record);
    List<String> codes = snippet.codes();
    boolean clean = !codes.contains("missing-unit") && !codes.contains("unit-mismatch");
    assertTrue(clean || snippet.report().contains(said), snippet.report());
    return clean;
  }

  @Test
  void aLimitHasTheUnitOfWhatIsRecorded() {
    for (Unit unit : Units.all()) {
      String symbol = unit.symbol();
      String record = "record x \"X\"" + (symbol.isEmpty() ? "" : " in " + symbol) + " ";
      for (String form : FORMS) {
        assertTrue(fits(record + form.replace("#", " " + symbol), "unit"), record + form);
        String bare = form.replace("#", "");
        assertEquals(symbol.isEmpty(), fits(record + bare, "recorded in " + symbol), record + bare);
      }
    }
  }

  @Test
  void aPlainNumberHasNoLimitInPercent() {
    for (String form : FORMS) {
      String percent = "record x \"X\" " + form.replace("#", " %");
      assertEquals(false, fits(percent, "x is a plain number, but this is a percentage"), percent);
    }
  }

  /** Of every unit and of a plain number, what is written reads back, and a limit is one. */
  @Test
  void whatIsWrittenOfALimitReadsBackAndHolds() throws BadInput {
    for (Unit unit : Units.all()) {
      heldTo(unit.symbol());
    }
    heldTo("");
  }

  private static void heldTo(String unit) throws BadInput {
    String in = unit.isEmpty() ? "" : " in " + unit;
    String limit = " from 3# to 8#".replace("#", unit.isEmpty() ? "" : " " + unit);
    Snippet snippet = compiled("record x \"X\"" + in + limit);
    ItemList list = Evidence.of(snippet.plans().get(0)).list();
    assertEquals(list, LimitsReader.read(LimitsWriter.of(list)), unit);
    String ucum = unit.isEmpty() ? "" : Units.of(unit).ucum();
    assertTrue(ReadingsTemplate.of(list).contains(",number,," + ucum + ",1,record,"), ucum);
    for (String value : List.of("2", "3", "8", "9")) {
      boolean inside = value.equals("3") || value.equals("8");
      Readings.Row row = new Readings.Row("before/x", value, ucum, "", "1", "record", 2);
      Readings readings = new Readings(list.source().digest(), List.of(row));
      Verdict verdict =
          Judge.judge(list, readings, null).judgements().stream()
              .filter(judgement -> judgement.item().id().equals("before/x"))
              .findFirst()
              .orElseThrow()
              .verdict();
      assertEquals(inside ? Verdict.PASS : Verdict.FAIL, verdict, value + " " + unit);
    }
  }
}
