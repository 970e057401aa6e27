package passband.check;

import org.jspecify.annotations.Nullable;
import passband.bench.LoadHeat;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer.LoadBank;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * {@code load-overpowered}, an error: more power at a point's upper limit than the load takes for
 * the on-time. The heat of the points together is kept by {@link passband.bench.Walk}.
 */
final class LoadPower implements Check {
  private static final Unit WATT = Units.of("W");
  private static final Unit SECOND = Units.of("s");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        Rational time = point.on().counted();
        LoadHeat.asked(plan, run, point)
            .forEach(
                (bank, power) -> {
                  if (!LoadHeat.takes(bank, power, time)) {
                    DiagnosticBuilder said = say(point, bank, power, time, diagnostics);
                    DutyKept.noteNeeds(said, point.on());
                  }
                });
      }
    }
  }

  private static DiagnosticBuilder say(
      Point point,
      LoadBank bank,
      Rational power,
      @Nullable Rational time,
      Diagnostics diagnostics) {
    String on =
        time == null
            ? "continuously, and no on-time is given"
            : "for " + Figures.text(time, SECOND);
    return diagnostics
        .say(
            Code.LOAD_OVERPOWERED,
            point.span(),
            "the load is not rated for %s %s",
            Figures.text(Real.of(power), WATT),
            on)
        .note(bank.span(), "its ratings are here")
        .hint(
            point.onTime() == null
                ? "add 'on-time' to the test or 'settle' to the analyzer"
                : "shorten the on-time");
  }
}
