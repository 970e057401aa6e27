package passband.compile;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Outlet;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/** {@code mono-1.mode}: a column of an outlet that delivers while another one is measured. */
final class DrivenColumn extends Column {
  private final Column column;
  private final Outlet outlet;

  DrivenColumn(Tree.Column tree, Column column, Outlet outlet, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.column = column;
    this.outlet = outlet;
  }

  Outlet outlet() {
    return outlet;
  }

  /** The same of the outlet that is measured sets the same. */
  @Override
  boolean isSame(Column other) {
    return other.written().text().equals(written().text())
        && (other.tree.owner() == null || super.isSame(other));
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    List<RowSpec> rows = new ArrayList<>();
    column.with(row, value).forEach(one -> rows.add(one.withDriven(outlet)));
    return rows;
  }
}
