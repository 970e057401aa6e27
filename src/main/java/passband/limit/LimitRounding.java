package passband.limit;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * The last step: the guard band taken off, and both ends rounded inward once to the steps of the
 * reading.
 */
final class LimitRounding {
  private final Decision decision;
  private final Diagnostics diagnostics;

  LimitRounding(Decision decision, Diagnostics diagnostics) {
    this.decision = decision;
    this.diagnostics = diagnostics;
  }

  /** The tolerance limits themselves, on the steps of the reading. */
  static Limit.Rounded rounded(Bounds exact, Rational step) {
    return new Limit.Rounded(
        exact.lower() == null ? null : exact.lower().ceilingTo(step),
        exact.upper() == null ? null : exact.upper().floorTo(step));
  }

  /** What a reading is compared with: the tolerance limits, moved inward by the guard band. */
  Limit.Rounded accepting(Bounds exact, ReadQuantity read, @Nullable Real ratio) {
    Uncertainty uncertainty = read.uncertainty();
    Rational guard = decision.guard(ratio);
    return guard.isZero() || uncertainty == null
        ? rounded(exact, read.resolution())
        : rounded(guarded(exact, uncertainty, guard), read.resolution());
  }

  private Bounds guarded(Bounds exact, Uncertainty uncertainty, Rational guard) {
    Real lower = exact.lower();
    Real upper = exact.upper();
    return new Bounds(
        null,
        lower == null ? null : lower.plus(uncertainty.expanded(lower, guard)),
        upper == null ? null : upper.minus(uncertainty.expanded(upper, guard)));
  }

  /** Whether a reading can meet a limit; if not, it has been said. */
  boolean isUsable(Limit limit, LimitRequest request) {
    Real lower = limit.exact().lower();
    Real upper = limit.exact().upper();
    if (lower != null && upper != null && limit.printed().isEmpty()) {
      DiagnosticBuilder said =
          diagnostics
              .say(
                  Code.EMPTY_LIMITS,
                  request.accept().span(),
                  "no reading can meet the limits %s to %s at %s",
                  limit.unit().rounded(lower),
                  limit.unit().rounded(upper),
                  request.point().id())
              .note(request.point().span(), "the point is here");
      if (limit.range() != null) {
        said.note(limit.range().span(), "the resolution of the reading is here");
      }
      return false;
    }
    if (limit.accept().isEmpty()) {
      DiagnosticBuilder said =
          diagnostics
              .say(
                  Code.NOTHING_ACCEPTED,
                  request.accept().span(),
                  "the guard band leaves no acceptance interval at %s",
                  request.point().id())
              .note(request.point().span(), "the point is here")
              .hint("use a more accurate analyzer or another decision rule");
      if (limit.range() != null) {
        said.note(limit.range().span(), "the analyzer's error is here");
      }
      return false;
    }
    return true;
  }
}
