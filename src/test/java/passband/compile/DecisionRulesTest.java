package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Diagnostic;
import passband.evidence.Evidence;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.quantity.Rational;
import passband.render.JudgeReport;
import passband.testing.Repository;
import passband.testing.Snippet;
import passband.words.Language;

/** The decision rules beside each other, on one procedure. */
class DecisionRulesTest {
  private static Snippet with(String rule) {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.LIBRARY));
    files.replaceAll(
        (name, text) ->
            text.replaceAll("(?m)^  decision guarded.*$", "  decision " + rule)
                .replace("1 % of reading + 1 mA", "3 % of reading + 1 mA"));
    return Snippet.compile(files, "yarrow/yarrow-service.pband", null);
  }

  private static List<Limit> limits(String rule) {
    return with(rule).plan().limits();
  }

  /** The managed guard band is never wider than U and never narrower than none. */
  @Test
  void managedLiesBetweenSimpleAndGuarded() {
    List<Limit> simple = limits("simple");
    List<Limit> managed = limits("managed");
    List<Limit> guarded = limits("guarded");
    int between = 0;
    for (int i = 0; i < simple.size(); i++) {
      Limit.Rounded least = guarded.get(i).accept();
      Limit.Rounded mid = managed.get(i).accept();
      Limit.Rounded most = simple.get(i).accept();
      assertTrue(ordered(most.lower(), mid.lower(), least.lower()), simple.get(i).id());
      assertTrue(ordered(least.upper(), mid.upper(), most.upper()), simple.get(i).id());
      between += mid.equals(most) || mid.equals(least) ? 0 : 1;
    }
    assertTrue(between > 5, String.valueOf(between));
  }

  private static boolean ordered(Rational low, Rational mid, Rational high) {
    return low == null || low.compareTo(mid) <= 0 && mid.compareTo(high) <= 0;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "managed coverage 2.5 | impossible-expression | the managed guard band is made",
        "guarded prior 100 % | wrong-kind | the share in tolerance must be above 0 %",
        "guarded prior 0 % | wrong-kind | the share in tolerance must be above 0 %"
      })
  void whatCannotBeMeantIsAnError(String rule, String code, String message) {
    Snippet snippet = with(rule);
    List<Diagnostic> found =
        snippet.diagnostics().stream().filter(d -> d.code().id().equals(code)).toList();
    assertEquals(1, found.size(), snippet.report());
    assertTrue(found.get(0).message().startsWith(message), found.get(0).message());
  }

  /** The prior moves no limit; it is part of the meaning, of the file, and said with its risks. */
  @Test
  void thePriorIsSaidWithItsRisks() throws Exception {
    Plan none = with("guarded").plan();
    Plan prior = with("guarded prior 95 %").plan();
    assertEquals(
        none.limits().stream().map(Limit::accept).toList(),
        prior.limits().stream().map(Limit::accept).toList());
    assertNotEquals(none.digest(), prior.digest());
    String file = LimitsWriter.of(Evidence.of(prior).list());
    String rule = JudgeReport.rule(LimitsReader.read(file), Language.ENGLISH);
    assertTrue(
        rule.matches(
            "(?s).*; with 95 % in tolerance before the test a generator that does not conform is"
                + " accepted with a probability of at most [0-9.]+ %.*"),
        rule);
    String silent = JudgeReport.rule(Evidence.of(none).list(), Language.ENGLISH);
    assertTrue(!silent.contains("before the test"), silent);
  }
}
