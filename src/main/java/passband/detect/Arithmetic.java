package passband.detect;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Expression;

/**
 * A formula in doubles, in SI: at readings, and between what it can lie with its slopes when each
 * reading lies anywhere in an interval. What has no value is not a number.
 */
abstract sealed class Arithmetic {
  /** At readings. */
  abstract double at(double[] readings);

  /** Over intervals of the readings. */
  abstract Range over(Between[] readings);

  /** An interval; of what has no value somewhere, all numbers and none: see {@link #isDefined}. */
  record Between(double low, double high) {
    static final Between NOWHERE = new Between(Double.NaN, Double.NaN);
    static final Between ZERO = new Between(0, 0);

    static Between of(double one) {
      return new Between(one, one);
    }

    /** Whether there is a value everywhere. */
    boolean isDefined() {
      return Double.isFinite(low) && Double.isFinite(high);
    }

    Between plus(Between other) {
      return new Between(low + other.low, high + other.high);
    }

    Between minus(Between other) {
      return new Between(low - other.high, high - other.low);
    }

    Between times(Between other) {
      double a = low * other.low;
      double b = low * other.high;
      double c = high * other.low;
      double d = high * other.high;
      return new Between(
          Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)));
    }

    Between inverse() {
      return low <= 0 && high >= 0 ? NOWHERE : new Between(1 / high, 1 / low);
    }

    Between root() {
      return low <= 0 ? NOWHERE : new Between(Math.sqrt(low), Math.sqrt(high));
    }

    Between hull(Between other) {
      return new Between(Math.min(low, other.low), Math.max(high, other.high));
    }

    /** What both hold, where there is a value; this one where the other has none somewhere. */
    Between common(Between other) {
      return isDefined() && other.isDefined()
          ? new Between(Math.max(low, other.low), Math.min(high, other.high))
          : this;
    }

    /** The least distance from zero. */
    double least() {
      return low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
    }

    double end(boolean most) {
      return most ? most() : least();
    }

    /** The greatest distance from zero. */
    double most() {
      return Math.max(Math.abs(low), Math.abs(high));
    }
  }

  /** A value and its slopes by each reading, over intervals. */
  record Range(Between value, Between[] slopes) {
    private Range with(Between value, Between factor) {
      Between[] moved = new Between[slopes.length];
      for (int i = 0; i < moved.length; i++) {
        moved[i] = slopes[i].times(factor);
      }
      return new Range(value, moved);
    }

    private Range plus(Range other, Between value) {
      Between[] sum = new Between[slopes.length];
      for (int i = 0; i < sum.length; i++) {
        sum[i] = slopes[i].plus(other.slopes[i]);
      }
      return new Range(value, sum);
    }

    private Range negated() {
      return with(Between.ZERO.minus(value), Between.of(-1));
    }

    private Range times(Range other) {
      return with(value, other.value).plus(other.with(value, value), value.times(other.value));
    }

    private Range power(int n) {
      if (n < 0) {
        Between inverse = value.inverse();
        return with(inverse, Between.ZERO.minus(inverse.times(inverse))).power(-n);
      }
      Range power = constant(1, slopes.length);
      for (int i = 0; i < n; i++) {
        power = power.times(this);
      }
      return power;
    }

    private Range root() {
      Between root = value.root();
      return with(root, root.inverse().times(Between.of(0.5)));
    }

    private Range hull(Range other, Between value) {
      Between[] both = new Between[slopes.length];
      for (int i = 0; i < both.length; i++) {
        both[i] = slopes[i].hull(other.slopes[i]);
      }
      return new Range(value, both);
    }

    private static Range constant(double value, int readings) {
      Between[] none = new Between[readings];
      Arrays.fill(none, Between.ZERO);
      return new Range(Between.of(value), none);
    }
  }

  /**
   * Of a formula.
   *
   * @param names of the readings, in their order
   * @param constants by name, in SI: the setting and the load; the load is a reading like any other
   *     where it is among the names
   * @return null where something in it has no meaning here
   */
  static @Nullable Arithmetic of(
      Expression formula, List<String> names, Map<String, Double> constants) {
    return formula.accept(new Reader(names, constants));
  }

  private static final class Constant extends Arithmetic {
    private final double value;

    Constant(double value) {
      this.value = value;
    }

    @Override
    double at(double[] readings) {
      return value;
    }

    @Override
    Range over(Between[] readings) {
      return Range.constant(value, readings.length);
    }
  }

  private static final class Reading extends Arithmetic {
    private final int index;

    Reading(int index) {
      this.index = index;
    }

    @Override
    double at(double[] readings) {
      return readings[index];
    }

    @Override
    Range over(Between[] readings) {
      Range range = Range.constant(0, readings.length);
      range.slopes[index] = Between.of(1);
      return new Range(readings[index], range.slopes);
    }
  }

  private static final class Pair extends Arithmetic {
    private final Expression.Operator operator;
    private final Arithmetic left;
    private final Arithmetic right;

    Pair(Expression.Operator operator, Arithmetic left, Arithmetic right) {
      this.operator = operator;
      this.left = left;
      this.right = right;
    }

    @Override
    double at(double[] readings) {
      double a = left.at(readings);
      double b = right.at(readings);
      return switch (operator) {
        case PLUS -> a + b;
        case MINUS -> a - b;
        case TIMES -> a * b;
        case OVER -> b == 0 ? Double.NaN : a / b;
        case POWER -> b == 0.5 ? root(a) : Math.pow(a, b);
      };
    }

    @Override
    Range over(Between[] readings) {
      Range a = left.over(readings);
      Range b = right.over(readings);
      return switch (operator) {
        case PLUS -> a.plus(b, a.value.plus(b.value));
        case MINUS -> a.plus(b.negated(), a.value.minus(b.value));
        case TIMES -> a.times(b);
        case OVER -> a.times(b.power(-1));
        case POWER -> b.value.low == 0.5 ? a.root() : a.power((int) Math.rint(b.value.low));
      };
    }
  }

  /** A judge takes no root of zero, since there it has no slope. */
  private static double root(double value) {
    return value <= 0 ? Double.NaN : Math.sqrt(value);
  }

  private static final class Called extends Arithmetic {
    private final String function;
    private final List<Arithmetic> arguments;

    Called(String function, List<Arithmetic> arguments) {
      this.function = function;
      this.arguments = List.copyOf(arguments);
    }

    @Override
    double at(double[] readings) {
      double value = arguments.get(0).at(readings);
      for (Arithmetic next : arguments.subList(1, arguments.size())) {
        double other = next.at(readings);
        value = function.equals("max") ? Math.max(value, other) : Math.min(value, other);
      }
      return switch (function) {
        case "abs" -> Math.abs(value);
        case "sqrt" -> root(value);
        default -> value;
      };
    }

    @Override
    Range over(Between[] readings) {
      Range range = arguments.get(0).over(readings);
      for (Arithmetic next : arguments.subList(1, arguments.size())) {
        range = better(range, next.over(readings));
      }
      return switch (function) {
        case "sqrt" -> range.root();
        case "abs" ->
            range.value.low >= 0
                ? range
                : range.value.high <= 0
                    ? range.negated()
                    : range.hull(range.negated(), new Between(0, range.value.most()));
        default -> range;
      };
    }

    private Range better(Range a, Range b) {
      boolean most = function.equals("max");
      if (most ? a.value.low >= b.value.high : a.value.high <= b.value.low) {
        return a;
      }
      if (most ? b.value.low >= a.value.high : b.value.high <= a.value.low) {
        return b;
      }
      double low = most ? Math.max(a.value.low, b.value.low) : Math.min(a.value.low, b.value.low);
      double high =
          most ? Math.max(a.value.high, b.value.high) : Math.min(a.value.high, b.value.high);
      return a.hull(b, new Between(low, high));
    }
  }

  private record Reader(List<String> names, Map<String, Double> constants)
      implements Expression.Visitor<@Nullable Arithmetic> {
    @Override
    public @Nullable Arithmetic literal(Expression.Literal literal) {
      Unit unit =
          literal.amount().unit() == null ? Unit.ONE : Units.find(literal.amount().unit().text());
      Rational number = literal.amount().number();
      return unit == null || number == null
          ? null
          : new Constant(number.times(unit.factor()).doubleValue());
    }

    @Override
    public @Nullable Arithmetic variable(Expression.Variable variable) {
      String name = variable.name().text();
      Double constant = constants.get(name);
      int index = names.indexOf(name);
      return index >= 0 ? new Reading(index) : constant == null ? null : new Constant(constant);
    }

    @Override
    public @Nullable Arithmetic negative(Expression.Negative negative) {
      Arithmetic inner = negative.inner().accept(this);
      return inner == null ? null : new Pair(Expression.Operator.MINUS, new Constant(0), inner);
    }

    @Override
    public @Nullable Arithmetic binary(Expression.Binary binary) {
      Arithmetic left = binary.left().accept(this);
      Arithmetic right = binary.right().accept(this);
      boolean plain = binary.operator() != Expression.Operator.POWER || right instanceof Constant;
      return left == null || right == null || !plain
          ? null
          : new Pair(binary.operator(), left, right);
    }

    @Override
    public @Nullable Arithmetic call(Expression.Call call) {
      List<Arithmetic> arguments = new ArrayList<>();
      for (Expression argument : call.arguments()) {
        Arithmetic one = argument.accept(this);
        if (one == null) {
          return null;
        }
        arguments.add(one);
      }
      String function = call.function().text();
      boolean known = List.of("max", "min", "abs", "sqrt").contains(function);
      return known && !arguments.isEmpty() ? new Called(function, arguments) : null;
    }
  }
}
