package passband.check;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Conversion;
import passband.limit.Limit;
import passband.model.Analyzer.LoadBank;
import passband.model.Analyzer.PowerRating;
import passband.model.Device.Duty;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * {@code load-overpowered}, an error: more power at a point's upper limit than the load takes for
 * the on-time, or, along the printed order with its rests, more heat than it gets rid of. The heat
 * that a load holds is taken to be the largest excess over its continuous power that a rating
 * allows, and it is taken to lose heat at the continuous power: common practice, no source.
 */
final class LoadPower implements Check {
  private static final Unit WATT = Units.of("W");
  private static final Unit SECOND = Units.of("s");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Map<LoadBank, Real> heats = new HashMap<>();
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        Figure load = point.load();
        // Null too where it is not wired, which LoadWired says.
        LoadBank bank =
            load == null
                ? null
                : WiredLoads.carrying(
                    plan.instruments(), run.setup(), point.mode(), point.outlet(), load.si());
        if (load != null && bank != null && !bank.power().isEmpty()) {
          Rational power = upperPower(point, load.si());
          if (power != null && once(point, bank, power, diagnostics)) {
            Real heat = heats.getOrDefault(bank, Real.ZERO);
            heats.put(bank, along(point, bank, power, heat, diagnostics));
          }
        }
      }
    }
  }

  /**
   * The greatest power that still passes, rounded up to a microwatt; null when nothing tells. A
   * mere cap says little of it: where there are limits on both sides, or a setting that is a power,
   * those are taken.
   */
  private static @Nullable Rational upperPower(Point point, Rational ohms) {
    Real most = greatest(point, ohms, false);
    Figure setting = point.setting();
    if (most == null && setting != null && Figures.isSetAsPower(point)) {
      most = Real.of(setting.si());
    }
    most = most == null ? greatest(point, ohms, true) : most;
    return most == null ? null : most.ceilingTo(Rational.of(1, 1_000_000));
  }

  /** The greatest of the upper limits as a power in the load; null where none tells. */
  private static @Nullable Real greatest(Point point, Rational ohms, boolean caps) {
    Real most = null;
    for (Limit limit : point.limits()) {
      Real upper = limit.exact().upper();
      boolean power = limit.quantity().equals("power");
      boolean tells = power || Conversion.exists(limit.quantity(), "power");
      if (upper == null || !tells || (!caps && limit.exact().lower() == null)) {
        continue;
      }
      Real watts = power ? upper : Conversion.convert(upper, limit.quantity(), "power", ohms);
      most = most == null ? watts : most.max(watts);
    }
    return most;
  }

  private static boolean once(Point point, LoadBank bank, Rational power, Diagnostics diagnostics) {
    Rational time = onTime(point);
    for (PowerRating rating : bank.power()) {
      boolean enough = rating.power().compareTo(power) >= 0;
      boolean fits = rating.time() == null || (time != null && rating.time().compareTo(time) >= 0);
      if (enough && fits) {
        return true;
      }
    }
    String on =
        time == null
            ? "continuously, and no on-time is given"
            : "for " + Figures.text(time, SECOND);
    diagnostics
        .say(
            Code.LOAD_OVERPOWERED,
            point.span(),
            "the load is not rated for %s %s",
            shown(power),
            on)
        .note(bank.span(), "its ratings are here")
        .hint(
            point.onTime() == null
                ? "add 'on-time' to the test or 'settle' to the analyzer"
                : "shorten the on-time");
    return false;
  }

  /** The on-time; where none is given, as long as the mode's duty allows at the most. */
  private static @Nullable Rational onTime(Point point) {
    Duty duty = point.mode() == null ? null : point.mode().duty();
    return point.onTime() == null && duty != null ? duty.on() : point.onTime();
  }

  private static String shown(Rational power) {
    return Figures.text(Real.of(power), WATT);
  }

  private static Real along(
      Point point, LoadBank bank, Rational power, Real heat, Diagnostics diagnostics) {
    Rational continuous = continuous(bank);
    Rational holds = holds(bank, continuous);
    if (continuous == null || holds == null || point.onTime() == null) {
      return heat;
    }
    Real after = heat.plus(Real.of(power.minus(continuous).times(point.onTime())));
    if (after.compareTo(Real.of(holds)) > 0) {
      diagnostics
          .say(
              Code.LOAD_OVERPOWERED,
              point.span(),
              "after the points before it and their rests, this one overheats the load at %s",
              shown(power))
          .note(bank.span(), "its continuous rating is %s", shown(continuous))
          .hint("shorten the on-time, or put a 'wait' or a point of lower power before it");
      return Real.ZERO;
    }
    Rational rest = point.rest() == null ? Rational.ZERO : point.rest();
    return after.minus(Real.of(continuous.times(rest))).max(Real.ZERO);
  }

  private static @Nullable Rational continuous(LoadBank bank) {
    Rational most = null;
    for (PowerRating rating : bank.power()) {
      if (rating.time() == null) {
        most = most == null ? rating.power() : most.max(rating.power());
      }
    }
    return most;
  }

  private static @Nullable Rational holds(LoadBank bank, @Nullable Rational continuous) {
    Rational most = null;
    for (PowerRating rating : bank.power()) {
      if (continuous != null && rating.time() != null) {
        Rational excess = rating.power().minus(continuous).times(rating.time());
        most = most == null ? excess : most.max(excess);
      }
    }
    return most;
  }
}
