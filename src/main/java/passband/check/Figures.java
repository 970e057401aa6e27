package passband.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.bench.LoadHeat;
import passband.limit.Conversion;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.plan.Point;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;

/** Values as messages show them, and points as checks compare them. */
final class Figures {
  private Figures() {}

  /** Four significant digits in a unit. */
  static String text(Real si, Unit unit) {
    return unit.rounded(si);
  }

  /** A value in SI in a unit. */
  static String text(Rational si, Unit unit) {
    return new Figure(si, unit).text();
  }

  /** What a setting that is a power comes to in the load, in SI; null where there is none. */
  static @Nullable Real settingAs(Point point, String quantity) {
    Figure setting = point.setting();
    Figure load = point.load();
    return LoadHeat.isSetAsPower(point)
            && setting != null
            && setting.si().signum() >= 0
            && load != null
        ? Conversion.convert(Real.of(setting.si()), "power", quantity, load.si())
        : null;
  }

  /** The point's limit of a quantity, or null. */
  static @Nullable Limit limit(Point point, String quantity) {
    for (Limit limit : point.limits()) {
      if (limit.quantity().equals(quantity)) {
        return limit;
      }
    }
    return null;
  }

  /** Words joined by commas. */
  static String list(List<String> words) {
    return String.join(", ", words);
  }

  /** Quantities that the points have limits for, in order of first appearance. */
  static List<String> quantities(List<Point> points) {
    List<String> names = new ArrayList<>();
    for (Point point : points) {
      for (Limit limit : point.limits()) {
        if (!names.contains(limit.quantity())) {
          names.add(limit.quantity());
        }
      }
    }
    return names;
  }
}
