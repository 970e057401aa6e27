package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;
import passband.plan.Point;
import passband.sequence.Seq;

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
      String where =
          point.outlet() == null
              ? "the test names no outlet for the mode '" + mode + "'"
              : "the mode '"
                  + mode
                  + "' is not on the outlet '"
                  + point.outlet().name().text()
                  + "'";
      String on = Figures.list(Seq.of(point.mode().outlets()).map(o -> o.name().text()).toList());
      diagnostics.add(
          Diagnostic.of(Code.MODE_NOT_ON_OUTLET, point.places().mode(), where)
              .note(point.mode().name().span(), "the mode is on " + on));
    }
  }
}
