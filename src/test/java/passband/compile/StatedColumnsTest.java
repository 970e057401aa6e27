package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Several columns of stated limits in one table: each row's own limits for each quantity. */
class StatedColumnsTest {
  private static Snippet compiled(String accepts, String heading, String... rows) {
    return Examples.compile(
        """
        use "bench.pband"
        procedure example "Example" {
          revision "A" on 2026-01-31
          device gen
          analyzer meter
          leads set
          caution burn "Output burns."
          setup bipolar "Bipolar" {
            connect red   from outlet.left   to analyzer.high
            connect black from outlet.right  to analyzer.low
            connect grey  from outlet.switch to analyzer.key
          }
          test t "T" {
            outlet bip
            setup  bipolar
            %s
            table {
              %s
              %s
            }
          }
        }
        """
            .formatted(accepts, heading, String.join("\n      ", rows))
            .getBytes(StandardCharsets.UTF_8));
  }

  /** The limits of each point, as printed. */
  private static List<List<String>> printed(Snippet snippet) {
    assertTrue(
        snippet.diagnostics().stream().noneMatch(d -> d.isError() && !d.code().allowable()),
        snippet.report());
    Plan plan = snippet.plans().get(0);
    List<List<String>> points = new ArrayList<>();
    for (Point point : plan.points()) {
      points.add(point.limits().stream().map(StatedColumnsTest::words).toList());
    }
    return points;
  }

  private static String words(Limit limit) {
    return limit.quantity() + " " + limit.words(limit.printed());
  }

  private static final String BOTH = "accept current from stated\n    accept voltage from stated";
  private static final String NAMED = "mode | setting | load/ohm | stated current/mA | ";

  @Test
  void eachQuantityHasTheLimitsOfItsColumn() {
    Snippet snippet =
        compiled(
            BOTH,
            NAMED + "stated voltage/V",
            "tack | 1 | 50 | 310 to 400 | 15.5 to 20",
            "tack | 2 | 50 | 410 to 500 | 20.5 to 25");
    assertEquals(
        List.of(
            List.of("current 310 to 400 mA", "voltage 15.5 to 20.0 V"),
            List.of("current 410 to 500 mA", "voltage 20.5 to 25.0 V")),
        printed(snippet));
  }

  @Test
  void theUnitsOfTheHeadingsTellThemApart() {
    Snippet snippet =
        compiled(
            BOTH,
            "mode | setting | load/ohm | stated/V | stated/mA",
            "tack | 1 | 50 | 15.5 to 20 | 310 to 400");
    assertEquals(
        List.of(List.of("current 310 to 400 mA", "voltage 15.5 to 20.0 V")), printed(snippet));
  }

  @Test
  void aBlankCellLeavesTheRuleAlone() {
    Snippet snippet =
        compiled(
            "accept current from 300 mA to 600 mA\n    accept voltage from 15 V to 30 V",
            NAMED + "stated voltage/V",
            "tack | 1 | 50 | 310 to 400 |",
            "tack | 2 | 50 |            | 20.5 to 25");
    assertEquals(
        List.of(
            List.of("current 310 to 400 mA", "voltage 15.0 to 30.0 V"),
            List.of("current 300 to 600 mA", "voltage 20.5 to 25.0 V")),
        printed(snippet));
  }

  @Test
  void aBlankCellIsAFaultWhereNothingElseGivesALimit() {
    Snippet snippet = compiled(BOTH, NAMED + "stated voltage/V", "tack | 1 | 50 | 310 to 400 |");
    assertTrue(snippet.codes().contains("stated-missing"), snippet.report());
    assertTrue(
        snippet.report().contains("this row has no stated limits for voltage"), snippet.report());
  }

  @Test
  void twoColumnsForOneQuantityAreAFault() {
    Snippet snippet =
        compiled(
            "accept current from stated",
            "mode | setting | load/ohm | stated current/mA | stated/A",
            "tack | 1 | 50 | 310 to 400 | 0.3 to 0.41");
    assertTrue(
        snippet.report().contains("another column already states limits for current"),
        snippet.report());
  }

  /**
   * P = I²R (Joule's law; OpenStax College Physics 2e, 20.4): 32 W in 50 ohm is 800 mA, 18 W is 600
   * mA.
   */
  @Test
  void limitsOfThePowerAndOfTheCurrentThatIsReadBothCount() {
    Snippet snippet =
        compiled(
            "accept power from stated, read as current",
            NAMED + "stated power/W",
            "tack | 1 | 50 | 590 to 790 | 18 to 40",
            "tack | 2 | 50 | 610 to 900 | 18 to 32");
    assertEquals(
        List.of(List.of("current 600 to 790 mA"), List.of("current 610 to 800 mA")),
        printed(snippet));
  }

  /**
   * 20 W within 15 % in 100 ohm: 17 W to 23 W, 412.4 mA to 479.5 mA, 41.24 V to 47.95 V. A slip in
   * any of the four ends is said, though the other column is right.
   */
  @Test
  void anEndLooserThanTheModeIsSaidInWhicheverColumnItStands() {
    List<String> right = List.of("413", "479", "41.3", "47.9");
    List<String> wrong = List.of("113", "979", "11.3", "97.9");
    for (int slip = -1; slip < right.size(); slip++) {
      List<String> ends = new ArrayList<>(right);
      if (slip >= 0) {
        ends.set(slip, wrong.get(slip));
      }
      String stated = "%s to %s | %s to %s".formatted(ends.toArray());
      String amounts =
          "accept current from %s mA to %s mA\n    accept voltage from %s V to %s V"
              .formatted(ends.toArray());
      Snippet columns = compiled(BOTH, NAMED + "stated voltage/V", "thin | 20 W | 100 | " + stated);
      Snippet rules = compiled(amounts, "mode | setting | load/ohm", "thin | 20 W | 100");
      assertEquals(slip >= 0, columns.codes().contains("stated-looser"), columns.report());
      assertEquals(slip >= 0, rules.codes().contains("rule-looser-than-mode"), rules.report());
    }
  }

  @Test
  void aStatedLowerLimitBelowZeroIsSaidAndIsNoRootOfANegative() {
    Snippet snippet =
        compiled(
            "accept power from stated, read as current",
            "mode | setting | load/ohm | stated/W",
            "tack | 1 | 50 | -1 to 32");
    assertTrue(snippet.codes().contains("limit-below-zero"), snippet.report());
    assertEquals(List.of(List.of("current at most 800 mA")), printed(snippet));
  }
}
