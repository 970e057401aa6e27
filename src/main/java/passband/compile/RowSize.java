package passband.compile;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/** How many combinations a row has, worked out before they are made. */
final class RowSize {
  private RowSize() {}

  /** The product of its cells' counts; a blank cell and a value that is no series count as one. */
  static BigInteger of(Tree.Row row) {
    BigInteger size = BigInteger.ONE;
    for (Tree.Cell cell : row.cells()) {
      BigInteger items = BigInteger.ZERO;
      for (CellValue value : cell.values()) {
        items = items.add(count(value));
      }
      size = size.multiply(items.max(BigInteger.ONE));
    }
    return size;
  }

  private static BigInteger count(CellValue value) {
    if (!(value instanceof CellValue.NumberValue number)) {
      return BigInteger.ONE;
    }
    Amount end = number.item().to();
    Amount by = number.item().step();
    return end == null || by == null ? BigInteger.ONE : count(number.item().from(), end, by);
  }

  private static BigInteger count(Amount first, Amount end, Amount by) {
    Rational from = first.number();
    Rational to = end.number();
    Rational step = by.number();
    if (from == null || to == null || step == null) {
      return BigInteger.ONE;
    }
    if (step.signum() <= 0 || from.compareTo(to) > 0) {
      return BigInteger.ONE;
    }
    Unit unit = unit(first, Unit.ONE);
    Unit stepUnit = unit(by, unit);
    Rational scale =
        unit == null || stepUnit == null ? Rational.ONE : unit.factor().over(stepUnit.factor());
    return to.minus(from).times(scale).over(step).floor().add(BigInteger.ONE);
  }

  private static @Nullable Unit unit(Amount amount, @Nullable Unit otherwise) {
    return amount.unit() == null ? otherwise : Units.find(amount.unit().text());
  }
}
