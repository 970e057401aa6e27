package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.model.Series;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Rational;

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
        diagnostics.add(fault(point, series));
      }
    }
  }

  private static Diagnostic fault(Point point, Series series) {
    Rational value = point.setting().si();
    String what =
        "the setting " + point.setting().text() + " of '" + point.mode().name().text() + "'";
    String span =
        Figures.text(series.lowest(), series.unit())
            + " to "
            + Figures.text(series.highest(), series.unit());
    if (!series.spans(value)) {
      return Diagnostic.of(
              Code.SETTING_OFF_SPAN, point.places().setting(), what + " is outside its span")
          .note(point.mode().name().span(), "the mode goes from " + span);
    }
    Rational below = null;
    Rational above = null;
    for (Series.Segment s : series.segments()) {
      Rational low = below(s, value);
      Rational high = low == null || s.step() == null ? s.from() : low.plus(s.step()).min(s.to());
      below = low != null && (below == null || low.compareTo(below) > 0) ? low : below;
      boolean nearer = high.compareTo(value) > 0 && (above == null || high.compareTo(above) < 0);
      above = nearer ? high : above;
    }
    Diagnostic fault =
        Diagnostic.of(
                Code.SETTING_OFF_STEP,
                point.places().setting(),
                what + " is between two of its steps")
            .note(point.mode().name().span(), "the mode is declared here");
    return below == null || above == null
        ? fault
        : fault.hint(
            "the nearest are "
                + Figures.text(below, series.unit())
                + " and "
                + Figures.text(above, series.unit()));
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
