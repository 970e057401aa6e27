package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;
import passband.sequence.Seq;
import passband.syntax.Expression;
import passband.syntax.LimitExpression.AtMost;
import passband.syntax.Tree;

/**
 * {@code peak-against-rms}, a warning: a peak voltage held to the RMS value that power and load
 * give, or an RMS voltage held to the mode's highest peak.
 */
final class PeakAgainstRms implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        if (limit.quantity().equals("peak-voltage") && aimsAtRms(point, limit)) {
          diagnostics.add(
              Diagnostic.of(
                      Code.PEAK_AGAINST_RMS,
                      limit.rule().span(),
                      "a peak voltage is held to the RMS voltage of the power into the load")
                  .hint("RMS is 'voltage'; the peak is higher by the crest factor"));
        } else if (limit.quantity().equals("voltage")) {
          heldToPeak(point, limit, diagnostics);
        }
      }
    }
  }

  private static boolean aimsAtRms(Point point, Limit limit) {
    Real rms = Figures.settingAs(point, "voltage");
    Real nominal = limit.exact().nominal();
    return rms != null && nominal != null && rms.compareTo(nominal) == 0;
  }

  private static void heldToPeak(Point point, Limit limit, Diagnostics diagnostics) {
    Tree.QuantityLimit peak = point.mode() == null ? null : peak(point);
    boolean plain =
        limit.rule().limit() instanceof AtMost most && most.upper() instanceof Expression.Literal;
    Real highest = peak == null ? null : PeakVoltage.of(point.mode());
    if (plain && highest != null && highest.compareTo(limit.exact().upper()) == 0) {
      diagnostics.add(
          Diagnostic.of(
                  Code.PEAK_AGAINST_RMS,
                  limit.rule().span(),
                  "an RMS voltage is held to the mode's highest peak voltage")
              .note(peak.span(), "this is a peak")
              .hint("write 'accept peak-voltage …'"));
    }
  }

  private static Tree.QuantityLimit peak(Point point) {
    return Seq.of(point.mode().limits())
        .filter(l -> l.quantity().text().equals("peak-voltage"))
        .findFirst()
        .orElse(null);
  }
}
