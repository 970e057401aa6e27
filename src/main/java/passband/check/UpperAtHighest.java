package passband.check;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Series;
import passband.model.Termination;
import passband.plan.Delivery;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Wave;

/**
 * {@code leakage-below-highest} and {@code peak-below-highest}, errors that can be allowed: the
 * high-frequency leakage of a mode, or its peak without a load where only an upper limit is
 * accepted, is read in a setup, and nowhere at the mode's highest setting. Both rise with the
 * output, so that at a lower setting a generator passes whose leakage or peak is too high; leakage
 * is measured at the maximum output setting of each mode (IEC 60601-2-2, 201.8.7.3, from memory),
 * the peak by common practice, no source.
 */
final class UpperAtHighest implements Check {
  /** Points of which one at the highest setting is enough. */
  private record Alike(
      Code code, @Nullable Outlet read, @Nullable Outlet driven, Mode mode, String setup) {}

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
        Code code = run.output() == Delivery.ON ? code(plan, point) : null;
        if (mode != null && code != null) {
          Alike alike = new Alike(code, run.outlet(), point.outlet(), mode, setup);
          highest.merge(alike, point, UpperAtHighest::higher);
        }
      }
    }
    Set<Said> said = new HashSet<>();
    highest.forEach((alike, point) -> look(alike, point, said, diagnostics));
  }

  /** A mode that goes further is said once for a setting: it may be the mode that is wrong. */
  private record Said(String mode, String setting) {}

  /** What is said of a point that is read too low; null for any other reading. */
  private static @Nullable Code code(Plan plan, Point point) {
    if (Leakage.isHf(plan, point)) {
      return Code.LEAKAGE_BELOW_HIGHEST;
    }
    Limit peak = Figures.limit(point, Wave.VOLTAGE.peak());
    return point.termination() == Termination.OPEN && peak != null && peak.accept().lower() == null
        ? Code.PEAK_BELOW_HIGHEST
        : null;
  }

  private static Point higher(Point one, Point other) {
    Figure first = one.setting();
    Figure second = other.setting();
    boolean up = first != null && second != null && second.si().compareTo(first.si()) > 0;
    return up ? other : one;
  }

  private static void look(Alike alike, Point point, Set<Said> before, Diagnostics diagnostics) {
    Mode mode = alike.mode;
    Series series = mode.setting();
    Figure setting = point.setting();
    if (series == null
        || setting == null
        || setting.si().compareTo(series.highest()) >= 0
        || !before.add(new Said(mode.name().text(), setting.text()))) {
      return;
    }
    String most = Figures.text(series.highest(), series.unit());
    String what = alike.code == Code.PEAK_BELOW_HIGHEST ? "open-circuit peak" : "leakage";
    DiagnosticBuilder said =
        diagnostics.say(
            alike.code,
            point.places().setting(),
            "the %s in the mode '%s' is read at %s at the most, and the mode goes up to %s",
            what,
            mode.name().text(),
            setting.text(),
            most);
    said.note(ModeLines.setting(mode), "its settings are here")
        .hint("read the %s at the highest setting: %s", what, most);
    Rational unit = setting.unit().factor();
    if (point.places().setting().text().equals(setting.si().over(unit).toPlain())) {
      String number = series.highest().over(unit).toPlain();
      said.fix(Fix.replace(point.places().setting(), number));
    }
  }
}
