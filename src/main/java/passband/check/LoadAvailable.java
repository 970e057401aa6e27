package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.source.Span;
import passband.syntax.Tree;

/** {@code load-not-available}, an error: a load that the analyzer cannot be set to. */
final class LoadAvailable implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        if (point.load() != null) {
          look(plan, point.load(), point.places().load(), diagnostics);
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

  private static void look(Plan plan, Figure load, Span where, Diagnostics diagnostics) {
    if (plan.analyzer().load(load.si()) != null) {
      return;
    }
    String analyzer = plan.analyzer().name().text();
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LOAD_NOT_AVAILABLE,
            where,
            "the analyzer '%s' has no load of %s",
            analyzer,
            load.text());
    plan.analyzer().loads().forEach(bank -> said.note(bank.span(), "its loads are here"));
  }
}
