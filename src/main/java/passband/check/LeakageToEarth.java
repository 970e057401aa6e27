package passband.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Analyzer.Measure;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.syntax.TerminalKind;

/**
 * {@code leakage-not-to-earth}, an error that can be allowed: leakage is what flows to earth, so
 * the meter lies between the generator and one of its earth terminals. A meter that names no jacks
 * has its path inside; then some jack of its instrument is connected to an earth terminal.
 */
final class LeakageToEarth implements Check {
  /** The kinds of leakage current that IEC 60601-1 tells apart, and that at high frequency. */
  private static final Set<String> LEAKAGE =
      Set.of("hf-leakage", "earth-leakage", "touch-current", "patient-leakage");

  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    List<Terminal> earths = new ArrayList<>();
    for (Outlet outlet : plan.device().outlets()) {
      earths.addAll(outlet.terminals());
    }
    earths.removeIf(terminal -> terminal.kind() != TerminalKind.EARTH);
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null) {
        look(plan, run, run.setup(), earths, diagnostics);
      }
    }
  }

  private static void look(
      Plan plan, Stage.Run run, Setup setup, List<Terminal> earths, Diagnostics diagnostics) {
    Nets nets = setup.nets();
    for (Point point : run.points()) {
      for (Limit limit : point.limits()) {
        Measure measure = plan.measure(limit);
        if (measure != null
            && LEAKAGE.contains(measure.quantity().name())
            && !flows(plan, nets, measure, earths)) {
          say(plan, run, setup, measure, earths, diagnostics);
        }
      }
    }
  }

  private static void say(
      Plan plan,
      Stage.Run run,
      Setup setup,
      Measure measure,
      List<Terminal> earths,
      Diagnostics diagnostics) {
    String quantity = measure.quantity().name();
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.LEAKAGE_NOT_TO_EARTH,
                setup.name().span(),
                "in this setup the meter of %s is not connected to an earth terminal of '%s'",
                quantity,
                plan.device().name().text())
            .note(run.test().span(), "this test measures %s", quantity)
            .note(measure.span(), "the meter is here");
    if (earths.isEmpty()) {
      said.note(plan.device().name().span(), "no outlet here has an 'earth' terminal");
    }
    said.hint("connect the meter to what the device declares as 'earth NAME'");
  }

  private static boolean flows(Plan plan, Nets nets, Measure measure, List<Terminal> earths) {
    if (measure.from() != null && measure.to() != null) {
      return nets.reaches(earths, measure.from()) || nets.reaches(earths, measure.to());
    }
    for (Analyzer unit : plan.instruments().units()) {
      for (Terminal jack :
          unit.measures().contains(measure) ? unit.terminals() : List.<Terminal>of()) {
        if (jack.kind() == TerminalKind.JACK && nets.reaches(earths, jack)) {
          return true;
        }
      }
    }
    return false;
  }
}
