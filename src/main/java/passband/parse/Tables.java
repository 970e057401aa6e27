package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.CellValue;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Tables: their header, rows and cells. */
final class Tables {
  private final Terminals leaves;
  private final Diagnostics diagnostics;

  Tables(Terminals leaves, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.diagnostics = diagnostics;
  }

  /**
   * @param headed whether the header came through without a fault; a table without one has no rows
   *     either, so that the fault is said once
   */
  Tree.Table table(TestTableContext table, boolean headed) {
    Span where = Lexer.span(leaves.source(), table.start);
    if (!headed) {
      return new Tree.Table(null, List.of(), List.of(), where);
    }
    List<Tree.Column> columns = new ArrayList<>();
    table.header().column().forEach(c -> columns.add(column(c)));
    List<Tree.Row> rows = new ArrayList<>();
    for (RowContext row : table.row()) {
      if (leaves.whole(row)) {
        rows.add(row(row));
      }
    }
    return new Tree.Table(null, columns, rows, where);
  }

  Tree.Column column(ColumnContext column) {
    boolean owned = column.DOT() != null;
    Word name = leaves.name(column.name(owned ? 1 : 0));
    boolean plain = column.STATED() == null && !owned && name.text().equals("stated");
    boolean stated = plain || column.STATED() != null;
    return new Tree.Column(
        stated,
        owned ? leaves.name(column.name(0)) : null,
        plain ? null : name,
        leaves.unit(column.unit()),
        leaves.span(column));
  }

  private Tree.Row row(RowContext row) {
    List<Tree.Cell> cells = new ArrayList<>();
    row.cell().forEach(cell -> cells.add(cell(cell)));
    return new Tree.Row(cells, Lexer.span(leaves.source(), row.start).to(leaves.line(row)));
  }

  Tree.Cell cell(CellContext cell) {
    List<CellValue> values = new ArrayList<>();
    for (CellItemContext item : cell.cellItem()) {
      if (item instanceof CellTestContext test) {
        sayOnlyInTests(leaves.span(test), "the name of a test");
      } else {
        values.add(value(item));
      }
    }
    if (cell.IS() != null) {
      sayOnlyInTests(leaves.span(cell), "an outcome");
    }
    if (cell.acceptance() != null) {
      sayOnlyInTests(leaves.span(cell), "what is accepted");
    }
    Span where = values.isEmpty() ? Lexer.span(leaves.source(), cell.start) : leaves.span(cell);
    return new Tree.Cell(
        values, values.isEmpty() ? new Span(where.file(), where.start(), where.start()) : where);
  }

  private void sayOnlyInTests(Span where, String what) {
    diagnostics
        .say(Code.BAD_CELL, where, "%s stands in a table of a test", what)
        .hint("only a table of 'tests { … }' has columns 'test' and 'accept'");
  }

  private CellValue value(CellItemContext item) {
    if (item instanceof CellAtMostContext most) {
      return new CellValue.OpenValue(true, leaves.amount(most.amount()), leaves.span(item));
    }
    if (item instanceof CellAtLeastContext least) {
      return new CellValue.OpenValue(false, leaves.amount(least.amount()), leaves.span(item));
    }
    if (item instanceof CellNameContext name) {
      List<NameContext> parts = name.ref().name();
      return parts.size() == 1
          ? new CellValue.NameValue(leaves.name(parts.get(0)))
          : new CellValue.OwnedValue(leaves.ref(name.ref()));
    }
    if (item instanceof CellTextContext text) {
      return new CellValue.NameValue(leaves.text(text.TEXT()));
    }
    CellAmountContext amount = (CellAmountContext) item;
    return new CellValue.NumberValue(leaves.item(amount.amount(), leaves.span(item)));
  }

  /** Whether a row of a table that is taken apart has a cell in each column; else that is said. */
  boolean counted(ParserRuleContext row, int cells, List<? extends ParserRuleContext> columns) {
    boolean counted = cells == columns.size();
    if (!counted) {
      diagnostics
          .say(
              Code.CELL_COUNT,
              leaves.line(row),
              "this row has %d cells, but the header has %d",
              cells,
              columns.size())
          .note(
              leaves.span(columns.get(0)).to(leaves.span(columns.get(columns.size() - 1))),
              "the header is here");
    }
    return counted;
  }
}
