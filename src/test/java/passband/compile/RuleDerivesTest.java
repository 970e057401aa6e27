package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Explanations;
import passband.diff.PlanDiff;
import passband.format.Formatter;
import passband.source.SourceFile;
import passband.testing.Examples;
import passband.testing.SameSheet;
import passband.testing.Snippet;

/** What a rule calculates, each test with the rule calculates as if the line stood there. */
class RuleDerivesTest {
  private static final String RULES =
      """
      rule rated "Rated" {
        accept power from output, read as current
      }

      rule wave "Wave" {
        derive crest "Crest factor" = peak-voltage / voltage, resolution 0.01
        accept crest from 1 to 2.5
      }
      """;
  private static final String APART =
      """
      test t "T" {
        outlet bip
        setup  bipolar
        accept power from output, read as current
        derive crest "Crest factor" = peak-voltage / voltage, resolution 0.01
        accept crest from 1 to 2.5
        table {
          mode | setting/W | load/ohm
          thin | 10, 20    | 100
        }
      }
      """;
  private static final String BY_LINES =
      APART
          .replace("accept power from output, read as current", "accept by rated")
          .replaceFirst("  derive.*\n", "")
          .replace("accept crest from 1 to 2.5", "accept by wave");
  private static final String BY_ONE =
      BY_LINES.replaceFirst("accept by rated\n *accept by wave", "accept by rated, wave");
  private static final String IN_A_CELL =
      """
      tests {
        outlet bip
        setup  bipolar
        table {
          test  | accept         | mode | setting/W | load/ohm
          t "T" | by rated, wave | thin | 10, 20    | 100
        }
      }
      """;

  private static Snippet with(String test, String rules) {
    String main = "use \"rules.pband\"\n" + Examples.framed("test", test);
    return Snippet.compile(
        Map.of("main.pband", main, "rules.pband", rules, "bench.pband", Explanations.bench()),
        "main.pband",
        null);
  }

  private static String errors(Snippet snippet) {
    return snippet.diagnostics().stream()
        .filter(d -> d.isError() && !d.code().id().endsWith("-untested"))
        .toList()
        .toString();
  }

  @Test
  void theMeaningIsThatOfTheLines() {
    Snippet apart = with(APART, RULES);
    assertEquals("[]", errors(apart));
    assertNotEquals(BY_LINES, BY_ONE);
    for (String other : new String[] {BY_LINES, BY_ONE, IN_A_CELL}) {
      Snippet by = with(other, RULES);
      assertEquals("[]", errors(by), other);
      SameSheet.assertSame(apart.plan(), by.plan());
    }
  }

  /** A changed calculation is a change of every procedure with the rule. */
  @Test
  void aChangedCalculationIsADifference() {
    Snippet one = with(BY_ONE, RULES);
    Snippet other = with(BY_ONE, RULES.replace("/ voltage,", "/ voltage + 0,"));
    assertFalse(
        PlanDiff.between(one.plans(), other.plans()).stream()
            .allMatch(diff -> diff.groups().isEmpty()));
  }

  @Test
  void aNameIsCalculatedOnce() {
    String twice =
        BY_ONE.replaceFirst("(  accept by)", "  derive crest = voltage, resolution 1 V\n$1");
    assertTrue(with(twice, RULES).codes().contains("duplicate-name"));
    assertFalse(with(BY_ONE, RULES).codes().contains("duplicate-name"));
  }

  /** Faults are said in the rule. */
  @ParameterizedTest
  @ValueSource(strings = {"peak-voltage / voltige", "peak-voltage + 1 W", "voltage / 0"})
  void faultsAreSaidInTheRule(String expression) {
    Snippet snippet = with(BY_ONE, RULES.replace("peak-voltage / voltage", expression));
    assertTrue(errors(snippet).contains("rules.pband"), snippet.report());
  }

  @Test
  void whatTheRuleDoesNotAcceptIsSaid() {
    Snippet snippet = with(BY_ONE, RULES.replace("  accept crest from 1 to 2.5\n", ""));
    assertTrue(snippet.codes().contains("unused-name"), snippet.report());
  }

  @Test
  void theLayoutIsTheOne() {
    assertEquals(RULES, Formatter.format(new SourceFile("r.pband", RULES), new Diagnostics()));
  }
}
