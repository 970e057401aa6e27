package passband.compile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * Expands a test's table into what each combination of a row asks for. Rows with faults are said
 * and left out.
 */
final class Rows {
  /** The most points that one test may expand into. */
  static final int MOST = 100_000;

  private final Columns heading;
  private final ModeSetting modeSetting;
  private final Diagnostics diagnostics;

  Rows(Columns heading, Diagnostics diagnostics) {
    this.heading = heading;
    this.modeSetting = new ModeSetting(diagnostics);
    this.diagnostics = diagnostics;
  }

  /** The combinations of every row, in the order written; the leftmost column changes slowest. */
  List<RowSpec> of(Tree.Table table) {
    List<Column> columns = heading.of(table);
    if (columns == null) {
      return List.of();
    }
    if (table.rows().isEmpty() && !table.columns().isEmpty()) {
      diagnostics
          .say(Code.EMPTY_TABLE, table.span(), "this table has no rows")
          .note(table.columns().get(0).span(), "its heading is here");
    }
    List<RowSpec> specs = new ArrayList<>();
    if (headingIsOff(table, columns)) {
      return specs;
    }
    for (Tree.Row row : table.rows()) {
      if (!counted(row, columns)) {
        continue;
      }
      if (!few(row, specs.size())) {
        return specs;
      }
      specs.addAll(combinations(row, columns));
    }
    return specs;
  }

  /** Where all rows agree and the heading does not, it is the heading that is wrong. */
  private boolean headingIsOff(Tree.Table table, List<Column> columns) {
    int cells = table.rows().size() < 2 ? columns.size() : table.rows().get(0).cells().size();
    for (Tree.Row row : table.rows()) {
      if (row.cells().size() != cells) {
        return false;
      }
    }
    if (cells == columns.size()) {
      return false;
    }
    Tree.Column first = columns.get(0).tree;
    Tree.Column last = columns.get(columns.size() - 1).tree;
    diagnostics
        .say(
            Code.CELL_COUNT,
            first.span().to(last.span()),
            "every row has %d cells, but the header has %d",
            cells,
            columns.size())
        .note(table.rows().get(0).span(), "the first row is here");
    return true;
  }

  private boolean counted(Tree.Row row, List<Column> columns) {
    if (row.cells().size() == columns.size()) {
      return true;
    }
    Tree.Column first = columns.get(0).tree;
    Tree.Column last = columns.get(columns.size() - 1).tree;
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.CELL_COUNT,
                row.span(),
                "this row has %d cells, but the header has %d",
                row.cells().size(),
                columns.size())
            .note(first.span().to(last.span()), "the header is here");
    String text = row.span().text();
    if (text.startsWith("|") && text.endsWith("|")) {
      Span at = row.span();
      Span other = new Span(at.file(), at.end() - 1, at.end());
      Span bar = new Span(at.file(), at.start(), at.start() + 1);
      said.hint("bars stand between cells, not at the ends of a row")
          .fix(Fix.of("remove both", new Fix.Edit(bar, ""), new Fix.Edit(other, "")));
    }
    return false;
  }

  private boolean few(Tree.Row row, int before) {
    BigInteger points = RowSize.of(row).add(BigInteger.valueOf(before));
    boolean few = points.compareTo(BigInteger.valueOf(MOST)) <= 0;
    if (!few) {
      diagnostics.say(
          Code.TOO_MANY_POINTS,
          row.span(),
          "with this row the table expands into more than %d points",
          MOST);
    }
    return few;
  }

  private List<RowSpec> combinations(Tree.Row row, List<Column> columns) {
    List<RowSpec> specs = List.of(RowSpec.empty(row.span()));
    for (int i = 0; i < columns.size(); i++) {
      specs = with(columns.get(i), row.cells().get(i), specs);
    }
    List<RowSpec> fitted = new ArrayList<>();
    for (RowSpec spec : specs) {
      RowSpec one = modeSetting.fitted(spec);
      if (one != null) {
        fitted.add(one);
      }
    }
    return fitted;
  }

  /** Each of the combinations so far with each value of the next cell. */
  private static List<RowSpec> with(Column column, Tree.Cell cell, List<RowSpec> specs) {
    List<RowSpec> next = new ArrayList<>();
    for (RowSpec spec : specs) {
      if (cell.values().isEmpty()) {
        next.addAll(column.blank(spec, cell));
      } else if (column.takes(cell.values().size(), cell)) {
        cell.values().forEach(value -> next.addAll(column.with(spec, value)));
      }
    }
    return next;
  }
}
