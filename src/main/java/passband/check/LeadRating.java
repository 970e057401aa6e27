package passband.check;

import java.util.LinkedHashMap;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * {@code lead-underrated}, an error, and {@code lead-unrated}, a warning: a lead in an output
 * circuit that is rated below the highest peak voltage of a mode tested through it, or that has no
 * rating.
 */
final class LeadRating implements Check {
  private static final Unit VOLT = Units.of("V");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Map<Mode, Real> peaks = new LinkedHashMap<>();
      for (Point point : run.points()) {
        if (point.mode() != null && !peaks.containsKey(point.mode())) {
          peaks.put(point.mode(), PeakVoltage.of(point.mode()));
        }
      }
      for (Wire wire :
          run.setup() == null || peaks.isEmpty()
              ? java.util.List.<Wire>of()
              : run.setup().wires()) {
        if (wire.from().kind().carriesOutput() && wire.to().kind().carriesOutput()) {
          look(wire, peaks, diagnostics);
        }
      }
    }
  }

  private static void look(Wire wire, Map<Mode, Real> peaks, Diagnostics diagnostics) {
    Rational volts = wire.lead().rated();
    String rated = wire.lead().ratedText();
    if (volts == null || rated == null) {
      diagnostics
          .say(
              Code.LEAD_UNRATED,
              wire.span(),
              "the %s is in an output circuit but has no voltage rating",
              wire.lead().title())
          .note(wire.lead().name().span(), "it is declared here")
          .hint("add ', rated …' with its rated peak voltage");
      return;
    }
    peaks.forEach(
        (mode, peak) -> {
          if (peak != null && peak.compareTo(Real.of(volts)) > 0) {
            diagnostics
                .say(
                    Code.LEAD_UNDERRATED,
                    wire.span(),
                    "the %s is rated %s, but '%s' reaches %s peak",
                    wire.lead().title(),
                    rated,
                    mode.name().text(),
                    Figures.text(peak, VOLT))
                .note(wire.lead().name().span(), "the lead is declared here")
                .note(mode.name().span(), "the mode is declared here");
          }
        });
  }
}
