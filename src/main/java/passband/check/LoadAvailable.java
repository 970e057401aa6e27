package passband.check;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Termination;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * {@code load-not-available}, an error: a load that the analyzer cannot be set to; open where the
 * wired load has no such position, and short where none has.
 */
final class LoadAvailable implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.delivered()) {
        if (point.load() != null) {
          look(plan, point.load(), point.places().load(), diagnostics);
        }
        if (point.termination() != null) {
          look(plan, run, point, point.termination(), diagnostics);
        }
      }
      if (run.sweep() != null && run.sweep().what().equals("load")) {
        Tree.Sweep written = run.tree().sweep();
        Span whole = run.test().span();
        Span from = written == null ? whole : written.from().span();
        Span to = written == null ? whole : written.to().span();
        look(plan, run.sweep().from(), from, diagnostics);
        look(plan, run.sweep().to(), to, diagnostics);
      }
    }
  }

  /** A wired load has to have such a position; open means no load where none is wired. */
  private static void look(
      Plan plan, Stage.Run run, Point point, Termination end, Diagnostics diagnostics) {
    Mode mode = point.mode();
    Outlet outlet = point.outlet();
    List<LoadBank> wired =
        run.setup() == null
            ? List.of()
            : WiredLoads.of(plan.instruments(), run.setup(), mode, outlet);
    boolean has = WiredLoads.bank(plan.instruments(), run.setup(), mode, outlet, end) != null;
    if (has || (wired.isEmpty() && end == Termination.OPEN)) {
      return;
    }
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LOAD_NOT_AVAILABLE,
            point.places().load(),
            wired.isEmpty()
                ? "the setup wires no load that can be set %s"
                : "the load that the setup wires cannot be set %s",
            end.word());
    if (run.setup() != null) {
      said.note(run.setup().name().span(), "the wiring is here");
    }
    wired.forEach(bank -> said.note(bank.span(), "the load is here"));
    said.hint(
        end == Termination.OPEN
            ? "use a setup that leaves the load out, or add 'open' to its values"
            : "wire a load that has 'short' among its values");
  }

  private static void look(Plan plan, Figure load, Span where, Diagnostics diagnostics) {
    if (plan.instruments().load(load.si()) != null) {
      return;
    }
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LOAD_NOT_AVAILABLE,
            where,
            plan.instruments().units().size() == 1
                ? "the analyzer '%2$s' has no load of %1$s"
                : "no instrument has a load of %s",
            load.text(),
            plan.instruments().units().get(0).name().text());
    plan.instruments().loads().forEach(bank -> said.note(bank.span(), "its loads are here"));
  }
}
