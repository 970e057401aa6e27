package passband.check;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Conversion;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Series;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.quantity.Wave;
import passband.syntax.Derive;

/**
 * {@code peak-below-sine}, an error that can be allowed: a mode's highest peak voltage, by which
 * leads are chosen, is below the peak of a sine of the power that a point sets or accepts in its
 * load, Û = √(2·P·R), or below what the least crest factor that a point accepts makes of it. What
 * generators deliver is a sine or has higher peaks: common practice, no source.
 */
final class PeakBelowSine implements Check {
  private static final Unit VOLT = Units.of("V");
  private static final String PEAK = Wave.VOLTAGE.peak();
  private static final Real SINE = Real.of(Rational.of(2)).sqrt();

  /** What a point's mode has to reach. */
  private record Needed(Real rms, Real crest, Point point) {
    Real peak() {
      return rms.times(crest);
    }
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Map<Mode, Needed> most = new LinkedHashMap<>();
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        Real rms = hasLoad(plan, point) ? rms(point) : null;
        if (point.mode() != null && rms != null) {
          Needed needed = new Needed(rms, crest(run, point), point);
          most.merge(point.mode(), needed, PeakBelowSine::higher);
        }
      }
    }
    most.forEach((mode, needed) -> look(plan, mode, needed, diagnostics));
  }

  /** A load that no instrument has is a slip of its own. */
  private static boolean hasLoad(Plan plan, Point point) {
    Figure load = point.load();
    return load == null || plan.instruments().load(load.si()) != null;
  }

  private static Needed higher(Needed one, Needed other) {
    return other.peak().compareTo(one.peak()) > 0 ? other : one;
  }

  private static void look(Plan plan, Mode mode, Needed needed, Diagnostics diagnostics) {
    Real highest = PeakVoltage.of(plan.device(), mode);
    if (highest == null
        || highest.compareTo(needed.peak()) >= 0
        || PeakBelowRms.isBelow(mode, highest)) {
      return;
    }
    diagnostics
        .say(
            Code.PEAK_BELOW_SINE,
            ModeLines.limit(mode, PEAK),
            "a peak of %s is below %s, the least that the output of '%s' can have",
            Figures.text(highest, VOLT),
            Figures.text(needed.peak(), VOLT),
            mode.name().text())
        .note(
            needed.point.span(),
            needed.crest.compareTo(SINE) > 0
                ? "by the least crest factor that is accepted at this point"
                : "as a sine at this point")
        .hint("leads are held against this peak: is a digit missing?");
  }

  /** The least RMS voltage that a point accepts, or sets, in V; null where nothing tells. */
  private static @Nullable Real rms(Point point) {
    Figure load = point.load();
    Series rated = point.mode() == null ? null : point.mode().loads();
    boolean set = load != null && rated != null && rated.contains(load.si());
    Real most = set ? Figures.settingAs(point, "voltage") : null;
    for (Limit limit : point.limits()) {
      Real lower = limit.exact().lower();
      Real volts = lower == null ? null : volts(lower, limit.quantity(), load);
      most = volts == null || (most != null && most.compareTo(volts) >= 0) ? most : volts;
    }
    return most;
  }

  private static @Nullable Real volts(Real lower, String quantity, @Nullable Figure load) {
    if (quantity.equals("voltage") || lower.signum() <= 0) {
      return quantity.equals("voltage") ? lower : null;
    }
    return load != null && load.si().signum() > 0 && Conversion.exists(quantity, "voltage")
        ? Conversion.convert(lower, quantity, "voltage", load.si())
        : null;
  }

  /** The least ratio of peak and RMS value: that of a sine, or the least that is accepted. */
  private static Real crest(Stage.Run run, Point point) {
    Real most = SINE;
    for (Derive derive : run.tree().derives()) {
      Limit limit =
          CrestFactor.isCrest(derive.value()) ? Figures.limit(point, derive.name().text()) : null;
      Real lower = limit == null ? null : limit.exact().lower();
      most = lower == null ? most : most.max(lower);
    }
    return most;
  }
}
