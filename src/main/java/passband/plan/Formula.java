package passband.plan;

import java.util.ArrayList;
import java.util.List;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;
import passband.syntax.Expression;

/** Writes an expression in the one way, parentheses where they are needed. */
public final class Formula implements Expression.Visitor<String> {
  private static final Formula READABLE = new Formula(false);
  private static final Formula EXACT = new Formula(true);

  private final boolean exact;

  private Formula(boolean exact) {
    this.exact = exact;
  }

  /** The expression as a person would write it. */
  public static String text(Expression expression) {
    return expression.accept(READABLE);
  }

  /** The expression with every amount in SI: the same for the same meaning. */
  public static String exact(Expression expression) {
    return expression.accept(EXACT);
  }

  @Override
  public String literal(Expression.Literal literal) {
    return amount(literal.amount(), exact);
  }

  /** An amount in its own unit, or exactly in SI. */
  static String amount(Amount amount, boolean exact) {
    Unit unit = amount.unit() == null ? Unit.ONE : Units.find(amount.unit().text());
    if (amount.number() == null || unit == null) {
      return amount.span().text();
    }
    if (exact) {
      return amount.number().times(unit.factor())
          + " "
          + unit.dimension().base()
          + (unit.symbol().equals("%") ? " %" : "");
    }
    return amount.unit() == null
        ? amount.number().toPlain()
        : amount.number().toPlain() + " " + unit.symbol();
  }

  @Override
  public String variable(Expression.Variable variable) {
    return variable.name().text();
  }

  @Override
  public String negative(Expression.Negative negative) {
    return "-" + inner(negative.inner(), 3, false);
  }

  @Override
  public String binary(Expression.Binary binary) {
    int level = level(binary);
    boolean power = binary.operator() == Expression.Operator.POWER;
    String sign = power ? "^" : " " + binary.operator().sign() + " ";
    return inner(binary.left(), level, power) + sign + inner(binary.right(), level, !power);
  }

  /** Parentheses round what binds less, or equally on the side where that matters. */
  private String inner(Expression expression, int level, boolean strict) {
    int own = level(expression);
    boolean wrap = own < level || (strict && own == level);
    return wrap ? "(" + expression.accept(this) + ")" : expression.accept(this);
  }

  private static int level(Expression expression) {
    if (expression instanceof Expression.Negative) {
      return 2;
    }
    if (!(expression instanceof Expression.Binary binary)) {
      return 5;
    }
    return switch (binary.operator()) {
      case PLUS, MINUS -> 1;
      case TIMES, OVER -> 2;
      case POWER -> 4;
    };
  }

  @Override
  public String call(Expression.Call call) {
    List<String> arguments = new ArrayList<>();
    call.arguments().forEach(argument -> arguments.add(argument.accept(this)));
    return call.function().text() + "(" + String.join(", ", arguments) + ")";
  }
}
