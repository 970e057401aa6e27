package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device.Mode;
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
        Rational most = mode == null || mode.duty() == null ? null : mode.duty().on();
        Rational on = point.onTime();
        if (mode != null && most != null && on != null && on.compareTo(most) > 0) {
          Amount written = run.tree().onTime();
          Span where = written == null ? point.places().mode() : written.span();
          String from = written == null ? ", the analyzer's settling time," : "";
          DiagnosticBuilder said =
              say(where, Figures.text(on, SECOND) + from, mode, most, diagnostics);
          noteSettling(said, plan, run, on);
        }
      }
    }
  }

  /** Notes the settling time, where the on-time is not written and comes from it. */
  static void noteSettling(
      DiagnosticBuilder said, Plan plan, Stage.Run run, @Nullable Rational on) {
    if (on == null || run.tree().onTime() != null) {
      return;
    }
    for (Analyzer unit : plan.instruments().units()) {
      Amount settle = unit.tree().settle();
      Rational time = unit.settle();
      if (settle != null && time != null && on.compareTo(time) == 0) {
        said.note(settle.span(), "the settling time is here");
        return;
      }
    }
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
