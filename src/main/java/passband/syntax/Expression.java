package passband.syntax;

import java.util.List;
import org.jspecify.annotations.NullUnmarked;
import passband.source.Span;

/** A calculation over quantities and a point's columns. */
public sealed interface Expression {
  /** Where it stands. */
  Span span();

  /** Calls the method for this kind. */
  <T> T accept(Visitor<T> visitor);

  /** What to do with each kind; a new kind breaks every visitor until it is handled. */
  // What a visitor gives may be null or not: each visitor says so itself.
  @NullUnmarked
  interface Visitor<T> {
    T literal(Literal literal);

    T variable(Variable variable);

    T negative(Negative negative);

    T binary(Binary binary);

    T call(Call call);
  }

  /** A number with or without a unit. */
  record Literal(Amount amount) implements Expression {
    @Override
    public Span span() {
      return amount.span();
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.literal(this);
    }
  }

  /** A column of the point, or a measured quantity. */
  record Variable(Word name) implements Expression {
    @Override
    public Span span() {
      return name.span();
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.variable(this);
    }
  }

  /** Minus something. */
  record Negative(Expression inner, Span span) implements Expression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.negative(this);
    }
  }

  /** What stands between two expressions. */
  enum Operator {
    PLUS("+"),
    MINUS("-"),
    TIMES("*"),
    OVER("/"),
    POWER("^");

    private final String sign;

    Operator(String sign) {
      this.sign = sign;
    }

    /** As written. */
    public String sign() {
      return sign;
    }
  }

  /** Two expressions with an operator between them. */
  record Binary(Operator operator, Expression left, Expression right, Span span)
      implements Expression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.binary(this);
    }
  }

  /** {@code sqrt}, {@code min}, {@code max} or {@code abs} of something. */
  record Call(Word function, List<Expression> arguments, Span span) implements Expression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.call(this);
    }
  }
}
