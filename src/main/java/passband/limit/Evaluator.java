package passband.limit;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Derive;
import passband.syntax.Expression;
import passband.syntax.Word;

/**
 * Works out an expression at a point, its dimension with it. Null, with the fault said, when it has
 * no value.
 */
public final class Evaluator implements Expression.Visitor<Value> {
  private static final List<String> FUNCTIONS = List.of("sqrt", "min", "max", "abs");
  private static final Rational HALF = Rational.of(1, 2);

  private final RowValues columns;
  private final Values values;
  private final Diagnostics diagnostics;

  /** At a point with these columns. */
  public Evaluator(RowValues columns, Diagnostics diagnostics) {
    this.columns = columns;
    this.values = new Values(diagnostics);
    this.diagnostics = diagnostics;
  }

  /** The expression's value. */
  public @Nullable Value value(Expression expression) {
    return expression.accept(this);
  }

  @Override
  public @Nullable Value literal(Expression.Literal literal) {
    Unit unit = values.unitOf(literal.amount());
    Rational si = unit == null ? null : values.si(literal.amount());
    return unit == null || si == null ? null : Value.of(si, unit.dimension());
  }

  @Override
  public @Nullable Value variable(Expression.Variable variable) {
    String name = variable.name().text();
    Value value = columns.value(variable.name());
    if (value == null) {
      String why = columns.whyNone(name);
      DiagnosticBuilder said = why == null ? sayUnknown(variable) : sayNone(variable, why);
      if (columns.row() != null) {
        said.note(columns.row(), "at this row");
      }
    }
    return value;
  }

  private DiagnosticBuilder sayUnknown(Expression.Variable variable) {
    String name = variable.name().text();
    DiagnosticBuilder said =
        diagnostics.say(
            Code.UNKNOWN_NAME,
            variable.span(),
            "there is no column or quantity '%s' at this point",
            name);
    if (!columns.names().isEmpty()) {
      said.meant(
          Spelling.nearest(name, columns.names()),
          "known here: %s",
          String.join(", ", columns.names()));
    }
    return said;
  }

  private DiagnosticBuilder sayNone(Expression.Variable variable, String why) {
    return diagnostics
        .say(
            Code.NO_LOAD,
            variable.span(),
            "there is no '%s' to calculate with: %s",
            variable.name().text(),
            why)
        .hint("give the limits as amounts, or put the row into a test of its own");
  }

  @Override
  public @Nullable Value negative(Expression.Negative negative) {
    Value inner = value(negative.inner());
    return inner == null ? null : new Value(inner.real().negate(), inner.dimension());
  }

  @Override
  public @Nullable Value binary(Expression.Binary binary) {
    Value left = value(binary.left());
    Value right = value(binary.right());
    return left == null || right == null ? null : sized(combined(left, right, binary), binary);
  }

  private @Nullable Value combined(Value left, Value right, Expression.Binary binary) {
    return switch (binary.operator()) {
      case PLUS ->
          alike(left, right, binary)
              ? new Value(left.real().plus(right.real()), left.dimension())
              : null;
      case MINUS ->
          alike(left, right, binary)
              ? new Value(left.real().minus(right.real()), left.dimension())
              : null;
      case TIMES ->
          new Value(left.real().times(right.real()), left.dimension().times(right.dimension()));
      case OVER -> over(left, right, binary);
      case POWER -> power(left, right, binary);
    };
  }

  /** A value whose size makes sense; null, with the fault said, where it does not. */
  private @Nullable Value sized(@Nullable Value value, Expression whole) {
    String fault = value == null ? null : ValueSize.fault(value.real());
    if (fault != null) {
      sayImpossible(whole, fault);
      return null;
    }
    return value;
  }

  private void sayImpossible(Expression where, String what) {
    DiagnosticBuilder said = diagnostics.say(Code.IMPOSSIBLE_EXPRESSION, where.span(), "%s", what);
    Span row = columns.row();
    if (row != null) {
      said.note(row, "at this point");
    }
  }

