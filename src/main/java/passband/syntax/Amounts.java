package passband.syntax;

import java.util.ArrayList;
import java.util.List;

/** The amounts that an expression is written with, in its order. */
public final class Amounts implements Expression.Visitor<Void> {
  private final List<Amount> amounts = new ArrayList<>();

  private Amounts() {}

  /** Of an expression. */
  public static List<Amount> of(Expression expression) {
    Amounts amounts = new Amounts();
    expression.accept(amounts);
    return amounts.amounts;
  }

  @Override
  public Void literal(Expression.Literal literal) {
    amounts.add(literal.amount());
    return null;
  }

  @Override
  public Void variable(Expression.Variable variable) {
    return null;
  }

  @Override
  public Void negative(Expression.Negative negative) {
    return negative.inner().accept(this);
  }

  @Override
  public Void binary(Expression.Binary binary) {
    binary.left().accept(this);
    return binary.right().accept(this);
  }

  @Override
  public Void call(Expression.Call call) {
    call.arguments().forEach(argument -> argument.accept(this));
    return null;
  }
}
