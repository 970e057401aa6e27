package passband.check;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Series;
import passband.plan.Delivery;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;

/**
 * {@code leakage-below-highest}, an error that can be allowed: the high-frequency leakage of a mode
 * is read in a setup, and nowhere at the mode's highest setting. Leakage rises with the output, so
 * that at a lower setting a generator that leaks passes; it is measured at the maximum output
 * setting of each mode (IEC 60601-2-2, 201.8.7.3, from memory).
 */
final class LeakageAtHighest implements Check {
  /** Points of which one at the highest setting is enough. */
  private record Alike(@Nullable Outlet read, @Nullable Outlet driven, Mode mode, String setup) {}

  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Map<Alike, Point> highest = new LinkedHashMap<>();
    for (Stage.Run run : plan.runs()) {
      String setup = run.setup() == null ? "" : run.setup().name().text();
      for (Point point : run.points()) {
        Mode mode = point.mode();
        if (mode != null && run.output() == Delivery.ON && Leakage.isHf(plan, point)) {
          Alike alike = new Alike(run.outlet(), point.outlet(), mode, setup);
          highest.merge(alike, point, LeakageAtHighest::higher);
        }
      }
    }
    highest.forEach((alike, point) -> look(alike.mode, point, diagnostics));
  }

  private static Point higher(Point one, Point other) {
    Figure first = one.setting();
    Figure second = other.setting();
    boolean up = first != null && second != null && second.si().compareTo(first.si()) > 0;
    return up ? other : one;
  }

  private static void look(Mode mode, Point point, Diagnostics diagnostics) {
    Series series = mode.setting();
    Figure setting = point.setting();
    if (series == null || setting == null || setting.si().compareTo(series.highest()) >= 0) {
      return;
    }
    String most = Figures.text(series.highest(), series.unit());
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LEAKAGE_BELOW_HIGHEST,
            point.places().setting(),
            "the leakage in the mode '%s' is read at %s at the most, and the mode goes up to %s",
            mode.name().text(),
            setting.text(),
            most);
    said.note(ModeLines.setting(mode), "its settings are here")
        .hint("read the leakage at the highest setting: %s", most);
    Rational unit = setting.unit().factor();
    if (point.places().setting().text().equals(setting.si().over(unit).toPlain())) {
      String number = series.highest().over(unit).toPlain();
      said.fix(Fix.replace(point.places().setting(), number));
    }
  }
}
