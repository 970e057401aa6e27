package passband.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Amounts;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;
import passband.syntax.Variables;
import passband.syntax.Word;

/** Works out a rule at a point. Null, with the fault said, when it cannot be. */
public final class Rules implements LimitExpression.Visitor<Bounds> {
  private static final Bounds NONE = new Bounds(null, null, null);

  private final String quantity;
  private final Dimension dimension;
  private final @Nullable Bounds output;
  private final Tree.@Nullable Accept accept;
  private final RowValues columns;
  private final Evaluator evaluator;
  private final @Nullable Unit unit;
  private final Values values;
  private final Diagnostics diagnostics;

  /**
   * @param quantity the name of the accepted quantity, for messages
   * @param dimension its dimension
   * @param output what {@code from output} stands for; null when the mode says nothing of the
   *     quantity
   * @param accept the acceptance that the rule is of; null for a line of a mode
   */
  public Rules(
      String quantity,
      Dimension dimension,
      @Nullable Bounds output,
      Tree.@Nullable Accept accept,
      RowValues columns,
      Diagnostics diagnostics) {
    this(quantity, dimension, null, output, accept, columns, diagnostics);
  }

  private Rules(
      String quantity,
      Dimension dimension,
      @Nullable Unit unit,
      @Nullable Bounds output,
      Tree.@Nullable Accept accept,
      RowValues columns,
      Diagnostics diagnostics) {
    this.quantity = quantity;
    this.dimension = dimension;
    this.unit = unit;
    this.output = output;
    this.accept = accept;
    this.columns = columns;
    this.evaluator = new Evaluator(columns, diagnostics);
    this.values = new Values(diagnostics);
    this.diagnostics = diagnostics;
  }

  /**
   * Of a value that is recorded in a unit.
   *
   * @param unit where it is %, a number without it would be taken for a hundred times as much
   */
  public static Rules recorded(String name, Unit unit, RowValues columns, Diagnostics diagnostics) {
    Unit own = unit.symbol().isEmpty() ? null : unit;
    return new Rules(name, unit.dimension(), own, null, null, columns, diagnostics);
  }

  /**
   * The rule's limits; null when they cannot be worked out; both sides open for stated ones, which
   * are not the rule's to give.
   */
  public @Nullable Bounds bounds(LimitExpression limit) {
    return limit.accept(this);
  }

  @Override
  public Bounds stated(LimitExpression.Stated stated) {
    return NONE;
  }

  @Override
  public @Nullable Bounds output(LimitExpression.Output limit) {
    if (output == null) {
      diagnostics.say(
          Code.MISSING_ITEM,
          limit.span(),
          "the mode has no 'output %s …' line to take the tolerance from",
          quantity);
    }
    return output;
  }

