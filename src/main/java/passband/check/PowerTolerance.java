package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.limit.Rules;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;
import passband.resolve.Values;
import passband.syntax.Amount;
import passband.syntax.LimitExpression.Within;
import passband.syntax.Tree;

/**
 * {@code power-tolerance-on-current}, an error: the percentage that the mode gives for its power,
 * applied to a current or a voltage. As P goes with the square of either, ±20 % of power is −10.6 %
 * and +9.5 % of current.
 */
final class PowerTolerance implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Tree.QuantityLimit output = point.mode() == null ? null : point.mode().output();
        if (output != null && applies(point, limit)) {
          diagnostics
              .say(
                  Code.POWER_TOLERANCE_ON_CURRENT,
                  limit.rule().span(),
                  "this applies the mode's power tolerance to a %s",
                  limit.quantity())
              .note(output.span(), "the mode gives it for power")
              .hint("write 'accept power …, read as %s'", limit.quantity())
              .fix(Rules.asPower(limit.rule(), limit.quantity()));
        }
      }
    }
  }

  /** Whether the rule does so. */
  static boolean applies(Point point, Limit limit) {
    Tree.QuantityLimit output = point.mode() == null ? null : point.mode().output();
    return output != null
        && output.quantity().text().equals("power")
        && samePercentage(limit, output)
        && aimsAtPower(point, limit);
  }

  private static boolean samePercentage(Limit limit, Tree.QuantityLimit output) {
    if (!(limit.rule().limit() instanceof Within rule)
        || !(output.limit() instanceof Within mode)) {
      return false;
    }
    Amount ofRule = rule.first().single();
    Amount ofMode = mode.first().single();
    return ofRule != null
        && ofMode != null
        && Values.isPercent(ofRule)
        && Values.isPercent(ofMode)
        && ofRule.number() != null
        && ofMode.number() != null
        && ofRule.number().equals(ofMode.number());
  }

  private static boolean aimsAtPower(Point point, Limit limit) {
    boolean root = limit.quantity().equals("current") || limit.quantity().equals("voltage");
    boolean read = limit.rule().readAs() != null;
    Real nominal = limit.exact().nominal();
    Real aim = root && !read ? Figures.settingAs(point, limit.quantity()) : null;
    return aim != null && nominal != null && aim.compareTo(nominal) == 0;
  }
}
