package passband.compile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.Spelling;
import passband.quantity.Rational;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Derive;
import passband.syntax.Expression;
import passband.syntax.Expression.Operator;
import passband.syntax.Functions;
import passband.syntax.Variables;
import passband.syntax.Word;

/**
 * The formula of a value that compares points. What it says of all of them, {@link
 * Derive#FUNCTIONS}, is written out for each with the operators and functions of a formula of one
 * point: {@code max(current)} of two points is {@code max(current-1, current-2)}.
 */
final class OverFormula implements Expression.Visitor<Expression> {
  private static final int OUTSIDE = -1;

  private final int points;
  private final int at;

  private OverFormula(int points, int at) {
    this.points = points;
    this.at = at;
  }

  /** The name of what is read of a quantity at one of the points, counted from 0. */
  static String part(String quantity, int index) {
    return quantity + "-" + (index + 1);
  }

  /** The formula for so many points. */
  static Expression writtenOut(Expression expression, int points) {
    return expression.accept(new OverFormula(points, OUTSIDE));
  }

  @Override
  public Expression literal(Expression.Literal literal) {
    return literal;
  }

  @Override
  public Expression variable(Expression.Variable variable) {
    Word name = variable.name();
    return at == OUTSIDE
        ? variable
        : new Expression.Variable(new Word(part(name.text(), at), name.span()));
  }

  @Override
  public Expression negative(Expression.Negative negative) {
    return new Expression.Negative(negative.inner().accept(this), negative.span());
  }

  @Override
  public Expression binary(Expression.Binary binary) {
    Expression left = binary.left().accept(this);
    Expression right = binary.right().accept(this);
    return new Expression.Binary(binary.operator(), left, right, binary.span());
  }

  @Override
  public Expression call(Expression.Call call) {
    if (at != OUTSIDE || !comparesPoints(call)) {
      List<Expression> arguments = new ArrayList<>();
      call.arguments().forEach(argument -> arguments.add(argument.accept(this)));
      return new Expression.Call(call.function(), arguments, call.span());
    }
    List<Expression> each = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      each.add(call.arguments().get(0).accept(new OverFormula(points, i)));
    }
    return switch (call.function().text()) {
      case "first" -> each.get(0);
      case "last" -> each.get(points - 1);
      case "mean" -> mean(each, call.span());
      case "rise" -> rise(each, call);
      default ->
          points == 1 ? each.get(0) : new Expression.Call(call.function(), each, call.span());
    };
  }

  private static boolean comparesPoints(Expression.Call call) {
    return call.arguments().size() == 1 && Derive.FUNCTIONS.contains(call.function().text());
  }

  private static Expression mean(List<Expression> each, Span span) {
    Expression sum = each.get(0);
    for (Expression next : each.subList(1, each.size())) {
      sum = new Expression.Binary(Operator.PLUS, sum, next, span);
    }
    Rational count = Rational.of(each.size());
    Amount amount = new Amount(count.toPlain(), count, null, span);
    return new Expression.Binary(Operator.OVER, sum, new Expression.Literal(amount), span);
  }

  /** The least rise from one point to the next. */
  private static Expression rise(List<Expression> each, Expression.Call call) {
    List<Expression> rises = new ArrayList<>();
    for (int i = 1; i < each.size(); i++) {
      rises.add(new Expression.Binary(Operator.MINUS, each.get(i), each.get(i - 1), call.span()));
    }
    Word least = new Word("min", call.function().span());
    return rises.size() == 1 ? rises.get(0) : new Expression.Call(least, rises, call.span());
  }

  /** Whether the mean of points counts in it. */
  static boolean hasMean(Expression expression) {
    return Functions.of(expression).contains("mean");
  }

  // ---- what may stand in it ----

  /** What can be read at the points: names, and where those of the test's own are declared. */
  record Readable(Collection<String> names, Map<String, Word> declared) {}

  /** Whether every name stands for a reading and is said of all points; faults are said. */
  static boolean isSound(Derive derive, Readable readings, Names names, Diagnostics diagnostics) {
    if (Variables.of(derive.value()).isEmpty()) {
      diagnostics.say(
          Code.NOT_COMPARABLE, derive.value().span(), "this compares points, but names no reading");
      return false;
    }
    return derive.value().accept(new Soundness(readings, false, names, diagnostics));
  }

  private record Soundness(
      Readable readings, boolean inside, Names occurrences, Diagnostics diagnostics)
      implements Expression.Visitor<Boolean> {
    @Override
    public Boolean literal(Expression.Literal literal) {
      return true;
    }

    @Override
    public Boolean variable(Expression.Variable variable) {
      String name = variable.name().text();
      Collection<String> known = readings.names;
      if (!known.contains(name)) {
        @Nullable String near = Spelling.nearest(name, known);
        DiagnosticBuilder said =
            diagnostics.say(
                Code.UNKNOWN_NAME,
                variable.span(),
                "a comparison of points is calculated from readings, and '%s' is none",
                name);
        said.meant(near, "known here: %s", String.join(", ", known));

        return false;
      }
      occurrences.use(variable.name(), readings.declared.get(name));
      if (!inside) {
        diagnostics
            .say(
                Code.NOT_COMPARABLE,
                variable.span(),
                "'%s' has a value at each of the points that are compared",
                name)
            .hint("say which is meant: %s", "max(" + name + "), or min, mean, first, last, rise")
            .fix(Fix.replace(variable.span(), "max(" + name + ")"));
      }
      return inside;
    }

    @Override
    public Boolean negative(Expression.Negative negative) {
      return negative.inner().accept(this);
    }

    @Override
    public Boolean binary(Expression.Binary binary) {
      boolean left = binary.left().accept(this);
      return binary.right().accept(this) && left;
    }

    @Override
    public Boolean call(Expression.Call call) {
      boolean into = inside || comparesPoints(call);
      boolean sound = true;
      for (Expression argument : call.arguments()) {
        sound &= argument.accept(new Soundness(readings, into, occurrences, diagnostics));
      }
      return sound;
    }
  }
}
