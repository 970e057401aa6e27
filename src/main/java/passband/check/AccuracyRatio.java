package passband.check;

import java.util.LinkedHashMap;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/**
 * {@code accuracy-ratio-low}, a warning: a tolerance less than four times the expanded uncertainty
 * of the reading. Said once a rule, for its worst point. Four to one: common practice, no source.
 */
final class AccuracyRatio implements Check {
  private static final Real LEAST = Real.of(Rational.of(4));

  private record Worst(Limit limit, Point point, int count) {}

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Map<Span, Worst> worst = new LinkedHashMap<>();
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        if (limit.ratio() != null && limit.ratio().compareTo(LEAST) < 0) {
          Worst before = worst.get(limit.rule().span());
          boolean worse = before == null || limit.ratio().compareTo(before.limit.ratio()) < 0;
          int count = before == null ? 1 : before.count + 1;
          worst.put(
              limit.rule().span(),
              worse
                  ? new Worst(limit, point, count)
                  : new Worst(before.limit, before.point, count));
        }
      }
    }
    worst.forEach((span, one) -> diagnostics.add(fault(span, one)));
  }

  private static Diagnostic fault(Span span, Worst one) {
    String ratio = one.limit.ratioText();
    String points = one.count == 1 ? "" : " (and below 4 at " + one.count + " points in all)";
    Diagnostic fault =
        Diagnostic.of(
                Code.ACCURACY_RATIO_LOW,
                span,
                "the accuracy ratio is " + ratio + " to 1 at " + one.limit.id() + points)
            .note(one.point.span(), "the point is here");
    return one.limit.range() == null
        ? fault
        : fault.note(one.limit.range().span(), "the analyzer's error is here");
  }
}
