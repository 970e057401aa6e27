package passband.compile;

import java.util.List;
import passband.diagnostic.Diagnostics;
import passband.resolve.Values;
import passband.syntax.Amount;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/**
 * A column of a bench that is not known: its cells hold names, or amounts of one unit or another.
 */
final class AnyColumn extends Column {
  AnyColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    if (value instanceof CellValue.NumberValue) {
      Values values = new Values(diagnostics);
      for (Amount amount : new CellAmounts(tree, diagnostics).of(value, name())) {
        values.unitOf(amount);
      }
    }
    return List.of(row);
  }
}
