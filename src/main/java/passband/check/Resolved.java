package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
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
          diagnostics
              .say(
                  Code.ONE_POINT_LIMITS,
                  point.span(),
                  "only the reading %s %s meets both limits of %s",
                  limit.text(low),
                  limit.unit().printed(),
                  limit.quantity())
              .note(limit.rule().span(), "the rule is here");
        } else if (steps.compareTo(LEAST) < 0) {
          sayCoarse(point, limit, steps, diagnostics);
        }
      }
    }
  }

  private static void sayCoarse(Point point, Limit limit, Rational steps, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.TOO_COARSE,
                point.span(),
                "the limits %s are only %s steps of %s apart",
                limit.words(limit.printed()),
                steps.toPlain(),
                Figures.text(limit.resolution(), limit.unit()))
            .note(limit.rule().span(), "the rule is here");
    if (limit.range() != null) {
      said.note(limit.range().span(), "the range that covers them is here");
    }
  }
}
