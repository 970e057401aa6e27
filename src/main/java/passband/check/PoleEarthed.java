package passband.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer.Measure;
import passband.model.Device;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.syntax.TerminalKind;

/**
 * {@code pole-earthed}, an error that can be allowed: leads connect a pole of the outlet that
 * delivers straight to earth, a jack {@code on earth} or an earth terminal of the generator. Its
 * output then flows to earth beside the meter. The return path may be earthed by the low end of a
 * load, and so may one of two poles between which the load lies; where leakage is measured, no pole
 * may: what leaks would not flow through the meter. Outlets are floating, that is, applied parts of
 * type BF or CF (IEC 60601-2-2, 201.4.11, from memory).
 */
final class PoleEarthed implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Setup setup = run.setup();
      if (setup == null || !setup.whole()) {
        continue;
      }
      Nets nets = setup.nets();
      List<Terminal> earths = earths(plan);
      for (Point point : run.delivered()) {
        boolean leaks = measuresLeakage(plan, nets, point);
        for (Terminal pole : floating(plan, run, point, leaks)) {
          Terminal earth = reached(nets, pole, earths);
          if (earth != null) {
            say(run, setup, pole, earth, leaks, diagnostics);
          }
        }
      }
    }
  }

  private static void say(
      Stage.Run run,
      Setup setup,
      Terminal pole,
      Terminal earth,
      boolean leaks,
      Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.POLE_EARTHED,
            setup.name().span(),
            "leads connect %s to %s, which is on earth%s",
            pole.id(),
            earth.id(),
            leaks ? ": the leakage does not flow through the meter" : "")
        .note(earth.name().span(), "it is on earth here")
        .note(run.test().span(), "this test uses the setup")
        .hint(
            leaks
                ? "are the leads at the meter swapped? its other jack belongs to the pole"
                : "are the leads at the load swapped? its other jack belongs to the pole");
  }

  /** Whether leads go to its meter; where none do, the circuit is open. */
  static boolean measuresLeakage(Plan plan, Nets nets, Point point) {
    for (Limit limit : point.limits()) {
      Measure measure = Leakage.meter(plan, limit);
      if (measure != null
          && measure.from() != null
          && measure.to() != null
          && nets.wired(List.of(measure.from(), measure.to()))) {
        return true;
      }
    }
    return false;
  }

  /** The poles that must not be on earth. */
  static List<Terminal> floating(Plan plan, Stage.Run run, Point point, boolean leaks) {
    List<Terminal> poles = new ArrayList<>();
    if (leaks) {
      plan.device().outlets().forEach(outlet -> poles.addAll(outlet.poles()));
      return poles;
    }
    Outlet outlet = point.outlet();
    Device.Mode mode = point.mode();
    boolean returns = mode != null && mode.through() != null;
    if (run.output().activates() && outlet != null && returns) {
      poles.addAll(outlet.poles());
    }
    return poles;
  }

  /** What is on earth by itself. */
  private static List<Terminal> earths(Plan plan) {
    List<Terminal> earths = new ArrayList<>();
    plan.device().outlets().forEach(outlet -> earths.addAll(outlet.terminals()));
    earths.addAll(plan.instruments().terminals());
    earths.removeIf(terminal -> !terminal.isEarthed());
    earths.removeIf(terminal -> terminal.kind() == TerminalKind.KEY);
    return earths;
  }

  private static @Nullable Terminal reached(Nets nets, Terminal pole, List<Terminal> earths) {
    for (Terminal earth : earths) {
      if (nets.joined(pole, earth)) {
        return earth;
      }
    }
    return null;
  }
}
