package passband.syntax;

import passband.source.Span;

/** One value of a cell. */
public sealed interface CellValue {
  /** Where it stands. */
  Span span();

  /** A number, a span of two, or a series of them. */
  record NumberValue(Tree.SeriesItem item) implements CellValue {
    @Override
    public Span span() {
      return item.span();
    }
  }

  /** {@code at most B} or {@code at least A}. */
  record OpenValue(boolean atMost, Amount amount, Span span) implements CellValue {}

  /** A name. */
  record NameValue(Word name) implements CellValue {
    @Override
    public Span span() {
      return name.span();
    }
  }

  /** A name with the owner before it: {@code foot.cut}. */
  record OwnedValue(Tree.Ref ref) implements CellValue {
    @Override
    public Span span() {
      return ref.span();
    }
  }
}
