package passband.compile;

import java.util.List;
import java.util.Objects;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.syntax.CellValue;
import passband.syntax.Tree;
import passband.syntax.Word;

/** A column of a test's table; there is a type for each kind. */
abstract class Column {
  final Tree.Column tree;
  final Diagnostics diagnostics;

  Column(Tree.Column tree, Diagnostics diagnostics) {
    this.tree = tree;
    this.diagnostics = diagnostics;
  }

  /** The name in the heading; only a stated column may have none. */
  final Word written() {
    return Objects.requireNonNull(tree.name(), "only a stated column has no name");
  }

  /** The name that no other column of the table may have, as in messages. */
  String name() {
    return (tree.owner() == null ? "" : tree.owner().text() + ".") + written().text();
  }

  /**
   * Whether both ask for the same. Of two stated columns without a quantity that shows only in
   * their rows, by their units.
   */
  boolean isSame(Column other) {
    return name().equals(other.name());
  }

  /**
   * A row with what a value of its cell asks for: once for each value of a series, and not at all,
   * with the fault said, when the value does not belong here.
   */
  abstract List<RowSpec> with(RowSpec row, CellValue value);

  /** The same without a value. */
  List<RowSpec> blank(RowSpec row, Tree.Cell cell) {
    diagnostics.say(Code.BLANK_CELL, cell.span(), "the cell for '%s' is blank", name());
    return List.of();
  }

  /** Whether a cell may hold so many values; says so when it may not. */
  boolean takes(int values, Tree.Cell cell) {
    return true;
  }
}
