package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.resolve.Values;
import passband.syntax.Amount;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/** The amounts in the cells of one column, in the unit of its heading where that has one. */
final class CellAmounts {
  private final Tree.Column column;
  private final Diagnostics diagnostics;
  private final Values values;

  CellAmounts(Tree.Column column, Diagnostics diagnostics) {
    this.column = column;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
  }

  /**
   * The amounts of a value, a series in full; none, with the fault said, when it is no number.
   *
   * @param name the column's, for messages
   */
  List<Amount> of(CellValue value, String name) {
    if (!(value instanceof CellValue.NumberValue number)) {
      diagnostics.say(Code.BAD_CELL, value.span(), "the column '%s' takes numbers", name);
      return List.of();
    }
    Tree.SeriesItem item = number.item();
    if (item.to() != null && item.step() == null) {
      diagnostics
          .say(Code.BAD_CELL, value.span(), "'A to B' needs a step to become a list of values")
          .hint("write 'A to B step S', or list them");
      return List.of();
    }
    Amount from = inColumn(item.from());
    if (from == null) {
      return List.of();
    }
    return item.to() == null || item.step() == null
        ? List.of(from)
        : series(item, from, item.to(), item.step());
  }

  private List<Amount> series(Tree.SeriesItem item, Amount from, Amount end, Amount by) {
    Amount to = inColumn(end);
    Amount step = inColumn(by);
    Unit unit = values.unitOf(from);
    if (unit == null || from.number() == null || to == null || step == null) {
      return List.of();
    }
    Dimension dimension = unit.dimension();
    Rational last = values.si(to, dimension, "the end of this series");
    Rational increment = values.positive(step, dimension, "a step");
    if (last == null || increment == null) {
      return List.of();
    }
    Rational first = from.number().times(unit.factor());
    if (last.compareTo(first) < 0) {
      diagnostics
          .say(Code.REVERSED_RANGE, item.span(), "this series ends before it starts")
          .hint("write the lower end first")
          .fix(Values.swapped(item.from(), end));
      return List.of();
    }
    List<Amount> all = new ArrayList<>();
    for (Rational next = first; next.compareTo(last) <= 0; next = next.plus(increment)) {
      Rational digits = next.over(unit.factor());
      all.add(new Amount(digits.toPlain(), digits, from.unit(), item.span()));
    }
    return all;
  }

  /**
   * The amount with the unit of the heading; null, with the fault said, when it has one of its own
   * besides.
   */
  @Nullable Amount inColumn(Amount amount) {
    if (column.unit() == null) {
      return amount;
    }
    if (amount.unit() == null) {
      return amount.withUnit(column.unit());
    }
    diagnostics
        .say(
            Code.BAD_CELL,
            amount.span(),
            "the heading gives the unit %s, so the cells must be plain numbers",
            column.unit().text())
        .note(column.span(), "the heading is here")
        .fixBy(amount.digits());
    return null;
  }
}
