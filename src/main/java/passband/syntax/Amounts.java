package passband.syntax;

import java.util.ArrayList;
import java.util.List;

/** The amounts that an expression is written with, in its order. */
public final class Amounts extends EachPart {
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
}
