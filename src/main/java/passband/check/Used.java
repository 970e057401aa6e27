package passband.check;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Lead;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.source.SourceFile;
import passband.syntax.Tree;

/**
 * {@code unused-name}, a warning: a setup that no test uses, a swept or derived quantity that no
 * test accepts, and, of leads declared in the procedure's own file, those that no setup uses. A
 * shared set, or a part, may hold more than one procedure needs.
 */
final class Used implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Tree.Setup setup : plan.tree().setups()) {
      boolean other =
          setup.analyzer() != null && !plan.instruments().include(setup.analyzer().text());
      boolean shared = plan.source().inPart(setup.name().span());
      if (!other && !shared && !isUsed(plan, setup)) {
        say(diagnostics, setup.name(), "no test uses the setup");
      }
    }
    for (Stage.Run run : plan.runs()) {
      run.tree().derives().forEach(d -> accepted(plan, run, d.name(), diagnostics));
      if (run.tree().sweep() != null) {
        accepted(plan, run, run.tree().sweep().as(), diagnostics);
      }
    }
    SourceFile own = plan.name().span().file();
    for (Lead lead : plan.leads()) {
      if (lead.name().span().file() == own && !taken(plan, lead)) {
        say(diagnostics, lead.name(), "no setup uses the " + lead.kind().word());
      }
    }
  }

  private static boolean isUsed(Plan plan, Tree.Setup setup) {
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null && run.setup().name().text().equals(setup.name().text())) {
        return true;
      }
    }
    return false;
  }

  private static boolean taken(Plan plan, Lead lead) {
    for (Tree.Setup setup : plan.tree().setups()) {
      for (Tree.Wire wire : setup.wires()) {
        if (wire.lead().text().equals(lead.name().text())) {
          return true;
        }
      }
    }
    return false;
  }

  /** A comparison of outlets has its limit on the last of them. */
  private static void accepted(
      Plan plan, Stage.Run run, passband.syntax.Word name, Diagnostics diagnostics) {
    for (Stage.Run one : plan.runs()) {
      for (Point point : one.test().equals(run.test()) ? one.points() : List.<Point>of()) {
        if (Figures.limit(point, name.text()) != null) {
          return;
        }
      }
    }
    say(diagnostics, name, "the test does not accept");
  }

  private static void say(Diagnostics diagnostics, passband.syntax.Word name, String what) {
    diagnostics.say(Code.UNUSED_NAME, name.span(), "%s '%s'", what, name.text());
  }
}
