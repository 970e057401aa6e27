package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Rational;

/**
 * {@code too-coarse} and {@code one-point-limits}, warnings: limits with fewer than ten steps of
 * the reading between them, or just one reading that meets both.
 */
final class Resolved implements Check {
  private static final Rational LEAST = Rational.TEN;

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Rational low = limit.printed().lower();
        Rational high = limit.printed().upper();
        if (low == null || high == null) {
          continue;
        }
        Rational steps = high.minus(low).over(limit.resolution());
        if (steps.isZero()) {
          diagnostics.add(
              Diagnostic.of(
                      Code.ONE_POINT_LIMITS,
                      point.span(),
                      "only the reading "
                          + limit.text(low)
                          + " "
                          + limit.unit().printed()
                          + " meets both limits of "
                          + limit.quantity())
                  .note(limit.rule().span(), "the rule is here"));
        } else if (steps.compareTo(LEAST) < 0) {
          diagnostics.add(coarse(point, limit, steps));
        }
      }
    }
  }

  private static Diagnostic coarse(Point point, Limit limit, Rational steps) {
    String step = Figures.text(limit.resolution(), limit.unit());
    Diagnostic fault =
        Diagnostic.of(
                Code.TOO_COARSE,
                point.span(),
                "the limits "
                    + limit.words(limit.printed())
                    + " are only "
                    + steps.toPlain()
                    + " steps of "
                    + step
                    + " apart")
            .note(limit.rule().span(), "the rule is here");
    return limit.range() == null
        ? fault
        : fault.note(limit.range().span(), "the range that covers them is here");
  }
}
