package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.plan.Figure;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.resolve.Values;
import passband.syntax.Amount;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/** A column of numbers: the mode's setting, the load or a target. */
abstract class AmountColumn extends Column {
  final Values values;
  private final CellAmounts amounts;

  AmountColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.values = new Values(diagnostics);
    this.amounts = new CellAmounts(tree, diagnostics);
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    List<RowSpec> rows = new ArrayList<>();
    for (Amount amount : amounts.of(value, name())) {
      RowSpec one = with(row, amount);
      if (one != null) {
        rows.add(one);
      }
    }
    return rows;
  }

  /** The row with one amount; null, with the fault said, when the amount does not fit. */
  abstract @Nullable RowSpec with(RowSpec row, Amount amount);

  /** The amount in its own unit; null, with the fault said, when that is unknown. */
  final @Nullable Figure figure(Amount amount) {
    Unit unit = values.unitOf(amount);
    Rational si = values.si(amount);
    return si == null || unit == null ? null : new Figure(si, unit);
  }
}
