package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Explanations;
import passband.plan.Plan;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Limits of an outlet and of the generator: the nearest holds, in every test. */
class BoundsTest {
  private static final String TEST =
      """
        test t "T" {
          outlet bip
          setup  bipolar
          accept power from output, read as current
          accept peak-voltage LIMIT
          table {
            mode | setting/W | load/ohm
            thin | 20        | 100
          }
        }
      """;

  private static Snippet with(String device, String outlet, String mode, String limit) {
    String bench =
        Explanations.bench()
            .replace("device gen \"Gen\" {\n", "device gen \"Gen\" {\n" + device + "\n")
            .replace("outlet bip \"Bipolar\" {\n", "outlet bip \"Bipolar\" {\n" + outlet + "\n")
            .replaceFirst(
                "peak-voltage at most 250 V",
                mode.isEmpty() ? "peak-voltage unknown because \"Not stated.\"" : mode);
    String main = Examples.framed("test", TEST.replace("LIMIT", limit));
    return Snippet.compile(Map.of("main.pband", main, "bench.pband", bench), "main.pband", null);
  }

  private static List<String> said(Snippet snippet) {
    return snippet.diagnostics().stream()
        .map(d -> d.code().id())
        .filter(code -> !code.endsWith("-untested"))
        .toList();
  }

  private static Plan plan(Snippet snippet) {
    assertEquals(List.of(), said(snippet), snippet::report);
    return snippet.plan();
  }

  private static String upper(Plan plan) {
    return plan.limits().stream()
        .filter(l -> l.quantity().equals("peak-voltage"))
        .map(l -> l.end(l.printed().upper()))
        .findFirst()
        .orElseThrow();
  }

  /** Of the mode, the outlet and the generator the nearest that says something. */
  @ParameterizedTest
  @CsvSource({
    "400, 300, 200, 200",
    "200, 300, 400, 400",
    "400, 300, '', 300",
    "200, 300, '', 300",
    "400, '', '', 400",
    "400, '', 200, 200"
  })
  void theNearestHolds(String device, String outlet, String mode, String expected) {
    Plan plan = plan(with(line(device), line(outlet), line(mode), "from device"));
    assertEquals(expected, upper(plan));
  }

  private static String line(String volts) {
    return volts.isEmpty() ? "" : "peak-voltage at most " + volts + " V";
  }

  /** Without any of them there is nothing to take. */
  @Test
  void whereNobodySaysAnythingThatIsSaid() {
    Snippet none = with("", "", "", "from device");
    assertTrue(said(none).contains("missing-item"), none.report());
  }

  /** A rule of a test may not allow more than what holds in every test; less is told. */
  @ParameterizedTest
  @CsvSource({
    "400, 300, at most 310 V, rule-looser-than-mode",
    "400, '', at most 410 V, rule-looser-than-mode",
    "400, 300, at least 200 V, rule-looser-than-mode",
    "400, 300, at most 290 V, rule-tighter-than-mode",
    "200, 300, at most 300 V, ''",
    "400, 300, from 100 V to 300 V, ''"
  })
  void aRuleIsHeldAgainstIt(String device, String outlet, String limit, String code) {
    Snippet snippet = with(line(device), line(outlet), "", limit);
    assertEquals(code.isEmpty() ? List.of() : List.of(code), said(snippet), snippet::report);
  }

  /** What is written there is a figure, of a quantity that there is, once. */
  @ParameterizedTest
  @CsvSource({
    "peak-volts at most 300 V, unknown-quantity",
    "peak-voltage at most 300 mA, unit-mismatch",
    "peak-voltage at most 2 * setting, unknown-name",
    "peak-voltage from stated, wrong-kind",
    "peak-voltage from device, missing-item",
    "peak-voltage from output, missing-item"
  })
  void itIsAFigureOfAQuantity(String line, String code) {
    for (Snippet snippet :
        List.of(
            with(line, "", "peak-voltage at most 250 V", "at most 250 V"),
            with("", line, "peak-voltage at most 250 V", "at most 250 V"))) {
      assertTrue(said(snippet).contains(code), snippet::report);
    }
  }

  @Test
  void ofOneQuantityThereIsOneLine() {
    String twice = line("300") + "\n" + line("310");
    assertTrue(said(with(twice, "", "", "from device")).contains("repeated-item"));
    assertTrue(said(with("", twice, "", "from device")).contains("repeated-item"));
  }

  /** A change of it is told and makes another digest. */
  @Test
  void aChangeOfItIsOfMeaning() {
    for (boolean outlet : new boolean[] {false, true}) {
      Plan was =
          plan(with(line(outlet ? "" : "300"), line(outlet ? "300" : ""), "", "from device"));
      Plan now =
          plan(with(line(outlet ? "" : "310"), line(outlet ? "310" : ""), "", "from device"));
      assertTrue(!was.digest().equals(now.digest()));
    }
  }
}
