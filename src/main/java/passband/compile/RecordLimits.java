package passband.compile;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Bounds;
import passband.limit.NamedValues;
import passband.limit.Rules;
import passband.plan.RecordLimit;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.resolve.Names;
import passband.syntax.LimitExpression;
import passband.syntax.Step;

/** What a recorded value has to be: limits that no row, mode or stated value bears on. */
final class RecordLimits {
  private final Names names;
  private final Diagnostics diagnostics;

  RecordLimits(Names names, Diagnostics diagnostics) {
    this.names = names;
    this.diagnostics = diagnostics;
  }

  /**
   * The limit of a record; null where it has none, or, with the fault said, where it cannot be
   * worked out.
   *
   * @param unit that it is recorded in; that of a plain number where it names none
   */
  @Nullable RecordLimit of(Step.Record step, Unit unit) {
    LimitExpression limit = step.limit();
    if (limit == null) {
      return null;
    }
    if (limit instanceof LimitExpression.Stated || limit instanceof LimitExpression.Output) {
      diagnostics.say(
          Code.WRONG_KIND,
          limit.span(),
          "a recorded value has no row and no mode to take its limits from: write the values");
      return null;
    }
    Bounds bounds =
        new Rules(
                step.name().text(),
                unit.dimension(),
                null,
                null,
                new NamedValues(names),
                diagnostics)
            .bounds(limit);
    return bounds == null || isBelowZero(bounds, unit, limit) ? null : RecordLimit.of(bounds, unit);
  }

  private boolean isBelowZero(Bounds bounds, Unit unit, LimitExpression limit) {
    boolean below =
        bounds.upper() != null
            && bounds.upper().signum() < 0
            && !QuantityKind.mayBeNegative(unit.dimension());
    if (below) {
      diagnostics.say(
          Code.EMPTY_LIMITS, limit.span(), "the upper limit is below zero: no value would pass");
    }
    return below;
  }
}
