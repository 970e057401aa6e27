package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Limit;
import passband.limit.Rules;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;
import passband.syntax.Expression;
import passband.syntax.LimitExpression.AtMost;
import passband.syntax.Tree;

/**
 * {@code peak-against-rms}: a peak voltage compared with the RMS value that power and load give, or
 * an RMS voltage with the mode's highest peak.
 */
final class PeakAgainstRms implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        if (limit.quantity().equals("peak-voltage") && aimsAtRms(point, limit)) {
          diagnostics
              .say(
                  Code.PEAK_AGAINST_RMS,
                  limit.rule().span(),
                  "a peak voltage is compared with an RMS limit")
              .hint("the RMS value is 'voltage'; the peak is higher by the crest factor")
              .fix(accepting("voltage", limit.rule()));
        } else if (limit.quantity().equals("voltage")) {
          againstPeak(plan.device(), point, limit, diagnostics);
        }
      }
    }
  }

  private static boolean aimsAtRms(Point point, Limit limit) {
    Real rms = Figures.settingAs(point, "voltage");
    Real nominal = limit.exact().nominal();
    return rms != null && nominal != null && rms.compareTo(nominal) == 0;
  }

  private static Fix accepting(String quantity, Tree.Accept rule) {
    Fix.Edit edit = new Fix.Edit(Rules.quantitySpan(rule), quantity);
    return Fix.of("accept " + quantity, edit);
  }

  private static void againstPeak(
      Device device, Point point, Limit limit, Diagnostics diagnostics) {
    Mode mode = point.mode();
    Tree.QuantityLimit peak = mode == null ? null : peak(mode);
    Real upper = limit.exact().upper();
    boolean plain =
        limit.rule().limit() instanceof AtMost most && most.upper() instanceof Expression.Literal;
    Real highest = mode == null ? null : PeakVoltage.of(device, mode);
    if (plain && peak != null && highest != null && upper != null && highest.equals(upper)) {
      diagnostics
          .say(
              Code.PEAK_AGAINST_RMS,
              limit.rule().span(),
              "an RMS voltage is compared with the mode's peak voltage limit")
          .note(peak.span(), "this is a peak value")
          .hint("write 'accept peak-voltage …'")
          .fix(accepting("peak-voltage", limit.rule()));
    }
  }

  private static Tree.@Nullable QuantityLimit peak(Mode mode) {
    for (Tree.QuantityLimit limit : mode.limits()) {
      if (limit.quantity().text().equals("peak-voltage")) {
        return limit;
      }
    }
    return null;
  }
}
