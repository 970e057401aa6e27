package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.diagnostic.Explanations;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.testing.GeneratedProcedures;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * Advice that is followed changes the answer: the lines that are proposed for a fault, put into the
 * source where they are said to stand, compile, and the fault is caught; a generator that is right
 * in every reading fails no more often.
 */
class AdviceLawTest {
  private static final int PROCEDURES = Integer.getInteger("advice.procedures", 40);

  private static Map<String, String> sources(String name) {
    Map<String, String> sources = new TreeMap<>();
    if (name.contains("/")) {
      sources.putAll(Repository.texts(Repository.PROCEDURES));
      return sources;
    }
    for (String file : List.of("bench.pband", "keen.pband", "thin.pband", "worked.pband")) {
      sources.put(file, CatalogueTest.text(file));
    }
    return sources;
  }

  /** The text with the lines where they are said to stand. */
  static String followed(Plan plan, String source, Proposal proposal) {
    if (!proposal.inside()) {
      for (Stage.Run run : plan.runs()) {
        if (run.test().text().equals(proposal.test())) {
          int end = Blocks.end(plan, run.tree().span());
          String lines = "\n" + String.join("\n", proposal.lines()) + "\n";
          return source.substring(0, end) + lines + source.substring(end);
        }
      }
    }
    List<String> text = new ArrayList<>(List.of(source.split("\n", -1)));
    int test = -1;
    for (int i = 0; i < text.size(); i++) {
      boolean opens = text.get(i).strip().startsWith("test " + proposal.test() + " ");
      test = opens ? i : test;
    }
    assertTrue(test >= 0, proposal.test());
    text.addAll(test + 1, proposal.lines());
    return String.join("\n", text);
  }

  private static Snippet compiled(Map<String, String> sources, String main, String text) {
    Map<String, String> changed = new TreeMap<>(sources);
    changed.put(main, text);
    return Snippet.compile(changed, main, null);
  }

