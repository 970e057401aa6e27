package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import passband.quantity.Unit;
import passband.quantity.Units;
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
}
