package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Named;
import passband.plan.Plan;
import passband.plan.Point;

/**
 * {@code mode-not-on-outlet}, an error: a point asks for a mode on an outlet that does not have it.
 */
final class ModeOnOutlet implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      if (point.mode() == null || (point.outlet() != null && point.mode().isOn(point.outlet()))) {
        continue;
      }
      String mode = point.mode().name().text();
      String outlet = point.outlet() == null ? "" : point.outlet().name().text();
      String format =
          point.outlet() == null
              ? "the test names no outlet for the mode '%s'"
              : "the mode '%s' is not on the outlet '%s'";
      String on = Figures.list(Named.names(point.mode().outlets()));
      diagnostics
          .say(Code.MODE_NOT_ON_OUTLET, point.places().mode(), format, mode, outlet)
          .note(point.mode().name().span(), "the mode is on %s", on);
    }
  }
}
