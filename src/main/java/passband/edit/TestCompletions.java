package passband.edit;

import java.util.List;
import passband.diagnostic.Code;
import passband.plan.PlanStep;
import passband.syntax.Derive;

/** What may be written on a line of a test, whatever the procedure declares. */
final class TestCompletions {
  private TestCompletions() {}

  static void each(String last, ProfileCompletions.Taker found) {
    if (last.equals("replacing")) {
      PlanStep.REPLACEABLE.forEach(s -> found.take(s, "step", "a step of each point"));
    } else {
      found.take("replacing", "keyword", "");
    }
  }

  /** After 'over' the columns by which points may differ. */
  static void derive(String last, ProfileCompletions.Taker found) {
    if (last.equals("over")) {
      List.of("outlet", "repeat", "mode", "setting", "load", "activation")
          .forEach(column -> found.take(column, "column", "points that differ only in it"));
    } else {
      Derive.FUNCTIONS.forEach(name -> found.take(name, "function", "with 'over COLUMN'"));
      found.take("over", "keyword", "the column by which the points differ that are compared");
    }
  }

  static void codes(ProfileCompletions.Taker found) {
    for (Code code : Code.values()) {
      if (code.allowable()) {
        found.take(code.id(), "code", code.weight() + ": " + code.title());
      }
    }
  }
}
