package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Duty;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Units;
import passband.source.Span;

/** {@code over-duty}, an error: output on for longer than the mode's duty allows at one go. */
final class DutyKept implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        Duty duty = point.mode() == null ? null : point.mode().duty();
        boolean bounded = duty != null && !duty.continuous() && point.onTime() != null;
        if (bounded && point.onTime().compareTo(duty.on()) > 0) {
          say(run, point, duty, diagnostics);
        }
      }
    }
  }

  private static void say(Stage.Run run, Point point, Duty duty, Diagnostics diagnostics) {
    Span where = run.tree().onTime() == null ? point.places().mode() : run.tree().onTime().span();
    String on = Figures.text(point.onTime(), Units.find("s"));
    String from = run.tree().onTime() == null ? ", the analyzer's settling time," : "";
    diagnostics
        .say(
            Code.OVER_DUTY,
            where,
            "an on-time of %s%s exceeds the duty of '%s'",
            on,
            from,
            point.mode().name().text())
        .note(
            point.mode().tree().duty().span(),
            "it may be on for at most %s",
            Figures.text(duty.on(), Units.find("s")));
  }
}
