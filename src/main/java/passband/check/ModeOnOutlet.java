package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.model.Named;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;

/**
 * {@code mode-not-on-outlet}, an error: a point asks for a mode on an outlet that does not have it.
 */
final class ModeOnOutlet implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.delivered()) {
        Mode mode = point.mode();
        if (mode != null && (point.outlet() == null || !mode.isOn(point.outlet()))) {
          say(run, point, mode, diagnostics);
        }
      }
    }
  }

  /** A test without an outlet is said once, at its name. */
  private static void say(Stage.Run run, Point point, Mode mode, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        point.outlet() == null
            ? diagnostics
                .say(
                    Code.MODE_NOT_ON_OUTLET,
                    run.test().span(),
                    "the test names no outlet for the mode '%s'",
                    mode.name().text())
                .note(point.places().mode(), "it is tested here")
            : diagnostics.say(
                Code.MODE_NOT_ON_OUTLET,
                point.places().mode(),
                "the mode '%s' is not on the outlet '%s'",
                mode.name().text(),
                point.outlet().name().text());
    said.note(mode.name().span(), "the mode is on %s", Figures.list(Named.names(mode.outlets())));
  }
}
