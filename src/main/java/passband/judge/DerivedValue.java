package passband.judge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.syntax.Expression;

/**
 * A derived value with its variance, in the unit of its item.
 *
 * @param variance null where the uncertainty of a part is not known
 * @param freedom its effective degrees of freedom (JCGM 100, G.4.1); null for infinitely many
 * @param effects what its uncertainty is made of; empty where that is not known
 */
record DerivedValue(
    Real value, @Nullable Real variance, @Nullable Integer freedom, List<Effect> effects) {

  /**
   * From the values of its parts.
   *
   * @param parts by quantity, in the unit of each
   * @param normal the factor by which its u is multiplied, for infinitely many degrees of freedom
   * @throws ArithmeticException where the formula has no value
   */
  static DerivedValue of(Item.Derived item, Map<String, Part> parts, Rational normal) {
    Map<String, Real> values = new HashMap<>();
    parts.forEach((name, part) -> values.put(name, Real.of(part.si())));
    setting(item.where(), values);
    Expression formula = item.calculation().formula().tree();
    if (formula == null) {
      throw new ArithmeticException("this is not a formula");
    }
    Gradient.Dual dual = Gradient.at(formula, values);
    Rational unit = factor(item.scale().unit());
    Real factor = Real.of(unit);
    Propagation all = Propagation.of(dual, item, parts, unit, normal);
    return new DerivedValue(
        dual.value().over(factor),
        all == null ? null : all.variance().over(factor.times(factor)),
        all == null ? null : all.freedom(),
        all == null ? List.of() : all.effects(unit));
  }

  /** A reading that a formula takes. */
  record Part(Item.Reading item, Rational value) {
    /** Of its unit. */
    Rational factor() {
      return DerivedValue.factor(item.scale().unit());
    }

    Rational si() {
      return value.times(factor());
    }

    /** The half-width of a contribution, in SI. */
    Real width(Item.Contribution c) {
      return Real.of(
          Rational.of(c.relative())
              .times(value.abs())
              .plus(Rational.of(c.absolute()))
              .times(factor()));
    }
  }

  private static void setting(Item.Where where, Map<String, Real> values) {
    if (where.setting() != null) {
      values.put("setting", si(Rational.of(where.setting()), where.settingUnit()));
    }
    if (where.load() != null) {
      values.put("load", si(Rational.of(where.load()), where.loadUnit()));
    }
  }

  private static Real si(Rational number, @Nullable String unit) {
    return Real.of(number.times(factor(unit)));
  }

  /** The factor of a unit; a UCUM code, null for none. */
  static Rational factor(@Nullable String code) {
    Unit unit = WrittenValue.unit(code);
    if (unit == null) {
      throw new ArithmeticException("there is no unit '" + code + "'");
    }
    return unit.factor();
  }
}
