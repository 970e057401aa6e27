package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Bounds;
import passband.limit.Conversion;
import passband.limit.Limit;
import passband.limit.ModeLimits;
import passband.model.Device;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Real;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/**
 * {@code rule-looser-than-mode}, an error, and {@code rule-tighter-than-mode}, a warning: a test's
 * rule against the limit that the outlet or the generator has of the quantity, where the mode has
 * none of its own.
 */
final class RuleAgainstBound implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          Tree.QuantityLimit line = line(plan.device(), run, point, limit);
          Bounds bound = line == null ? null : asRead(line, point, limit);
          if (line != null && bound != null) {
            look(line, bound, limit, diagnostics);
          }
        }
      }
    }
  }

  /** The line that the limit is held against; null where there is none. */
  private static Tree.@Nullable QuantityLimit line(
      Device device, Stage.Run run, Point point, Limit limit) {
    String quantity = limit.rule().quantity() == null ? "" : limit.rule().quantity().text();
    if (limit.written() instanceof LimitExpression.OfDevice) {
      return null;
    }
    if (point.mode() != null) {
      for (Tree.QuantityLimit line : point.mode().limits()) {
        if (line.quantity().text().equals(quantity)) {
          return null;
        }
      }
    }
    return device.bound(run.outlet(), quantity);
  }

  private static @Nullable Bounds asRead(Tree.QuantityLimit line, Point point, Limit limit) {
    Bounds bounds = ModeLimits.bound(line);
    String from = line.quantity().text();
    if (bounds == null || from.equals(limit.quantity())) {
      return bounds;
    }
    Figure load = point.load();
    if (load == null || !Conversion.exists(from, limit.quantity())) {
      return null;
    }
    return bounds.map(x -> Conversion.convert(x, from, limit.quantity(), load.si()));
  }

  private static void look(
      Tree.QuantityLimit line, Bounds bound, Limit limit, Diagnostics diagnostics) {
    boolean looser = limit.exact().looserThan(bound);
    boolean oneSided =
        limit.written() instanceof LimitExpression.AtMost
            || limit.written() instanceof LimitExpression.AtLeast;
    if (!looser && !(oneSided && isTighter(bound, limit.exact()))) {
      return;
    }
    diagnostics
        .say(
            looser ? Code.RULE_LOOSER_THAN_MODE : Code.RULE_TIGHTER_THAN_MODE,
            limit.rule().span(),
            "this rule is %s than the profile's own limit at %s",
            looser ? "looser" : "tighter",
            limit.id())
        .note(line.span(), "the profile gives %s", RuleAgainstMode.sides(limit.unit(), bound))
        .hint("write 'accept … from device', or correct whichever of the two is wrong")
        .fix(Fix.replace(limit.written().span(), "from device"));
  }

  /** Of limits on both sides one may well lie inside a bound that is only there to be kept. */
  private static boolean isTighter(Bounds bound, Bounds exact) {
    Real low = exact.lower();
    Real high = exact.upper();
    boolean below = bound.lower() != null && low != null && low.compareTo(bound.lower()) > 0;
    return below || (bound.upper() != null && high != null && high.compareTo(bound.upper()) < 0);
  }
}