  private static List<String> errors(Snippet snippet) {
    return snippet.diagnostics().stream()
        .filter(d -> d.isError())
        .map(d -> d.code().id())
        .filter(code -> !code.equals("setting-untested")) // more of a range is asked once it begins
        .distinct()
        .sorted()
        .toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "keen",
        "worked",
        "thin",
        "campion-2/campion-2-energy.pband",
        "tussock-4/tussock-4-output.pband",
        "fescue-3/fescue-3-service.pband",
        "quecke-2/quecke-2-ausgang.pband",
        "sedge-170/sedge-170-full.pband"
      })
  void adviceThatIsFollowedCatchesTheFault(String name) {
    String main = name.contains("/") ? name : name + ".pband";
    assertNotEquals(0, followed(sources(name), main), "no advice");
  }

  /** The same of procedures made at random: {@code -Dadvice.procedures=200} for more. */
  @Test
  void adviceForGeneratedProceduresCatchesTheFault() {
    Map<String, String> sources = new TreeMap<>(Map.of("bench.pband", Explanations.bench()));
    int advised = 0;
    Map<Integer, String> wrong = new TreeMap<>();
    for (int seed = 0; seed < PROCEDURES; seed++) {
      sources.put("made.pband", GeneratedProcedures.text(seed));
      try {
        advised += followed(sources, "made.pband");
      } catch (AssertionError e) {
        wrong.put(seed, e.getMessage());
      }
    }
    assertEquals(Map.of(), wrong);
    assertTrue(advised > PROCEDURES, advised + " of " + PROCEDURES);
  }

  /**
   * What is said of a table of tests holds: a rule in the cell 'accept', and a test by itself
   * inside the same 'tests' with its ticks, compile, and catch what the row lets through.
   */
  @Test
  void adviceForATableOfTestsCatchesTheFault() {
    String thin = CatalogueTest.text("thin.pband");
    String head = thin.substring(0, thin.indexOf("  test output"));
    String rules =
        """
        rule watts "Power" {
          accept power within 5 W of setting, read as current
        }
        rule ohms "Load" {
          derive dialled "Load, from voltage and current" = voltage / current, resolution 1 ohm
          accept dialled within 5 % of load
        }
        rule peak "Peak" {
          accept peak-voltage from device
        }
        """;
    String row =
        """
          tests {
            outlet one
            setup loaded
            table {
              test             | mode | setting/W | load/ohm | accept
              output "Output"  | soft | 10        | 200      | by watts
            }
          }
        }
        """;
    String itself =
        """
          tests {
            outlet one
            setup loaded
            test output "Output" {
              accept by watts
              table {
                mode | setting/W | load/ohm
                soft | 10        | 200
              }
              before {
                confirm wiring "Every lead and link is where the drawing has it."
                confirm range "The instrument's range is automatic."
              }
              each {
                confirm "The load is set to {load}."
              }
            }
          }
        }
        """;
    String start = head.replace("procedure pavo", rules + "procedure pavo");
    Map<String, Outcome> was = worst(start + row);
    Map<String, Outcome> cell = worst(start + row.replace("by watts", "by watts, ohms, peak"));
    Map<String, Outcome> ticked = worst(start + itself);
    for (String fault : List.of("B01", "B02", "G20")) {
      assertNotEquals(Outcome.CAUGHT, was.get(fault), fault);
      assertEquals(Outcome.CAUGHT, cell.get(fault), fault);
    }
    for (String fault : List.of("B01", "B02", "B10")) {
      assertNotEquals(Outcome.CAUGHT, was.get(fault), fault);
      assertEquals(Outcome.CAUGHT, ticked.get(fault), fault);
    }
  }

  private static Map<String, Outcome> worst(String text) {
    Snippet snippet = compiled(sources("thin"), "thin.pband", text);
    Map<String, Outcome> worst = new TreeMap<>();
    Detection.asItIs(snippet.plans().get(0))
        .worst()
        .forEach((fault, finding) -> worst.put(fault.id(), finding.outcome()));
    return worst;
  }

  /** How many different lines are advised. */
  private static int followed(Map<String, String> sources, String main) {
    Snippet before = compiled(sources, main, sources.get(main));
    Plan plan = before.plans().get(0);
    Detection was = Detection.of(plan);
    double seconds = new StepTimes(plan).total();
    Map<List<String>, List<Detection.Finding>> advised = new LinkedHashMap<>();
    for (Detection.Finding finding : was.findings()) {
      if (finding.proposal() != null) {
        Proposal proposal = finding.proposal();
        List<String> key = new ArrayList<>(proposal.lines());
        key.add(proposal.test());
        advised.computeIfAbsent(key, k -> new ArrayList<>()).add(finding);
      }
    }
    for (List<Detection.Finding> findings : advised.values()) {
      Proposal proposal = findings.get(0).proposal();
      Snippet after = compiled(sources, main, followed(plan, sources.get(main), proposal));
      assertEquals(errors(before), errors(after), proposal + "\n" + after.report());
      Plan now = after.plans().get(0);
      Map<String, Outcome> outcomes = new TreeMap<>();
      Detection is = Detection.asItIs(now);
      assertTrue(nominal(is) <= nominal(was), "a perfect generator fails by " + proposal);
      for (Detection.Finding one : is.findings()) {
        outcomes.put(key(one), one.outcome());
      }
      List<String> uncaught = new ArrayList<>();
      for (Detection.Finding one : findings) {
        Outcome outcome = outcomes.getOrDefault(key(one), Outcome.CAUGHT);
        if (outcome != Outcome.CAUGHT) {
          uncaught.add(key(one) + " " + outcome);
        }
      }
      assertEquals(List.of(), uncaught, proposal.toString());
      double more = new StepTimes(now).total() - seconds;
      assertEquals(more, proposal.seconds(), 1, proposal.toString());
    }
    return advised.size();
  }

  /** How often a generator fails that is right in every reading. */
  private static double nominal(Detection detection) {
    return detection.falseFails().get(0).high().value();
  }

  private static String key(Detection.Finding one) {
    return one.fault().id() + one.size().text() + " " + one.where();
  }
}
