package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Nets;
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
              && run.setup().whole()
              && by != null
              && !by.equals(Instruments.DEVICE)
              && looked.add(by + " " + limit.quantity())) {
            look(plan, plan.instruments().in(by), limit, run, run.setup(), diagnostics);
          }
        }
      }
    }
  }

  private static void look(
      Plan plan, Analyzer unit, Limit limit, Stage.Run run, Setup setup, Diagnostics diagnostics) {
    if (reached(plan, setup).contains(unit.role())) {
      return;
    }
    diagnostics
        .say(
            Code.CIRCUIT_OPEN,
            setup.name().span(),
            "'%s' reads %s, but no lead of the setup brings it the output",
            unit.role(),
            limit.quantity())
        .note(run.test().span(), "this test uses the setup")
        .note(limit.rule().span(), "it reads this");
  }

  /**
   * The roles of the instruments that leads join to the generator's terminals, directly or through
   * another instrument.
   */
  private static Set<String> reached(Plan plan, Setup setup) {
    Nets nets = setup.nets();
    List<Terminal> ends = new ArrayList<>();
    for (Wire wire : setup.wires()) {
      ends.add(wire.from());
      ends.add(wire.to());
    }
    List<Terminal> live = new ArrayList<>(ends);
    live.removeIf(end -> end.kind() == TerminalKind.JACK || end.kind() == TerminalKind.KEY);
    Set<String> reached = new HashSet<>();
    boolean more = true;
    while (more) {
      more = false;
      for (Analyzer unit : plan.instruments().units()) {
        if (!reached.contains(unit.role()) && joined(nets, unit, ends, live)) {
          more = reached.add(unit.role());
          ends.stream().filter(end -> isJack(unit, end)).forEach(live::add);
        }
      }
    }
    return reached;
  }

  private static boolean joined(
      Nets nets, Analyzer unit, List<Terminal> ends, List<Terminal> live) {
    for (Terminal end : ends) {
      for (Terminal other : live) {
        if (isJack(unit, end) && nets.joined(end, other)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean isJack(Analyzer unit, Terminal end) {
    return end.kind() == TerminalKind.JACK && end.owner().equals(unit.role());
  }
}
