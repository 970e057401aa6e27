package passband.compile;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.quantity.Rational;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** {@code repeat}: which of several readings at the same settings it is, counted from 1. */
final class RepeatColumn extends AmountColumn {
  /** Its heading. */
  static final String NAME = "repeat";

  RepeatColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Rational which = values.si(amount);
    if (which == null) {
      return null;
    }
    boolean plain = amount.unit() == null && tree.unit() == null;
    if (!plain || !which.isInteger() || which.signum() <= 0) {
      diagnostics
          .say(Code.BAD_CELL, amount.span(), "the column 'repeat' counts readings: 1, 2, 3")
          .hint("write '1 to 3 step 1' for three readings");
      return null;
    }
    return row.withRepeat(which);
  }
}
