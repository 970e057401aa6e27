package passband.check;

import java.util.HashSet;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.syntax.TerminalKind;

/**
 * {@code circuit-open}, an error: of several instruments one reads that no lead of the setup goes
 * to. What has jacks of its own for the quantity is looked at with its circuit.
 */
final class ReaderWired implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    if (plan.instruments().units().size() < 2) {
      return; // the only one has the load, which is looked at
    }
    for (Stage.Run run : plan.runs()) {
      Set<String> looked = new HashSet<>();
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          String by = limit.read().by();
          if (run.setup() != null
              && by != null
              && !by.equals(Instruments.DEVICE)
              && looked.add(by + " " + limit.quantity())) {
            look(plan.instruments().in(by), limit, run, run.setup(), diagnostics);
          }
        }
      }
    }
  }

  private static void look(
      Analyzer unit, Limit limit, Stage.Run run, Setup setup, Diagnostics diagnostics) {
    for (Wire wire : setup.wires()) {
      if (isJack(unit, wire.from()) || isJack(unit, wire.to())) {
        return;
      }
    }
    diagnostics
        .say(
            Code.CIRCUIT_OPEN,
            setup.name().span(),
            "'%s' reads %s, but no lead of the setup goes to it",
            unit.role(),
            limit.quantity())
        .note(run.test().span(), "this test uses the setup")
        .note(limit.rule().span(), "it reads this");
  }

  private static boolean isJack(Analyzer unit, Terminal end) {
    return end.kind() == TerminalKind.JACK && end.owner().equals(unit.role());
  }
}
