package passband.compile;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.plan.Figure;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** A value of the row that a limit uses, {@code tol/%}: it is no part of what a point is. */
final class ValueColumn extends AmountColumn {
  ValueColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Figure figure = figure(amount);
    return figure == null ? null : row.withValue(written(), figure);
  }
}
