package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.Expression;
import passband.syntax.Expression.Operator;
import passband.syntax.LimitExpression;

/** Acceptances and the expressions in them. */
final class Limits {
  private final Terminals leaves;

  Limits(Terminals leaves) {
    this.leaves = leaves;
  }

  LimitExpression limit(LimitContext limit) {
    if (limit instanceof LimitWithinContext within) {
      return within(within);
    }
    if (limit instanceof LimitStatedContext) {
      return new LimitExpression.Stated(leaves.span(limit));
    }
    if (limit instanceof LimitOutputContext) {
      return new LimitExpression.Output(leaves.span(limit));
    }
    if (limit instanceof LimitDeviceContext) {
      return new LimitExpression.OfDevice(leaves.span(limit));
    }
    if (limit instanceof LimitBetweenContext between) {
      return between(between);
    }
    if (limit instanceof LimitAtMostContext most) {
      return new LimitExpression.AtMost(expression(most.expression()), leaves.span(limit));
    }
    return new LimitExpression.AtLeast(
        expression(((LimitAtLeastContext) limit).expression()), leaves.span(limit));
  }

  private LimitExpression within(LimitWithinContext within) {
    List<ToleranceContext> tolerances = within.tolerance();
    List<ExpressionContext> targets = within.expression();
    int orAt = within.OR() == null ? Integer.MAX_VALUE : within.OR().getSymbol().getTokenIndex();
    Expression first = null;
    Expression second = null;
    for (ExpressionContext target : targets) {
      if (target.start.getTokenIndex() < orAt) {
        first = expression(target);
      } else {
        second = expression(target);
      }
    }
    return new LimitExpression.Within(
        tolerance(tolerances.get(0), first),
        within.OR() == null ? null : tolerance(tolerances.get(1), second),
        within.SMALLER() == null,
        leaves.span(within));
  }

  private LimitExpression.Tolerance tolerance(ToleranceContext tolerance, @Nullable Expression of) {
    if (tolerance instanceof ToleranceApartContext apart) {
      return new LimitExpression.Tolerance(
          List.of(part(apart.part(0))), List.of(part(apart.part(1))), of, leaves.span(tolerance));
    }
    List<LimitExpression.Part> both = new ArrayList<>();
    ((ToleranceSameContext) tolerance).part().forEach(one -> both.add(part(one)));
    return new LimitExpression.Tolerance(both, both, of, leaves.span(tolerance));
  }

  private LimitExpression.Part part(PartContext part) {
    return new LimitExpression.Part(
        part.amount() == null ? null : leaves.amount(part.amount()),
        part.name() == null ? null : leaves.name(part.name()),
        leaves.span(part));
  }

  /** {@code from 179 to 219 mA}: the bare number takes the unit of the other. */
  private LimitExpression between(LimitBetweenContext between) {
    Expression lower = expression(between.expression(0));
    Expression upper = expression(between.expression(1));
    if (lower instanceof Expression.Literal low
        && upper instanceof Expression.Literal high
        && low.amount().unit() == null) {
      lower = new Expression.Literal(low.amount().withUnit(high.amount().unit()));
    }
    return new LimitExpression.Between(lower, upper, leaves.span(between));
  }

  Expression expression(ExpressionContext expression) {
    if (expression instanceof AmountExpressionContext amount) {
      return new Expression.Literal(
          leaves.number(
              amount.NUMBER().getText(),
              amount.NUMBER().getSymbol(),
              leaves.unit(amount.unit()),
              leaves.span(amount)));
    }
    if (expression instanceof NameExpressionContext name) {
      return new Expression.Variable(leaves.name(name.name()));
    }
    if (expression instanceof InnerExpressionContext inner) {
      return expression(inner.expression());
    }
    if (expression instanceof NegativeExpressionContext negative) {
      return new Expression.Negative(expression(negative.expression()), leaves.span(negative));
    }
    if (expression instanceof CallExpressionContext call) {
      List<Expression> arguments = new ArrayList<>();
      call.expression().forEach(a -> arguments.add(expression(a)));
      return new Expression.Call(leaves.name(call.name()), arguments, leaves.span(call));
    }
    return binary(expression);
  }

  private Expression binary(ExpressionContext expression) {
    if (expression instanceof PowerExpressionContext power) {
      return binary(Operator.POWER, power.expression(), power);
    }
    if (expression instanceof ProductExpressionContext product) {
      return binary(
          product.STAR() != null ? Operator.TIMES : Operator.OVER, product.expression(), product);
    }
    SumExpressionContext sum = (SumExpressionContext) expression;
    return binary(sum.PLUS() != null ? Operator.PLUS : Operator.MINUS, sum.expression(), sum);
  }

  private Expression binary(
      Operator operator, List<ExpressionContext> sides, ExpressionContext whole) {
    return new Expression.Binary(
        operator, expression(sides.get(0)), expression(sides.get(1)), leaves.span(whole));
  }
}
