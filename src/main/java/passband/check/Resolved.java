package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * {@code limit-below-step}, an error: a single upper limit that is less than one step of the
 * reading. {@code too-coarse} and {@code one-point-limits}: limits with fewer than ten steps of the
 * reading between them, or just one reading that meets both.
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
          belowStep(point, limit, diagnostics);
          continue;
        }
        Rational steps = high.minus(low).over(limit.resolution());
        if (steps.isZero()) {
          sayOnePoint(point, limit, low, diagnostics);
        } else if (steps.compareTo(LEAST) < 0) {
          sayCoarse(point, limit, steps, diagnostics);
        }
      }
    }
  }

  /** Only a reading of zero would pass, and zero is read up to half a step. */
  private static void belowStep(Point point, Limit limit, Diagnostics diagnostics) {
    Real upper = limit.exact().upper();
    QuantityKind kind = QuantityKind.find(limit.quantity());
    boolean signed = kind != null && !kind.nonNegative();
    if (upper == null || signed || upper.compareTo(Real.of(limit.resolution())) >= 0) {
      return;
    }
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.LIMIT_BELOW_STEP,
                point.span(),
                "the upper limit of %s, %s, is below one step of the reading, %s",
                limit.quantity(),
                Figures.text(upper, limit.unit()),
                Figures.text(limit.resolution(), limit.unit()))
            .note(limit.rule().span(), "the rule is here");
    range(said, limit, "the range that covers it is here");
    said.hint("check the limit and its unit, or measure with a finer resolution");
  }

  private static void sayOnePoint(
      Point point, Limit limit, Rational only, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.ONE_POINT_LIMITS,
                point.span(),
                "only the reading %s %s meets both limits of %s",
                limit.text(only),
                limit.unit().printed(),
                limit.quantity())
            .note(limit.rule().span(), "the rule is here");
    range(said, limit, "the range that covers it is here");
  }

  private static void range(DiagnosticBuilder said, Limit limit, String words) {
    if (limit.range() != null) {
      said.note(limit.range().span(), words);
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
    range(said, limit, "the range that covers them is here");
  }
}
