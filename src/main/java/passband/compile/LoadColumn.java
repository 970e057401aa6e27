package passband.compile;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.model.Termination;
import passband.plan.Figure;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/**
 * {@code load}: the resistance that the output goes into, or {@code open} or {@code short}; {@code
 * ROLE.load}: the one that an instrument is set to.
 */
final class LoadColumn extends AmountColumn {
  private static final Unit OHM = Objects.requireNonNull(Units.find("ohm"), "ohm");

  private final @Nullable String role;

  /**
   * @param role of the instrument that the heading names; null where it names none
   */
  LoadColumn(Tree.Column tree, @Nullable String role, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.role = role;
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    if (!(value instanceof CellValue.NameValue cell)) {
      return super.with(row, value);
    }
    List<Termination> named = Termination.of(List.of(cell.name()));
    if (named.isEmpty()) {
      diagnostics
          .say(Code.BAD_CELL, cell.span(), "a load is a resistance, open or short")
          .meant(
              Spelling.nearest(cell.name().text(), List.of("open", "short")),
              "write it in ohm, or 'open' or 'short'");
      return List.of();
    }
    return List.of(row.withTermination(named.get(0), cell.span()));
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Rational ohms = values.positive(amount, Dimension.RESISTANCE, "a load");
    if (ohms == null) {
      return null;
    }
    Figure load = new Figure(ohms, OHM);
    return role == null
        ? row.withLoad(load, amount.span())
        : row.withLoadOf(role, load, amount.span());
  }
}
