package passband.detect;

import java.util.List;
import passband.plan.Plan;
import passband.plan.Stage;

/**
 * Tests that are rows of a table of tests. Such a row has a cell for what is accepted, and no place
 * for steps.
 */
final class TableTests {
  private final Plan plan;

  TableTests(Plan plan) {
    this.plan = plan;
  }

  /** Where lines against a fault go in such tests; empty where there are none. */
  String of(Fault fault) {
    boolean leads = fault.effect().startsWith("lead-") || fault.effect().startsWith("link-");
    String name = first(leads);
    String row = "a row of a table of tests, such as " + name + ",";
    String rule = " takes a rule in its cell 'accept', beside others: by NAME, NAME";
    String itself = "write it by itself inside the same 'tests'";
    return name.isEmpty()
        ? ""
        : switch (fault.effect()) {
          case "load-step", "load-before" -> row + rule + "; for a tick " + itself;
          case "setting-before",
              "mode-before",
              "wider-range",
              "lead-jack",
              "lead-missing",
              "link-missing" ->
              row + " has no steps: " + itself;
          case "waveform" -> row + rule;
          case "above-limit", "no-value" ->
              List.of("peak", "time").contains(fault.over()) ? row + rule : "";
          default -> "";
        };
  }

  /**
   * The first of them; empty for none.
   *
   * @param any else one in which a row is about a mode
   */
  private String first(boolean any) {
    for (Stage.Run run : plan.runs()) {
      boolean asked =
          any ? run.setup() != null : run.points().stream().anyMatch(point -> point.mode() != null);
      if (asked && !RowText.isOpen(run)) {
        return run.test().text();
      }
    }
    return "";
  }
}
