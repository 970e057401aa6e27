package passband.judge;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.VarianceSum;
import passband.syntax.Expression;

/**
 * A derived value with its variance, in the unit of its item.
 *
 * <p>The variance is the sum of (c·a)²/3 over the contributions of its parts, c the sensitivity
 * coefficient and a the half-width (JCGM 100, 4.3.7, 5.1.2). Contributions other than the
 * resolution of parts that are read in one unit and range at one load may be common to them: the
 * greater of the variance without and with full correlation (5.2.2) is taken.
 *
 * @param variance null where the uncertainty of a part is not known
 * @param freedom its effective degrees of freedom (G.4.1), the fewer of those without and with
 *     correlation; null for infinitely many
 */
record DerivedValue(Real value, @Nullable Real variance, @Nullable Integer freedom) {

  /**
   * From the values of its parts.
   *
   * @param parts by quantity, in the unit of each
   * @throws ArithmeticException where the formula has no value
   */
  static DerivedValue of(Item.Derived item, Map<String, Part> parts) {
    Map<String, Real> values = new HashMap<>();
    parts.forEach((name, part) -> values.put(name, Real.of(part.si())));
    setting(item.where(), values);
    Expression formula = item.calculation().formula().tree();
    if (formula == null) {
      throw new ArithmeticException("this is not a formula");
    }
    Gradient.Dual dual = Gradient.at(formula, values);
    Real factor = Real.of(unit(item.scale().unit()).factor());
    Combined combined = combined(dual, item, parts);
    return new DerivedValue(
        dual.value().over(factor),
        combined == null ? null : combined.variance.over(factor.times(factor)),
        combined == null ? null : combined.freedom);
  }

  /** In SI. */
  private record Combined(Real variance, @Nullable Integer freedom) {}

  /** A reading that a formula takes. */
  record Part(Item.Reading item, Rational value) {
    private Unit unit() {
      return DerivedValue.unit(item.scale().unit());
    }

    Rational si() {
      return value.times(unit().factor());
    }

    /** The half-width of a contribution, in SI. */
    private Real width(Item.Contribution c) {
      return Real.of(
          Rational.of(c.relative())
              .times(value.abs())
              .plus(Rational.of(c.absolute()))
              .times(unit().factor()));
    }

    /** Parts with the same key may share an error. */
    private String key() {
      Item.Where where = item.where();
      return item.scale().unit()
          + "|"
          + item.scale().range()
          + "|"
          + where.load()
          + where.loadUnit();
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
    return Real.of(number.times(unit(unit).factor()));
  }

  private static Unit unit(@Nullable String code) {
    Unit unit = WrittenValue.unit(code);
    if (unit == null) {
      throw new ArithmeticException("there is no unit '" + code + "'");
    }
    return unit;
  }

  /** Null where the uncertainty of a part is not known. */
  private static @Nullable Combined combined(
      Gradient.Dual dual, Item.Derived item, Map<String, Part> parts) {
    VarianceSum apart = new VarianceSum();
    VarianceSum together = new VarianceSum();
    load(dual, item, apart);
    load(dual, item, together);
    Map<String, Real> common = new LinkedHashMap<>();
    Map<String, Distribution> spreads = new HashMap<>();
    for (Map.Entry<String, Part> entry : parts.entrySet()) {
      Real slope = dual.slopes().getOrDefault(entry.getKey(), Real.ZERO);
      Part part = entry.getValue();
      List<Item.Contribution> budget = part.item.budget();
      if (budget == null) {
        return null;
      }
      for (Item.Contribution c : budget) {
        Real moved = slope.times(part.width(c));
        apart.add(moved, c.spread());
        if (c.name().equals(Item.Contribution.RESOLUTION)) {
          together.add(moved, c.spread());
        } else {
          String key = part.key() + "|" + c.name() + "|" + c.spread().text();
          common.merge(key, moved, Real::plus);
          spreads.put(key, c.spread());
        }
      }
    }
    common.forEach(
        (key, moved) -> together.add(moved, Objects.requireNonNull(spreads.get(key), key)));
    return new Combined(
        apart.variance().max(together.variance()), fewer(apart.freedom(), together.freedom()));
  }

  private static @Nullable Integer fewer(@Nullable Integer one, @Nullable Integer other) {
    return one == null ? other : other == null ? one : Integer.valueOf(Math.min(one, other));
  }

  /** What the load's error adds to the variance of a formula that uses the load. */
  private static void load(Gradient.Dual dual, Item.Derived item, VarianceSum sum) {
    Real slope = dual.slopes().get("load");
    if (slope == null || item.where().load() == null) {
      return;
    }
    Item.Contribution error = item.calculation().load();
    Rational width =
        Rational.of(error.relative())
            .times(Rational.of(item.where().load()).abs())
            .plus(Rational.of(error.absolute()));
    sum.add(slope.times(si(width, item.where().loadUnit())), error.spread());
  }
}
