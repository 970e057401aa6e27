package passband.compile;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/** {@code activation}: the contact that activates the mode, {@code yellow} or {@code foot.cut}. */
final class ActivationColumn extends Column {
  ActivationColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
  }

  /** Which outlet a name without one belongs to shows only where the point is. */
  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    if (value instanceof CellValue.OwnedValue owned && owned.ref().parts().size() == 2) {
      return List.of(row.withActivation(owned.ref()));
    }
    if (value instanceof CellValue.NameValue cell) {
      return List.of(row.withActivation(new Tree.Ref(List.of(cell.name()), cell.name().span())));
    }
    diagnostics.say(
        Code.BAD_CELL, value.span(), "expected the name of a contact: NAME or OUTLET.NAME");
    return List.of();
  }
}