  private boolean alike(Value left, Value right, Expression whole) {
    if (left.dimension().equals(right.dimension())) {
      return true;
    }
    diagnostics.say(
        Code.UNIT_MISMATCH,
        whole.span(),
        "%s and %s cannot be combined",
        left.dimension().describe(),
        right.dimension().describe());
    return false;
  }

  private @Nullable Value over(Value left, Value right, Expression.Binary binary) {
    if (right.real().signum() == 0) {
      sayImpossible(binary, "division by zero");
      return null;
    }
    return new Value(left.real().over(right.real()), left.dimension().over(right.dimension()));
  }

  private @Nullable Value power(Value base, Value exponent, Expression.Binary binary) {
    boolean plain = exponent.dimension().isNone() && exponent.real().isRational();
    Rational times = plain ? exponent.real().rational() : null;
    if (times != null && times.equals(HALF)) {
      return root(base, binary);
    }
    if (times == null || !times.isInteger() || times.abs().compareTo(Rational.of(8)) > 0) {
      sayImpossible(binary.right(), "the exponent must be a whole number from -8 to 8, or 0.5");
      return null;
    }
    int n = times.numerator().intValueExact();
    if (n < 0 && base.real().signum() == 0) {
      sayImpossible(binary, "division by zero");
      return null;
    }
    return new Value(base.real().pow(n), base.dimension().pow(n));
  }

  private @Nullable Value root(Value of, Expression whole) {
    Dimension dimension = of.dimension().root();
    if (dimension == null) {
      diagnostics.say(
          Code.UNIT_MISMATCH,
          whole.span(),
          "the square root of %s is not a quantity",
          of.dimension().describe());
      return null;
    }
    if (of.real().signum() < 0) {
      sayImpossible(whole, "square root of a negative value");
      return null;
    }
    return new Value(of.real().sqrt(), dimension);
  }

  @Override
  public @Nullable Value call(Expression.Call call) {
    String name = call.function().text();
    if (!FUNCTIONS.contains(name)) {
      sayUnknown(call.function());
      return null;
    }
    List<Value> arguments = new ArrayList<>();
    for (Expression argument : call.arguments()) {
      arguments.add(value(argument));
    }
    if (arguments.contains(null) || !countFits(call, name, arguments.size())) {
      return null;
    }
    return switch (name) {
      case "sqrt" -> root(arguments.get(0), call);
      case "abs" -> new Value(arguments.get(0).real().abs(), arguments.get(0).dimension());
      default -> extreme(name.equals("max"), arguments, call);
    };
  }

  private void sayUnknown(Word function) {
    diagnostics
        .say(Code.UNKNOWN_NAME, function.span(), "there is no function '%s'", function.text())
        .meant(
            Spelling.nearest(function.text(), FUNCTIONS),
            Derive.FUNCTIONS.contains(function.text())
                ? "'" + function.text() + "' compares points: add 'over COLUMN' to a 'derive' line"
                : "the functions are sqrt, min, max and abs");
  }

  private boolean countFits(Expression.Call call, String name, int count) {
    boolean one = name.equals("sqrt") || name.equals("abs");
    if (one ? count == 1 : count >= 2) {
      return true;
    }
    diagnostics.say(
        Code.SYNTAX,
        call.span(),
        "'%s' takes %s",
        name,
        one ? "one argument" : "two or more arguments");
    return false;
  }

  private @Nullable Value extreme(boolean greatest, List<Value> arguments, Expression whole) {
    Value best = arguments.get(0);
    for (Value next : arguments.subList(1, arguments.size())) {
      if (!alike(best, next, whole)) {
        return null;
      }
      Real real = greatest ? best.real().max(next.real()) : best.real().min(next.real());
      best = new Value(real, best.dimension());
    }
    return best;
  }
}
