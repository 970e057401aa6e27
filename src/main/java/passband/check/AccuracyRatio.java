package passband.check;

import java.util.LinkedHashMap;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer.LoadBank;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/**
 * {@code accuracy-ratio-low}: a tolerance less than four times the expanded uncertainty of the
 * reading. Reported once per rule, at its worst point. Four to one: common practice, no source.
 */
final class AccuracyRatio implements Check {
  private static final Real LEAST = Real.of(Rational.of(4));
  private static final Rational HUNDREDTH = Rational.of(1, 100);

  private record Worst(Limit limit, Real ratio, Point point, int count) {
    /** The worse of the two, the earlier of equals; counts both. */
    Worst and(Worst later) {
      Worst worse = later.ratio.compareTo(ratio) < 0 ? later : this;
      return new Worst(worse.limit, worse.ratio, worse.point, count + later.count);
    }
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Map<Span, Worst> worst = new LinkedHashMap<>();
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Real ratio = limit.ratio();
        if (ratio != null && ratio.compareTo(LEAST) < 0) {
          worst.merge(limit.rule().span(), new Worst(limit, ratio, point, 1), Worst::and);
        }
      }
    }
    worst.forEach((span, one) -> say(span, one, plan, diagnostics));
  }

  private static void say(Span span, Worst one, Plan plan, Diagnostics diagnostics) {
    String points = one.count == 1 ? "" : " (and below 4 to 1 at " + one.count + " points in all)";
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.ACCURACY_RATIO_LOW,
                span,
                "the accuracy ratio is %s to 1 at %s%s",
                one.ratio.floorTo(HUNDREDTH).toFixed(2),
                one.limit.id(),
                points)
            .note(one.point.span(), "the point is here");
    if (one.limit.range() != null) {
      said.note(one.limit.range().span(), "its error is here");
    }
    if (one.limit.range() == null || one.limit.rule().readAs() != null) {
      String at = one.point.loadAt();
      for (LoadBank bank : plan.instruments().loads()) {
        if (at == null || bank.from().owner().equals(at)) {
          said.note(bank.span(), "the load's error is here");
        }
      }
    }
  }
}
