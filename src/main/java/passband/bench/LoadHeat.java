package passband.bench;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.limit.Conversion;
import passband.limit.Limit;
import passband.model.Analyzer.LoadBank;
import passband.model.Analyzer.PowerRating;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * What a point asks of the load that it is delivered into. The heat that a load holds is taken to
 * be the largest excess over its continuous power that a rating allows, and it is taken to lose
 * heat at the continuous power: common practice, no source.
 */
public final class LoadHeat {
  private LoadHeat() {}

  /** The load that takes a point's output and has a rating; null where there is none. */
  public static @Nullable LoadBank bank(Plan plan, Stage.Run run, Point point) {
    Figure load = point.load();
    if (load == null) {
      return null;
    }
    // Null too where it is not wired, which a check says.
    LoadBank bank =
        WiredLoads.carrying(
            plan.instruments(), run.setup(), point.mode(), point.outlet(), load.si());
    return bank == null || bank.power().isEmpty() ? null : bank;
  }

  /**
   * The greatest power that still passes, in W, rounded up to a microwatt; null when nothing tells.
   * A mere cap says little of it: where there are limits on both sides, or a setting that is a
   * power, those are taken.
   */
  public static @Nullable Rational power(Point point) {
    Figure load = point.load();
    if (load == null) {
      return null;
    }
    Real most = greatest(point, load.si(), false);
    Figure setting = point.setting();
    if (most == null && setting != null && isSetAsPower(point)) {
      most = Real.of(setting.si());
    }
    most = most == null ? greatest(point, load.si(), true) : most;
    return most == null ? null : most.ceilingTo(Rational.of(1, 1_000_000));
  }

  /**
   * What a point asks of each load, in W: of one that takes what several outlets deliver, the sum.
   */
  public static Map<LoadBank, Rational> asked(Plan plan, Stage.Run run, Point point) {
    Map<LoadBank, Rational> asked = new LinkedHashMap<>();
    for (Point one : point.delivered()) {
      LoadBank bank = bank(plan, run, one);
      Rational power = power(one);
      if (bank != null && power != null) {
        asked.merge(bank, power, Rational::plus);
      }
    }
    return asked;
  }

  /** Whether the point's setting is a power. */
  public static boolean isSetAsPower(Point point) {
    QuantityKind kind = point.mode() == null ? null : point.mode().settingKind();
    return kind != null && kind.name().equals("power");
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

  /** Whether a load takes a power, in W, once for a time, in s; null for continuously. */
  public static boolean takes(LoadBank bank, Rational power, @Nullable Rational time) {
    for (PowerRating rating : bank.power()) {
      boolean enough = rating.power().compareTo(power) >= 0;
      boolean fits = rating.time() == null || (time != null && rating.time().compareTo(time) >= 0);
      if (enough && fits) {
        return true;
      }
    }
    return false;
  }

  /** What a load takes for any time, in W; null where its ratings do not say. */
  public static @Nullable Rational continuous(LoadBank bank) {
    Rational most = null;
    for (PowerRating rating : bank.power()) {
      if (rating.time() == null) {
        most = most == null ? rating.power() : most.max(rating.power());
      }
    }
    return most;
  }

  /** The heat that a load holds, in J; null where its ratings do not say. */
  static @Nullable Rational holds(LoadBank bank) {
    Rational continuous = continuous(bank);
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
