package passband.compile;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Stated;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.CellValue;
import passband.syntax.Tree;

/** {@code stated}: the limits that the manual prints, a pair or one side; a cell may be blank. */
final class StatedColumn extends Column {
  private final @Nullable String quantity;
  private final CellAmounts amounts;
  private final Values values;

  StatedColumn(Tree.Column tree, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.quantity = tree.name() == null ? null : tree.name().text();
    this.amounts = new CellAmounts(tree, diagnostics);
    this.values = new Values(diagnostics);
  }

  @Override
  String name() {
    return quantity == null ? "stated" : "stated " + quantity;
  }

  @Override
  boolean isSame(Column other) {
    return quantity != null && super.isSame(other);
  }

  @Override
  List<RowSpec> blank(RowSpec row, Tree.Cell cell) {
    return List.of(row);
  }

  @Override
  boolean takes(int values, Tree.Cell cell) {
    if (values > 1) {
      diagnostics.say(Code.BAD_CELL, cell.span(), "a stated cell holds one pair of limits");
    }
    return values <= 1;
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    Stated stated = value instanceof CellValue.OpenValue open ? oneSided(open) : pair(value);
    return stated == null ? List.of() : List.of(row.withStated(stated));
  }

  private @Nullable Stated oneSided(CellValue.OpenValue open) {
    Stated.End end = end(open.amount());
    if (end == null) {
      return null;
    }
    return open.atMost() ? stated(null, end, open.span()) : stated(end, null, open.span());
  }

  private @Nullable Stated pair(CellValue value) {
    Tree.@Nullable SeriesItem item =
        value instanceof CellValue.NumberValue number ? number.item() : null;
    if (item == null || item.to() == null || item.step() != null) {
      diagnostics.say(
          Code.BAD_CELL,
          value.span(),
          "expected 'A to B', 'at most B', 'at least A' or a blank cell");
      return null;
    }
    Stated.End lower = end(item.from());
    Stated.End upper = end(item.to());
    if (lower == null || upper == null || !fit(lower, upper, value.span())) {
      return null;
    }
    return stated(lower, upper, value.span());
  }

  private boolean fit(Stated.End lower, Stated.End upper, Span span) {
    if (!lower.unit().dimension().equals(upper.unit().dimension())) {
      diagnostics.say(Code.UNIT_MISMATCH, span, "the two limits have different dimensions");
      return false;
    }
    if (lower.value().compareTo(upper.value()) >= 0) {
      DiagnosticBuilder said =
          diagnostics.say(
              Code.REVERSED_RANGE, span, "the stated lower limit is not below the upper limit");
      if (!lower.value().equals(upper.value())) {
        said.hint("write the lower limit first")
            .fix(Values.swapped(lower.amount(), upper.amount()));
      }
      return false;
    }
    return true;
  }

  private Stated.@Nullable End end(Amount written) {
    Amount amount = amounts.inColumn(written);
    return amount == null ? null : Stated.end(amount, values);
  }

  private Stated stated(Stated.@Nullable End lower, Stated.@Nullable End upper, Span span) {
    return new Stated(quantity, lower, upper, span, tree.span());
  }
}
