package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Series;
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
    for (Point point : plan.points()) {
      Series series = point.mode() == null ? null : point.mode().setting();
      if (series != null && point.setting() != null && !series.contains(point.setting().si())) {
        say(point, series, diagnostics);
      }
    }
  }

  private static void say(Point point, Series series, Diagnostics diagnostics) {
    if (series.spans(point.setting().si())) {
      sayOffStep(point, series, diagnostics);
      return;
    }
    diagnostics
        .say(
            Code.SETTING_OFF_SPAN,
            point.places().setting(),
            "the setting %s of '%s' is outside its span",
            point.setting().text(),
            point.mode().name().text())
        .note(
            point.mode().name().span(),
            "the mode can be set from %s to %s",
            Figures.text(series.lowest(), series.unit()),
            Figures.text(series.highest(), series.unit()));
  }

  private static void sayOffStep(Point point, Series series, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.SETTING_OFF_STEP,
                point.places().setting(),
                "the setting %s of '%s' is between two of its steps",
                point.setting().text(),
                point.mode().name().text())
            .note(point.mode().name().span(), "the mode is declared here");
    Rational value = point.setting().si();
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
      fix(point, below, low, said);
      fix(point, above, high, said);
    }
  }

  /** Writes another setting in its cell, there with or without a unit; not into a series. */
  private static void fix(Point point, Rational si, String text, DiagnosticBuilder said) {
    Span cell = point.places().setting();
    String written = cell.text();
    if (written.split("\\s+").length > 2) {
      return;
    }
    boolean bare = written.chars().allMatch(c -> Character.isDigit(c) || c == '.');
    Rational number = bare ? Rational.parse(written) : null;
    if (!bare) {
      said.fix(Fix.replace(cell, text));
    } else if (number.signum() != 0) {
      Rational unit = point.setting().si().over(number);
      said.fix(Fix.replace(cell, si.over(unit).toPlain()));
    }
  }

  /** The segment's last value not above one; null when there is none. */
  private static Rational below(Series.Segment s, Rational value) {
    if (value.compareTo(s.from()) < 0) {
      return null;
    }
    if (value.compareTo(s.to()) >= 0) {
      return s.to();
    }
    return s.step() == null ? value : s.from().plus(value.minus(s.from()).floorTo(s.step()));
  }
}
