package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Series;

/**
 * What a good generator gives: learnt by working the sheet once with one that does all that is
 * asked of it. By what it is set to and what it works into, never by a row: whoever leaves a load
 * where it was gets what the generator gives into that load.
 */
final class Ratings {
  /** What is delivered in watts, or joules, at a setting in SI into a load in ohm. */
  record Known(double setting, double ohms, double power) {}

  private final Map<String, List<Known>> powers = new LinkedHashMap<>();
  private final Map<String, double[]> values = new LinkedHashMap<>();

  private static String key(@Nullable Outlet outlet, Mode mode) {
    return mode.name().text() + " " + (outlet == null ? "-" : outlet.name().text());
  }

  /** Whether a mode is set in what it delivers, not in levels. */
  static boolean setsPower(Mode mode) {
    return mode.settingKind() != null
        && List.of("power", "energy").contains(mode.settingKind().name());
  }

  void learn(@Nullable Outlet outlet, Mode mode, Known one) {
    List<Known> known = powers.computeIfAbsent(key(outlet, mode), k -> new ArrayList<>());
    for (Known other : known) {
      if (same(other.setting, one.setting) && same(other.ohms, one.ohms)) {
        if (Math.abs(other.power / one.power - 1) > 1e-6) {
          throw new AssertionError("two rows expect another power of one state: " + one + other);
        }
        return;
      }
    }
    known.add(one);
  }

  /** What else is read in a state of the bench: what is good of it, and its limit. */
  void learn(String state, double good, double limit) {
    values.putIfAbsent(state, new double[] {good, limit});
  }

  double good(String state) {
    return values.containsKey(state) ? values.get(state)[0] : 0;
  }

  double limit(String state) {
    return values.containsKey(state) ? values.get(state)[1] : 0;
  }

  private static boolean same(double a, double b) {
    return a == b || (Double.isNaN(a) && Double.isNaN(b));
  }

  /** The greatest setting of a mode; of a mode in levels the greatest one that is tested. */
  double greatestSetting(@Nullable Outlet outlet, Mode mode) {
    Series scale = mode.setting();
    return scale == null ? Double.NaN : scale.highest().doubleValue();
  }

  double leastSetting(Mode mode) {
    double least = Double.POSITIVE_INFINITY;
    for (Map.Entry<String, List<Known>> one : powers.entrySet()) {
      if (one.getKey().startsWith(mode.name().text() + " ")) {
        for (Known known : one.getValue()) {
          least = Math.min(least, known.setting);
        }
      }
    }
    return least;
  }

  /**
   * The power at a setting into a load: into one that nobody has tried the same as into the next.
   */
  double power(@Nullable Outlet outlet, Mode mode, double setting, double ohms) {
    List<Known> all = powers.getOrDefault(key(outlet, mode), List.of());
    double nearest = Double.POSITIVE_INFINITY;
    for (Known one : all) {
      nearest = Math.min(nearest, away(one, ohms));
    }
    List<Known> there = new ArrayList<>(all);
    double reach = nearest + 1e-9;
    there.removeIf(one -> away(one, ohms) > reach);
    there.sort((a, b) -> Double.compare(a.setting, b.setting));
    if (there.isEmpty()) {
      return setsPower(mode) && !Double.isNaN(setting) ? setting : 0;
    }
    return at(there, mode, setting);
  }

  private static double away(Known one, double ohms) {
    return one.ohms == ohms ? 0 : Math.abs(Math.log(one.ohms / ohms));
  }

  /** On the straight line between neighbours; in proportion where the mode is set in power. */
  private static double at(List<Known> there, Mode mode, double setting) {
    Known below = null;
    for (Known one : there) {
      if (same(one.setting, setting)) {
        return one.power;
      }
      if (setsPower(mode) && one.setting > setting) {
        return one.power * setting / one.setting;
      }
      if (below != null && one.setting > setting) {
        double share = (setting - below.setting) / (one.setting - below.setting);
        return below.power + share * (one.power - below.power);
      }
      below = one;
    }
    return setsPower(mode) ? below.power * setting / below.setting : below.power;
  }
}
