package passband.check;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;

/**
 * {@code limits-fall} and {@code limits-copied}: limits that fall while the setting rises, and
 * stated limits, both or one of them, that are the same at two settings, or one of them at two
 * loads of a load curve. Points are compared within one test, mode and other settings.
 */
final class LimitOrder implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Collection<List<Point>> families = families(run.points());
      Collection<List<Point>> curves = curves(run.points());
      for (String quantity : Figures.quantities(bySetting(run.points()))) {
        for (List<Point> family : families) {
          for (int i = 1; i < family.size(); i++) {
            compare(family.get(i - 1), family.get(i), quantity, diagnostics);
          }
        }
        for (List<Point> curve : curves) {
          for (int i = 1; i < curve.size(); i++) {
            compareLoads(curve.get(i - 1), curve.get(i), quantity, diagnostics);
          }
        }
      }
    }
  }

  private static List<Point> bySetting(List<Point> all) {
    List<Point> points = new ArrayList<>(all);
    points.removeIf(point -> point.setting() == null);
    points.sort((one, other) -> setting(one).si().compareTo(setting(other).si()));
    return points;
  }

  /** Points of one mode, load and other settings each, by their setting. */
  static Collection<List<Point>> families(List<Point> all) {
    Map<List<Object>, List<Point>> families = new LinkedHashMap<>();
    for (Point point : bySetting(all)) {
      List<Object> family = new ArrayList<>();
      family.add(point.mode() == null ? "" : point.mode().name().text());
      family.add(String.valueOf(point.loadText()));
      family.add(point.extras());
      families.computeIfAbsent(family, f -> new ArrayList<>()).add(point);
    }
    return families.values();
  }

  /** Points of one mode, setting and other settings each, by their load. */
  static Collection<List<Point>> curves(List<Point> all) {
    List<Point> points = new ArrayList<>(all);
    points.removeIf(point -> point.load() == null);
    points.sort((one, other) -> load(one).si().compareTo(load(other).si()));
    Map<List<Object>, List<Point>> curves = new LinkedHashMap<>();
    for (Point point : points) {
      List<Object> curve = new ArrayList<>();
      curve.add(point.mode() == null ? "" : point.mode().name().text());
      curve.add(point.setting() == null ? "" : point.setting().si());
      curve.add(point.extras());
      curves.computeIfAbsent(curve, c -> new ArrayList<>()).add(point);
    }
    return curves.values();
  }

  /** Of a point that has one. */
  private static Figure setting(Point point) {
    return Objects.requireNonNull(point.setting(), "a point without a setting");
  }

  /** Of a point that has one. */
  private static Figure load(Point point) {
    return Objects.requireNonNull(point.load(), "a point without a load");
  }

  private static void compare(Point lower, Point higher, String quantity, Diagnostics diagnostics) {
    Limit a = Figures.limit(lower, quantity);
    Limit b = Figures.limit(higher, quantity);
    if (a == null || b == null || setting(lower).si().equals(setting(higher).si())) {
      return;
    }
    boolean falls =
        falls(a.printed().lower(), b.printed().lower())
            || falls(a.printed().upper(), b.printed().upper());
    if (falls) {
      diagnostics
          .say(
              Code.LIMITS_FALL,
              higher.span(),
              "the limits of %s fall while the setting rises: %s at %s",
              quantity,
              b.words(b.printed()),
              setting(higher).text())
          .note(lower.span(), "%s at %s", a.words(a.printed()), setting(lower).text());
    } else if (areStatedPairs(a, b)) {
      boolean both = same(a.printed(), b.printed());
      String side = both ? "limits" : copiedSide(a, b);
      if (side != null) {
        String is = both ? "are" : "is";
        sayCopied(
            side,
            is,
            at(higher, setting(higher)),
            at(lower, setting(lower)),
            quantity,
            diagnostics);
      }
    }
  }

  /** Both limits may well be the same at two loads, where the curve is flat; one of them is not. */
  private static void compareLoads(
      Point lower, Point higher, String quantity, Diagnostics diagnostics) {
    Limit a = Figures.limit(lower, quantity);
    Limit b = Figures.limit(higher, quantity);
    boolean other = !load(lower).si().equals(load(higher).si());
    String side =
        other && a != null && b != null && areStatedPairs(a, b) && !same(a.printed(), b.printed())
            ? copiedSide(a, b)
            : null;
    if (side != null) {
      sayCopied(
          side, "is", at(higher, load(higher)), at(lower, load(lower)), quantity, diagnostics);
    }
  }

  private static boolean areStatedPairs(Limit a, Limit b) {
    boolean stated = a.source() == Limit.Source.STATED && b.source() == Limit.Source.STATED;
    return stated && a.printed().lower() != null && a.printed().upper() != null;
  }

  private static @Nullable String copiedSide(Limit a, Limit b) {
    if (Objects.equals(a.printed().lower(), b.printed().lower())) {
      return "lower limit";
    }
    return Objects.equals(a.printed().upper(), b.printed().upper()) ? "upper limit" : null;
  }

  /** A row and what it differs by from the other. */
  private record At(Point point, String text) {}

  private static At at(Point point, Figure figure) {
    return new At(point, figure.text());
  }

  private static void sayCopied(
      String what, String is, At row, At other, String quantity, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LIMITS_COPIED,
            row.point.span(),
            "the stated %s of %s at %s %s the same as at %s",
            what,
            quantity,
            row.text,
            is,
            other.text)
        .note(other.point.span(), "that row is here")
        .hint("check the row against the manual");
  }

  private static boolean same(Limit.Rounded a, Limit.Rounded b) {
    return Objects.equals(a.lower(), b.lower()) && Objects.equals(a.upper(), b.upper());
  }

  /** A fall by a hundred times or more is a slip of the prefix and said as such. */
  private static boolean falls(@Nullable Rational before, @Nullable Rational after) {
    return before != null
        && after != null
        && after.compareTo(before) < 0
        && after.times(Rational.HUNDRED).compareTo(before) > 0;
  }
}