  /** What the profile says in the place of the output: nearest of all that is asked for. */
  @Override
  public @Nullable Bounds ofDevice(LimitExpression.OfDevice limit) {
    if (output == null) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              limit.span(),
              "neither the mode nor the outlet nor the generator has a limit of %s",
              quantity)
          .hint("add '%s at most …' to the outlet or to the device", quantity);
    }
    return output;
  }

  @Override
  public @Nullable Bounds between(LimitExpression.Between between) {
    if (lacksUnit(limitOf(), between.lower(), between.upper())) {
      return null;
    }
    Real lower = checked(between.lower());
    Real upper = checked(between.upper());
    if (lower == null || upper == null) {
      return null;
    }
    if (lower.compareTo(upper) > 0) {
      diagnostics
          .say(Code.REVERSED_RANGE, between.span(), "the lower limit is above the upper limit")
          .hint("write the lower limit first")
          .fix(swapped(between));
      return null;
    }
    return new Bounds(null, lower, upper);
  }

  private static Fix swapped(LimitExpression.Between between) {
    return between.lower() instanceof Expression.Literal low
            && between.upper() instanceof Expression.Literal high
        ? Values.swapped(low.amount(), high.amount())
        : Fix.swap(between.lower().span(), between.upper().span());
  }

  @Override
  public @Nullable Bounds atMost(LimitExpression.AtMost atMost) {
    Real upper = lacksUnit(limitOf(), atMost.upper()) ? null : checked(atMost.upper());
    return upper == null ? null : new Bounds(null, null, upper);
  }

  @Override
  public @Nullable Bounds atLeast(LimitExpression.AtLeast atLeast) {
    Real lower = lacksUnit(limitOf(), atLeast.lower()) ? null : checked(atLeast.lower());
    return lower == null ? null : new Bounds(null, lower, null);
  }

  @Override
  public @Nullable Bounds within(LimitExpression.Within within) {
    Expression target = within.first().of();
    if (target == null && within.second() != null) {
      target = within.second().of();
    }
    if (target == null) {
      sayNoTarget(within);
      return null;
    }
    Real nominal = lacksUnit("the target of " + quantity, target) ? null : checked(target);
    if (nominal == null) {
      return null;
    }
    Real up = distance(within, true, nominal);
    Real down = distance(within, false, nominal);
    return up == null || down == null
        ? null
        : new Bounds(nominal, nominal.minus(down), nominal.plus(up));
  }

  private void sayNoTarget(LimitExpression.Within within) {
    DiagnosticBuilder said =
        diagnostics.say(Code.MISSING_ITEM, within.span(), "this tolerance has no target value");
    if (columns.names().isEmpty()) {
      said.hint("write 'of' and the target after it");
      return;
    }
    said.hint("write 'of setting' after it");
    if (columns.value("setting") != null) {
      Span end = within.first().span().atEnd();
      said.fix(Fix.insert("add 'of setting'", end, " of setting"));
    }
  }

  /** How far above or below the nominal: the first tolerance, or the greater or smaller of two. */
  private @Nullable Real distance(LimitExpression.Within within, boolean up, Real nominal) {
    Real first = distance(within.first(), up, nominal);
    if (within.second() == null || first == null) {
      return first;
    }
    Real second = distance(within.second(), up, nominal);
    if (second == null) {
      return null;
    }
    return within.greater() ? first.max(second) : first.min(second);
  }

  private @Nullable Real distance(LimitExpression.Tolerance tolerance, boolean up, Real nominal) {
    Real sum = Real.ZERO;
    for (LimitExpression.Part part : up ? tolerance.up() : tolerance.down()) {
      Real one =
          part.amount() == null
              ? ofColumn(part, tolerance, nominal)
              : distance(part.amount(), tolerance, nominal);
      if (one == null) {
        return null;
      }
      sum = sum.plus(one);
    }
    return sum;
  }

  /** What a column of the table gives: a share of the target, or a distance. */
  private @Nullable Real ofColumn(
      LimitExpression.Part part, LimitExpression.Tolerance tolerance, Real nominal) {
    Word column = Objects.requireNonNull(part.column(), "a part without an amount is a column");
    Value value = evaluator.value(new Expression.Variable(column));
    if (value == null) {
      return null;
    }
    if (value.real().signum() < 0) {
      sayNegative(columns.row() == null ? part.span() : columns.row());
      return null;
    }
    if (!value.dimension().isNone()) {
      boolean fits = value.dimension().equals(dimension);
      if (!fits) {
        sayMismatch(part.span(), value.dimension());
      }
      return fits ? value.real() : null;
    }
    Real of = tolerance.of() == null ? nominal : checked(tolerance.of());
    return of == null ? null : of.abs().times(value.real());
  }

  private void sayNegative(Span where) {
    diagnostics.say(Code.REVERSED_RANGE, where, "a tolerance must not be negative");
  }

  private @Nullable Real distance(
      Amount amount, LimitExpression.Tolerance tolerance, Real nominal) {
    if (amount.number() != null && amount.number().signum() < 0) {
      sayNegative(amount.span());
      return null;
    }
    String what = "a tolerance on " + quantity;
    if (lacksUnit(what, new Expression.Literal(amount))) {
      return null;
    }
    if (!Values.isPercent(amount)) {
      Rational fixed = values.si(amount, dimension, what);
      return fixed == null ? null : Real.of(fixed);
    }
    Real of = tolerance.of() == null ? nominal : checked(tolerance.of());
    Rational share = values.si(amount);
    return of == null || share == null ? null : of.abs().times(Real.of(share));
  }

  private String limitOf() {
    return unit == null ? quantity : "the limit of " + quantity;
  }

  /** Whether any of them is made of bare numbers where an amount is needed, which is then said. */
  private boolean lacksUnit(String what, Expression... written) {
    List<Amount> bare = new ArrayList<>();
    boolean needed = !dimension.isNone() || unit != null;
    for (Expression one : written) {
      if (needed && isBare(one)) {
        bare.addAll(Amounts.of(one));
      }
    }
    if (bare.isEmpty()) {
      return false;
    }
    values.sayUnitMissing(bare, dimension, unit, what);
    return true;
  }

  private static boolean isBare(Expression written) {
    for (Amount amount : Amounts.of(written)) {
      if (amount.unit() != null) {
        return false;
      }
    }
    return Variables.of(written).isEmpty();
  }

  /** The value of an expression that must be of the accepted quantity's dimension. */
  private @Nullable Real checked(Expression expression) {
    Value value = evaluator.value(expression);
    if (value == null) {
      return null;
    }
    if (value.dimension().equals(dimension)) {
      return value.real();
    }
    sayMismatch(expression.span(), value.dimension());
    return null;
  }

  private void sayMismatch(Span span, Dimension found) {
    DiagnosticBuilder said =
        diagnostics.say(
            Code.UNIT_MISMATCH,
            span,
            "%s is %s, but this is %s",
            quantity,
            dimension.describe(),
            found.describe());
    if (dimension.equals(Dimension.CURRENT) && found.equals(Dimension.POWER)) {
      said.hint("write 'accept power …, read as current' or 'of sqrt(setting / load)'");
      if (accept != null && accept.readAs() == null) {
        said.fix(asPower(accept, quantity));
      }
    }
  }

  /** Where the quantity is written; of {@code accept by} the whole line. */
  public static Span quantitySpan(Tree.Accept accept) {
    return accept.quantity() == null ? accept.span() : accept.quantity().span();
  }

  /** The fix that accepts a power, read as the quantity that was accepted. */
  public static Fix asPower(Tree.Accept accept, String quantity) {
    String read = ", read as " + quantity;
    return Fix.of(
        "accept power" + read,
        new Fix.Edit(quantitySpan(accept), "power"),
        new Fix.Edit(accept.span().atEnd(), read));
  }
}
