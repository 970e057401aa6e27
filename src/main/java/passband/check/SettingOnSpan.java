package passband.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Device.Mode;
import passband.model.Series;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Rational;
import passband.source.Span;

/**
 * {@code setting-off-span} and {@code setting-off-step}, errors: a setting that the mode does not
 * have.
 */
final class SettingOnSpan implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    List<Point> all = new ArrayList<>();
    plan.points().forEach(point -> all.addAll(point.delivered()));
    for (Point point : all) {
      Mode mode = point.mode();
      Series series = mode == null ? null : mode.setting();
      Figure setting = point.setting();
      if (mode != null && series != null && setting != null && !series.contains(setting.si())) {
        say(new Found(setting, point.places().setting(), mode, series), diagnostics);
      }
    }
  }

  /** A setting, where it is written, and the mode with its series of settings. */
  private record Found(Figure setting, Span cell, Mode mode, Series series) {}

  private static void say(Found found, Diagnostics diagnostics) {
    Series series = found.series;
    if (series.spans(found.setting.si())) {
      sayOffStep(found, diagnostics);
      return;
    }
    diagnostics
        .say(
            Code.SETTING_OFF_SPAN,
            found.cell,
            "the setting %s of '%s' is outside its range",
            found.setting.text(),
            found.mode.name().text())
        .note(
            ModeLines.setting(found.mode),
            "the mode can be set from %s to %s",
            Figures.text(series.lowest(), series.unit()),
            Figures.text(series.highest(), series.unit()));
  }

  private static void sayOffStep(Found found, Diagnostics diagnostics) {
    Series series = found.series;
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.SETTING_OFF_STEP,
                found.cell,
                "the setting %s of '%s' is between two of its steps",
                found.setting.text(),
                found.mode.name().text())
            .note(ModeLines.setting(found.mode), "its steps are here");
    Rational value = found.setting.si();
    Rational below = null;
    Rational above = null;
    for (Series.Segment s : series.segments()) {
      Rational low = below(s, value);
      Rational high = low == null || s.step() == null ? s.from() : low.plus(s.step()).min(s.to());
      below = low != null && (below == null || low.compareTo(below) > 0) ? low : below;
      boolean nearer = high.compareTo(value) > 0 && (above == null || high.compareTo(above) < 0);
      above = nearer ? high : above;
    }
    if (below != null && above != null) {
      String low = Figures.text(below, series.unit());
      String high = Figures.text(above, series.unit());
      said.hint("the nearest settings are %s and %s", low, high);
      fix(found, below, low, said);
      fix(found, above, high, said);
    }
  }

  /** Writes another setting in its cell, there with or without a unit; not into a series. */
  private static void fix(Found found, Rational si, String text, DiagnosticBuilder said) {
    String written = found.cell.text();
    if (written.split("\\s+").length > 2) {
      return;
    }
    boolean bare = written.chars().allMatch(c -> Character.isDigit(c) || c == '.');
    Rational number = bare ? Rational.parse(written) : null;
    if (number == null) {
      said.fix(Fix.replace(found.cell, text));
    } else if (number.signum() != 0) {
      Rational unit = found.setting.si().over(number);
      said.fix(Fix.replace(found.cell, si.over(unit).toPlain()));
    }
  }

  /** The segment's last value not above one; null when there is none. */
  private static @Nullable Rational below(Series.Segment s, Rational value) {
    if (value.compareTo(s.from()) < 0) {
      return null;
    }
    if (value.compareTo(s.to()) >= 0) {
      return s.to();
    }
    return s.step() == null ? value : s.from().plus(value.minus(s.from()).floorTo(s.step()));
  }
}
