package passband.compile;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Outlet;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/**
 * {@code mono-1.mode}: a column of an outlet that delivers while another one is measured, or at the
 * same time as another one.
 */
final class DrivenColumn extends Column {
  private final Column column;
  private final Outlet outlet;
  private boolean also;

  DrivenColumn(Tree.Column tree, Column column, Outlet outlet, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.column = column;
    this.outlet = outlet;
  }

  Outlet outlet() {
    return outlet;
  }

  /** From now on it is of an outlet that delivers at the same time as another one. */
  void isAlso() {
    also = true;
  }

  boolean hasMode() {
    return column instanceof ModeColumn;
  }

  /** In a row without a value it delivers nothing at the same time. */
  @Override
  List<RowSpec> blank(RowSpec row, Tree.Cell cell) {
    return also ? List.of(row) : super.blank(row, cell);
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    List<RowSpec> rows = new ArrayList<>();
    RowSpec own = also ? row.also(outlet) : row;
    for (RowSpec one : column.with(own, value)) {
      RowSpec driven = one.withDriven(outlet);
      rows.add(also ? row.withAlso(driven) : driven);
    }
    return rows;
  }
}
