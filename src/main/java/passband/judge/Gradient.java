package passband.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Expression;

/**
 * A formula's value and its partial derivatives by its variables (the sensitivity coefficients of
 * JCGM 100, 5.1.3), worked out together, all in SI and exact but for roots.
 */
final class Gradient implements Expression.Visitor<Gradient.Dual> {
  private final Map<String, Real> values;

  /**
   * A value with its derivatives by name.
   *
   * @param slopes nothing for a name that it does not depend on
   */
  record Dual(Real value, Map<String, Real> slopes) {
    private Dual with(Real value, UnaryOperator<Real> slope) {
      Map<String, Real> slopes = new LinkedHashMap<>();
      this.slopes.forEach((name, s) -> slopes.put(name, slope.apply(s)));
      return new Dual(value, slopes);
    }

    private Dual plus(Dual other, Real value) {
      Map<String, Real> sum = new LinkedHashMap<>(slopes);
      other.slopes.forEach((name, s) -> sum.merge(name, s, Real::plus));
      return new Dual(value, sum);
    }

    private Dual times(Real factor) {
      return with(value.times(factor), s -> s.times(factor));
    }
  }

  private Gradient(Map<String, Real> values) {
    this.values = values;
  }

  /**
   * At these values, in SI.
   *
   * @throws ArithmeticException where there is no value, or no derivative: a division by zero, a
   *     root of zero or less, a name that has no value
   */
  static Dual at(Expression formula, Map<String, Real> values) {
    return formula.accept(new Gradient(values));
  }

  @Override
  public Dual literal(Expression.Literal literal) {
    Unit unit =
        literal.amount().unit() == null ? Unit.ONE : Units.find(literal.amount().unit().text());
    Rational number = literal.amount().number();
    if (unit == null || number == null) {
      throw new ArithmeticException("an unknown unit or number");
    }
    return new Dual(Real.of(number.times(unit.factor())), Map.of());
  }

  @Override
  public Dual variable(Expression.Variable variable) {
    String name = variable.name().text();
    Real value = values.get(name);
    if (value == null) {
      throw new ArithmeticException("'" + name + "' has no value");
    }
    return new Dual(value, Map.of(name, Real.of(Rational.ONE)));
  }

  @Override
  public Dual negative(Expression.Negative negative) {
    return negative.inner().accept(this).times(Real.of(Rational.ONE.negate()));
  }

  @Override
  public Dual binary(Expression.Binary binary) {
    Dual left = binary.left().accept(this);
    Dual right = binary.right().accept(this);
    return switch (binary.operator()) {
      case PLUS -> left.plus(right, left.value.plus(right.value));
      case MINUS ->
          left.plus(right.times(Real.of(Rational.ONE.negate())), left.value.minus(right.value));
      case TIMES -> product(left, right);
      case OVER -> product(left, power(right, -1));
      case POWER -> raised(left, right);
    };
  }

  private static Dual product(Dual left, Dual right) {
    Dual one = left.with(left.value, s -> s.times(right.value));
    Dual other = right.with(right.value, s -> s.times(left.value));
    return one.plus(other, left.value.times(right.value));
  }

  private static Dual raised(Dual base, Dual exponent) {
    if (!exponent.value.isRational()) {
      throw new ArithmeticException("an exponent that is not a number");
    }
    Rational times = exponent.value.rational();
    return times.equals(Rational.of(1, 2))
        ? root(base)
        : power(base, times.numerator().intValueExact());
  }

  /** The derivative of xⁿ is n·xⁿ⁻¹. */
  private static Dual power(Dual base, int n) {
    if (base.value.signum() == 0 && n <= 0) {
      throw new ArithmeticException("division by zero");
    }
    Real slope = n == 0 ? Real.ZERO : base.value.pow(n - 1).times(Real.of(Rational.of(n)));
    return base.with(base.value.pow(n), s -> s.times(slope));
  }

  /** The derivative of √x is 1/(2·√x). */
  private static Dual root(Dual of) {
    if (of.value.signum() <= 0) {
      throw new ArithmeticException("the square root of zero or a negative value");
    }
    Real root = of.value.sqrt();
    Real half = Real.of(Rational.of(1, 2)).over(root);
    return of.with(root, s -> s.times(half));
  }

  @Override
  public Dual call(Expression.Call call) {
    List<Dual> arguments = call.arguments().stream().map(a -> a.accept(this)).toList();
    Dual first = arguments.get(0);
    return switch (call.function().text()) {
      case "sqrt" -> root(first);
      case "abs" -> first.value.signum() < 0 ? first.times(Real.of(Rational.ONE.negate())) : first;
      case "max" -> arguments.stream().reduce((a, b) -> less(a, b) ? b : a).orElseThrow();
      case "min" -> arguments.stream().reduce((a, b) -> less(b, a) ? b : a).orElseThrow();
      default -> throw new ArithmeticException("an unknown function");
    };
  }

  private static boolean less(Dual a, Dual b) {
    return a.value.compareTo(b.value) < 0;
  }
}
