package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;

/**
 * {@code rule-looser-than-mode}, an error, and {@code rule-tighter-than-mode}, a warning: a test's
 * rule against what the mode's profile says of the same quantity, where both aim at the same value.
 */
final class RuleAgainstMode implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        if (limit.ofMode() != null
            && sameAim(limit.computed(), limit.ofMode())
            && !statedOnly(limit)) {
          look(point, limit, diagnostics);
        }
      }
    }
  }

  private static boolean statedOnly(Limit limit) {
    return limit.computed().lower() == null && limit.computed().upper() == null;
  }

  private static boolean sameAim(Bounds rule, Bounds mode) {
    boolean both = rule.nominal() != null && mode.nominal() != null;
    return !both || rule.nominal().compareTo(mode.nominal()) == 0;
  }

  private static void look(Point point, Limit limit, Diagnostics diagnostics) {
    int low = compare(limit.computed().lower(), limit.ofMode().lower());
    int high = -compare(limit.computed().upper(), limit.ofMode().upper());
    boolean looserBelow =
        limit.ofMode().lower() != null && (limit.computed().lower() == null || low < 0);
    boolean looserAbove =
        limit.ofMode().upper() != null && (limit.computed().upper() == null || high < 0);
    String mode = "'" + point.mode().name().text() + "'";
    if (looserBelow || looserAbove) {
      diagnostics.add(
          Diagnostic.of(
                  Code.RULE_LOOSER_THAN_MODE,
                  limit.rule().span(),
                  "this rule is looser than the mode " + mode + " itself at " + limit.id())
              .note(point.mode().tree().span(), "the mode gives " + sides(limit))
              .hint("write 'accept … from output', or mend whichever of the two is wrong"));
    } else if (low > 0 || high > 0) {
      diagnostics.add(
          Diagnostic.of(
                  Code.RULE_TIGHTER_THAN_MODE,
                  limit.rule().span(),
                  "this rule is tighter than the mode " + mode + " itself at " + limit.id())
              .note(point.mode().tree().span(), "the mode gives " + sides(limit)));
    }
  }

  private static String sides(Limit limit) {
    String low =
        limit.ofMode().lower() == null
            ? "no lower limit"
            : Figures.text(limit.ofMode().lower(), limit.unit());
    String high =
        limit.ofMode().upper() == null
            ? "no upper limit"
            : Figures.text(limit.ofMode().upper(), limit.unit());
    return low + " to " + high;
  }

  private static int compare(Real rule, Real mode) {
    return rule == null || mode == null ? 0 : rule.compareTo(mode);
  }
}
