package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Bounds;
import passband.limit.NamedValues;
import passband.limit.Rules;
import passband.plan.RecordLimit;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.resolve.Names;
import passband.resolve.Values;
import passband.syntax.Amount;
import passband.syntax.Amounts;
import passband.syntax.Expression;
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
    if (limit instanceof LimitExpression.Stated
        || limit instanceof LimitExpression.Output
        || limit instanceof LimitExpression.OfDevice) {
      diagnostics.say(
          Code.WRONG_KIND,
          limit.span(),
          "a recorded value has no row and no mode to take its limits from: write the values");
      return null;
    }
    Amount percent = step.unit() == null ? percent(limit) : null;
    if (percent != null) {
      diagnostics
          .say(
              Code.UNIT_MISMATCH,
              percent.span(),
              "%s is a plain number, but this is a percentage",
              step.name().text())
          .hint("write 'in %%' before the limit")
          .fix(Fix.insert("add 'in %'", step.text().span().atEnd(), " in %"));
      return null;
    }
    Bounds bounds =
        Rules.recorded(step.name().text(), unit, new NamedValues(names), diagnostics).bounds(limit);
    return bounds == null || isBelowZero(bounds, unit, limit) ? null : RecordLimit.of(bounds, unit);
  }

  /**
   * A percentage among the ends of a limit; null where there is none. 40 written for 40 % would be
   * taken for a hundred times as much.
   */
  private static @Nullable Amount percent(LimitExpression limit) {
    List<Expression> ends = new ArrayList<>();
    if (limit instanceof LimitExpression.Between between) {
      ends.addAll(List.of(between.lower(), between.upper()));
    } else if (limit instanceof LimitExpression.AtMost most) {
      ends.add(most.upper());
    } else if (limit instanceof LimitExpression.AtLeast least) {
      ends.add(least.lower());
    } else if (limit instanceof LimitExpression.Within within && within.first().of() != null) {
      ends.add(within.first().of());
    }
    for (Expression end : ends) {
      for (Amount amount : Amounts.of(end)) {
        if (Values.isPercent(amount)) {
          return amount;
        }
      }
    }
    return null;
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
