package passband.limit;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.resolve.Names;
import passband.resolve.Values;
import passband.syntax.Amount;
import passband.syntax.Amounts;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.Variables;
import passband.syntax.Word;

/**
 * What can be said of a limit without a point: each amount has a unit that there is, and those that
 * stand by themselves are of the accepted quantity. In the place of what only a point tells stands
 * 1 of the quantity's unit.
 */
public final class LimitAlone implements LimitExpression.Visitor<LimitExpression> {
  private final Dimension dimension;
  private final Values values;

  private LimitAlone(Dimension dimension, Diagnostics diagnostics) {
    this.dimension = dimension;
    this.values = new Values(diagnostics);
  }

  /**
   * Says what is wrong with a limit wherever it is used.
   *
   * @param kind the quantity that it is a limit of
   */
  public static void check(LimitExpression limit, QuantityKind kind, Diagnostics diagnostics) {
    LimitExpression known = limit.accept(new LimitAlone(kind.dimension(), diagnostics));
    if (known != null) {
      NamedValues none = new NamedValues(new Names());
      new Rules(kind.name(), kind.dimension(), null, null, none, diagnostics).bounds(known);
    }
  }

  /** Null, its units looked at, where it needs a point. */
  private @Nullable Expression known(Expression written) {
    if (Variables.of(written).isEmpty()) {
      return written;
    }
    Amounts.of(written).forEach(values::unitOf);
    return null;
  }

  @Override
  public @Nullable LimitExpression within(LimitExpression.Within within) {
    LimitExpression.Tolerance first = known(within.first());
    LimitExpression.Tolerance second = within.second() == null ? null : known(within.second());
    return new LimitExpression.Within(first, second, within.greater(), within.span());
  }

  private LimitExpression.Tolerance known(LimitExpression.Tolerance written) {
    Expression of = written.of() == null ? null : known(written.of());
    if (of == null && written.of() != null) {
      of = new Expression.Literal(single(written.of()));
    }
    return new LimitExpression.Tolerance(
        amounts(written.up()), amounts(written.down()), of, written.span());
  }

  private Amount single(Expression place) {
    List<Unit> units = Units.of(dimension);
    Word unit = units.isEmpty() ? null : new Word(units.get(0).symbol(), place.span());
    return new Amount("1", Rational.ONE, unit, place.span());
  }

  private static List<LimitExpression.Part> amounts(List<LimitExpression.Part> parts) {
    List<LimitExpression.Part> amounts = new ArrayList<>(parts);
    amounts.removeIf(part -> part.amount() == null);
    return List.copyOf(amounts);
  }

  @Override
  public @Nullable LimitExpression stated(LimitExpression.Stated stated) {
    return null;
  }

  @Override
  public @Nullable LimitExpression output(LimitExpression.Output output) {
    return null;
  }

  @Override
  public @Nullable LimitExpression ofDevice(LimitExpression.OfDevice device) {
    return null;
  }

  @Override
  public @Nullable LimitExpression between(LimitExpression.Between between) {
    Expression lower = known(between.lower());
    Expression upper = known(between.upper());
    if (lower == null) {
      return upper == null ? null : new LimitExpression.AtMost(upper, between.span());
    }
    return upper == null ? new LimitExpression.AtLeast(lower, between.span()) : between;
  }

  @Override
  public @Nullable LimitExpression atMost(LimitExpression.AtMost atMost) {
    return known(atMost.upper()) == null ? null : atMost;
  }

  @Override
  public @Nullable LimitExpression atLeast(LimitExpression.AtLeast atLeast) {
    return known(atLeast.lower()) == null ? null : atLeast;
  }
}
