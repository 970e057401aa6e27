package passband.judge;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import passband.diagnostic.Diagnostics;
import passband.limit.Evaluator;
import passband.limit.RowValues;
import passband.limit.Value;
import passband.parse.Syntax;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.source.SourceFile;
import passband.syntax.Expression;
import passband.syntax.Tree;

/**
 * A derived quantity worked out from the readings of its point, exactly but for its last digits.
 */
final class Derivation implements RowValues {
  private static final int DIGITS = 12;

  private final PointLimit limit;
  private final Map<String, Value> values = new TreeMap<>();

  Derivation(PointLimit limit, Map<String, Readings.Row> parts) {
    this.limit = limit;
    parts.forEach(
        (name, row) -> put(name, Judge.number(row.reading()).toPlainString(), row.unit()));
    if (limit.setting() != null) {
      put("setting", limit.setting().toPlainString(), limit.settingUnit());
    }
    if (limit.load() != null) {
      put("load", limit.load().toPlainString(), limit.loadUnit());
    }
  }

  private void put(String name, String number, String unitText) {
    Unit unit = ucum(unitText);
    if (unit != null) {
      values.put(name, Value.of(Rational.parse(number).times(unit.factor()), unit.dimension()));
    }
  }

  private static Unit ucum(String text) {
    if (text == null || text.isEmpty() || text.equals("1")) {
      return Unit.ONE;
    }
    Unit unit = Units.ofUcum(text);
    return unit == null ? Units.find(text) : unit;
  }

  @Override
  public Value value(String name) {
    return values.get(name);
  }

  @Override
  public Collection<String> names() {
    return values.keySet();
  }

  /** In the unit of the limit; null when something that it needs is not read. */
  BigDecimal value() {
    Diagnostics faults = new Diagnostics();
    Expression formula = formula(faults);
    Value value = formula == null ? null : new Evaluator(this, faults).value(formula);
    Unit unit = ucum(limit.unit());
    if (value == null || faults.hasErrors() || unit == null) {
      return null;
    }
    BigDecimal plain =
        value
            .real()
            .over(Real.of(unit.factor()))
            .toDecimal(DIGITS, RoundingMode.HALF_EVEN)
            .stripTrailingZeros();
    return plain.scale() < 0 ? plain.setScale(0) : plain;
  }

  private Expression formula(Diagnostics faults) {
    String text =
        "procedure p {\n test t {\n derive d = " + limit.derived() + ", resolution 1\n }\n}\n";
    Tree.File file = Syntax.parse(new SourceFile("formula", text), faults);
    if (faults.hasErrors()) {
      return null;
    }
    Tree.Procedure procedure = (Tree.Procedure) file.declarations().get(0);
    return ((Tree.Test) procedure.parts().get(0)).derives().get(0).value();
  }
}
