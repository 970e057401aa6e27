package passband.syntax;

import java.util.List;
import org.jspecify.annotations.NullUnmarked;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/** The second half of an acceptance: what a quantity has to be. */
public sealed interface LimitExpression {
  /** Where it stands. */
  Span span();

  /** Calls the method for this kind. */
  <T> T accept(Visitor<T> visitor);

  /** What to do with each kind. */
  // What a visitor gives may be null or not: each visitor says so itself.
  @NullUnmarked
  interface Visitor<T> {
    T within(Within within);

    T stated(Stated stated);

    T output(Output output);

    T ofDevice(OfDevice device);

    T between(Between between);

    T atMost(AtMost atMost);

    T atLeast(AtLeast atLeast);
  }

  /**
   * A distance to either side of a target.
   *
   * @param up the distance above: the sum of its parts
   * @param down the distance below; the same as {@code up} when one was written
   * @param of the target that percentages are taken of; null when the acceptance's own is meant
   */
  record Tolerance(List<Part> up, List<Part> down, @Nullable Expression of, Span span) {
    /** The only part of the distance above; null where there are several, or it is a column. */
    public @Nullable Amount single() {
      return up.size() == 1 ? up.get(0).amount() : null;
    }
  }

  /**
   * A part of a distance: an amount or a percentage, or a column of the table that holds either.
   *
   * @param amount null for a column
   * @param column null for an amount
   */
  record Part(@Nullable Amount amount, @Nullable Word column, Span span) {}

  /**
   * {@code within 15 % of setting or 1 W, whichever is greater}.
   *
   * @param second null when there is one tolerance
   * @param greater whether the greater of two governs
   */
  record Within(Tolerance first, @Nullable Tolerance second, boolean greater, Span span)
      implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.within(this);
    }
  }

  /** {@code from stated}: the limits printed in the manual are all there is. */
  record Stated(Span span) implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.stated(this);
    }
  }

  /** {@code from output}: the mode's own tolerance. */
  record Output(Span span) implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.output(this);
    }
  }

  /** {@code from device}: what the profile says nearest: of the mode, the outlet, the generator. */
  record OfDevice(Span span) implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.ofDevice(this);
    }
  }

  /** {@code from A to B}. */
  record Between(Expression lower, Expression upper, Span span) implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.between(this);
    }
  }

  /** {@code at most B}. */
  record AtMost(Expression upper, Span span) implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.atMost(this);
    }
  }

  /** {@code at least A}. */
  record AtLeast(Expression lower, Span span) implements LimitExpression {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.atLeast(this);
    }
  }
}
