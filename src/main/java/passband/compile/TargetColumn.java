package passband.compile;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.plan.Figure;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** {@code target}: what a tolerance is taken of where it is not the setting. */
final class TargetColumn extends AmountColumn {
  TargetColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Figure figure = figure(amount);
    return figure == null ? null : row.withTarget(figure);
  }
}
