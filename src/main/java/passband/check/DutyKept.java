package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.plan.OnTime;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Ratings;

/** {@code over-duty}, an error: output on for longer than the mode's duty allows at one go. */
final class DutyKept implements Check {
  private static final Unit SECOND = Units.of("s");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.delivered()) {
        Mode mode = point.mode();
        Rational most = point.on().allowed();
        Rational on = point.onTime();
        if (mode != null && most != null && on != null && on.compareTo(most) > 0) {
          Amount written = run.tree().onTime();
          Span where = written == null ? point.places().mode() : written.span();
          String from = written == null ? from(point.on()) : "";
          DiagnosticBuilder said =
              say(where, Figures.text(on, SECOND) + from, mode, most, diagnostics);
          noteNeeds(said, point.on());
        }
      }
    }
  }

  /** Notes how long the instruments need, where the on-time comes from that. */
  static void noteNeeds(DiagnosticBuilder said, OnTime on) {
    OnTime.Need need = on.most();
    Amount settle = need == null ? null : need.unit().tree().timing().settle();
    if (need != null && settle != null) {
      said.note(settle.span(), "the settling time is here");
      Amount reads = need.unit().tree().timing().reads();
      if (reads != null && need.reading().signum() > 0) {
        said.note(reads.span(), "the time to read is here");
      }
    }
  }

  private static String from(OnTime on) {
    OnTime.Need need = on.most();
    return need != null && need.reading().signum() > 0
        ? ", the analyzer's settling time and the time to read it,"
        : ", the analyzer's settling time,";
  }

  private static DiagnosticBuilder say(
      Span where, String on, Mode mode, Rational most, Diagnostics diagnostics) {
    Ratings.Duty written = mode.tree().duty();
    return diagnostics
        .say(
            Code.OVER_DUTY,
            where,
            "an on-time of %s exceeds the duty of '%s'",
            on,
            mode.name().text())
        .note(
            written == null ? mode.name().span() : written.span(),
            "it may be on for at most %s",
            Figures.text(most, SECOND));
  }
}
