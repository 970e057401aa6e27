package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
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
    if (looserBelow || looserAbove) {
      Fix fromOutput = Fix.replace(limit.rule().limit().span(), "from output");
      say(Code.RULE_LOOSER_THAN_MODE, "looser", point, limit, diagnostics)
          .hint("write 'accept … from output', or correct whichever of the two is wrong")
          .fix(fromOutput);
    } else if (low > 0 || high > 0) {
      say(Code.RULE_TIGHTER_THAN_MODE, "tighter", point, limit, diagnostics);
    }
  }

  private static DiagnosticBuilder say(
      Code code, String how, Point point, Limit limit, Diagnostics diagnostics) {
    return diagnostics
        .say(
            code,
            limit.rule().span(),
            "this rule is %s than the mode '%s' itself at %s",
            how,
            point.mode().name().text(),
            limit.id())
        .note(point.mode().tree().span(), "the mode gives %s", sides(limit));
  }

  private static String sides(Limit limit) {
    Real low = limit.ofMode().lower();
    Real high = limit.ofMode().upper();
    if (low == null) {
      return "at most " + Figures.text(high, limit.unit());
    }
    return high == null
        ? "at least " + Figures.text(low, limit.unit())
        : Figures.text(low, limit.unit()) + " to " + Figures.text(high, limit.unit());
  }

  private static int compare(Real rule, Real mode) {
    return rule == null || mode == null ? 0 : rule.compareTo(mode);
  }
}
