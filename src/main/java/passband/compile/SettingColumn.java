package passband.compile;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.plan.Figure;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** {@code setting}: what the mode is set to. Whether it fits the mode is told of the whole row. */
final class SettingColumn extends AmountColumn {
  SettingColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Figure figure = figure(amount);
    return figure == null ? null : row.withSetting(figure, amount.span());
  }
}
