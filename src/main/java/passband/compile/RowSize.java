package passband.compile;

import java.math.BigInteger;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** How many combinations a row has, worked out before they are made. */
final class RowSize {
  private RowSize() {}

  /** The product of its cells' counts; a blank cell and a value that is no series count as one. */
  static BigInteger of(Tree.Row row) {
    BigInteger size = BigInteger.ONE;
    for (Tree.Cell cell : row.cells()) {
      BigInteger items = BigInteger.ZERO;
      for (Tree.Value value : cell.values()) {
        items = items.add(count(value));
      }
      size = size.multiply(items.max(BigInteger.ONE));
    }
    return size;
  }

  private static BigInteger count(Tree.Value value) {
    boolean series = value instanceof Tree.NumberValue number && number.item().step() != null;
    if (!series) {
      return BigInteger.ONE;
    }
    Tree.SeriesItem item = ((Tree.NumberValue) value).item();
    Rational from = item.from().number();
    Rational to = item.to().number();
    Rational step = item.step().number();
    boolean rising =
        from != null && to != null && step != null && step.signum() > 0 && from.compareTo(to) <= 0;
    if (!rising) {
      return BigInteger.ONE;
    }
    Unit unit = unit(item.from(), Unit.ONE);
    Unit stepUnit = unit(item.step(), unit);
    Rational scale =
        unit == null || stepUnit == null ? Rational.ONE : unit.factor().over(stepUnit.factor());
    return to.minus(from).times(scale).over(step).floor().add(BigInteger.ONE);
  }

  private static Unit unit(Amount amount, Unit otherwise) {
    return amount.unit() == null ? otherwise : Units.find(amount.unit().text());
  }
}
