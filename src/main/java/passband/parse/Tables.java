package passband.parse;

import java.util.ArrayList;
import java.util.List;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.Tree;

/** Tables: their header, rows and cells. */
final class Tables {
  private final Leaves leaves;

  Tables(Leaves leaves) {
    this.leaves = leaves;
  }

  /**
   * @param headed whether the header came through without a fault; a table without one has no rows either, so that the fault is said once
   */
  Tree.Table table(TestTableContext table, boolean headed) {
    Span where = Words.span(leaves.source(), table.start);
    if (!headed) {
      return new Tree.Table(null, List.of(), List.of(), where);
    }
    List<Tree.Column> columns = new ArrayList<>();
    table.header().column().forEach(c -> columns.add(column(c)));
    List<Tree.Row> rows = new ArrayList<>();
    for (RowContext row : table.row()) {
      if (whole(row)) {
        rows.add(row(row));
      }
    }
    return new Tree.Table(null, columns, rows, where);
  }

  private static boolean whole(RowContext row) {
    boolean whole = row.exception == null;
    for (CellContext cell : row.cell()) {
      whole &= cell.exception == null;
      for (CellItemContext item : cell.cellItem()) {
        whole &= item.exception == null && item.getRuleContexts(AmountContext.class).stream().allMatch(a -> a.exception == null);
      }
    }
    return whole;
  }

  private Tree.Column column(ColumnContext column) {
    boolean stated = column.STATED() != null;
    return new Tree.Column(stated, leaves.name(column.name()), leaves.unit(column.unit()), leaves.span(column));
  }

  private Tree.Row row(RowContext row) {
    List<Tree.Cell> cells = new ArrayList<>();
    Span before = Words.span(leaves.source(), row.start);
    for (CellContext cell : row.cell()) {
      List<Tree.Value> values = new ArrayList<>();
      cell.cellItem().forEach(item -> values.add(value(item)));
      boolean blank = values.isEmpty();
      Span where = blank ? Words.span(leaves.source(), cell.start) : leaves.span(cell);
      cells.add(new Tree.Cell(values, blank ? new Span(where.file(), where.start(), where.start()) : where));
    }
    return new Tree.Row(cells, before.to(leaves.line(row)));
  }

  private Tree.Value value(CellItemContext item) {
    if (item instanceof CellAtMostContext most) {
      return new Tree.OpenValue(true, leaves.amount(most.amount()), leaves.span(item));
    }
    if (item instanceof CellAtLeastContext least) {
      return new Tree.OpenValue(false, leaves.amount(least.amount()), leaves.span(item));
    }
    if (item instanceof CellNameContext name) {
      return new Tree.NameValue(leaves.name(name.name()));
    }
    if (item instanceof CellTextContext text) {
      return new Tree.NameValue(leaves.text(text.TEXT()));
    }
    CellAmountContext amount = (CellAmountContext) item;
    return new Tree.NumberValue(leaves.item(amount.amount(), leaves.span(item)));
  }
}
