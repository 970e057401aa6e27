package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;
import passband.quantity.Unit;

/**
 * {@code rule-looser-than-mode}, an error, and {@code rule-tighter-than-mode}, a warning: a test's
 * rule against what the mode's profile says of the same quantity, where both aim at the same value.
 */
final class RuleAgainstMode implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Mode mode = point.mode();
        Bounds ofMode = limit.ofMode();
        if (mode != null
            && ofMode != null
            && sameAim(limit.computed(), ofMode)
            && !statedOnly(limit)) {
          look(mode, limit, ofMode, diagnostics);
        }
      }
    }
  }

  private static boolean statedOnly(Limit limit) {
    return limit.computed().lower() == null && limit.computed().upper() == null;
  }

  private static boolean sameAim(Bounds rule, Bounds mode) {
    Real one = rule.nominal();
    Real other = mode.nominal();
    return one == null || other == null || one.compareTo(other) == 0;
  }

  private static void look(Mode mode, Limit limit, Bounds ofMode, Diagnostics diagnostics) {
    int low = compare(limit.computed().lower(), ofMode.lower());
    int high = -compare(limit.computed().upper(), ofMode.upper());
    boolean looserBelow = ofMode.lower() != null && (limit.computed().lower() == null || low < 0);
    boolean looserAbove = ofMode.upper() != null && (limit.computed().upper() == null || high < 0);
    if (looserBelow || looserAbove) {
      Fix fromOutput = Fix.replace(limit.written().span(), "from output");
      say(Code.RULE_LOOSER_THAN_MODE, "looser", mode, limit, ofMode, diagnostics)
          .hint("write 'accept … from output', or correct whichever of the two is wrong")
          .fix(fromOutput);
    } else if (low > 0 || high > 0) {
      say(Code.RULE_TIGHTER_THAN_MODE, "tighter", mode, limit, ofMode, diagnostics);
    }
  }

  private static DiagnosticBuilder say(
      Code code, String how, Mode mode, Limit limit, Bounds ofMode, Diagnostics diagnostics) {
    return diagnostics
        .say(
            code,
            limit.rule().span(),
            "this rule is %s than the mode '%s' itself at %s",
            how,
            mode.name().text(),
            limit.id())
        .note(mode.tree().span(), "the mode gives %s", sides(limit.unit(), ofMode));
  }

  private static String sides(Unit unit, Bounds ofMode) {
    Real low = ofMode.lower();
    Real high = ofMode.upper();
    if (low == null) {
      return high == null ? "no limit" : "at most " + Figures.text(high, unit);
    }
    return high == null
        ? "at least " + Figures.text(low, unit)
        : Figures.text(low, unit) + " to " + Figures.text(high, unit);
  }

  private static int compare(@Nullable Real rule, @Nullable Real mode) {
    return rule == null || mode == null ? 0 : rule.compareTo(mode);
  }
}
