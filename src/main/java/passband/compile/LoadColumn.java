package passband.compile;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.plan.Figure;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** {@code load}: the resistance that the output goes into. */
final class LoadColumn extends AmountColumn {
  private static final Unit OHM = Objects.requireNonNull(Units.find("ohm"), "ohm");

  LoadColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Rational ohms = values.positive(amount, Dimension.RESISTANCE, "a load");
    return ohms == null ? null : row.withLoad(new Figure(ohms, OHM), amount.span());
  }
}
