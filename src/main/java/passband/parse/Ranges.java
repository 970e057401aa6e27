package passband.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The ranges of a measured quantity: each in a block of its own, or as flat lines of which every
 * {@code range} starts a new one.
 */
final class Ranges {
  private final Terminals leaves;
  private final Diagnostics diagnostics;
  private boolean saidRangeFirst;

  Ranges(Terminals leaves, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.diagnostics = diagnostics;
  }

  List<Tree.Range> of(List<MeasureItemContext> items) {
    List<Tree.Range> ranges = new ArrayList<>();
    for (MeasureItemContext item : items) {
      if (item instanceof MeasureRangeContext range) {
        RangeHeadContext head = range.rangeHead();
        Tree.SeriesItem span = leaves.item(head.amount(), leaves.span(head));
        Amount to = Objects.requireNonNull(span.to(), "a range has two ends");
        ranges.add(new Tree.Range(span.from(), to, null, null, null, leaves.line(head)));
        range.rangeItem().forEach(line -> line(ranges, line));
      } else if (item instanceof MeasureFlatContext flat) {
        line(ranges, flat.rangeItem());
      }
    }
    return ranges;
  }

  private void line(List<Tree.Range> ranges, RangeItemContext line) {
    if (line instanceof BlankRangeLineContext || !leaves.whole(line)) {
      return;
    }
    Span where = leaves.line(line);
    if (ranges.isEmpty()) {
      sayRangeFirst(where);
      return;
    }
    int last = ranges.size() - 1;
    Tree.Range range = ranges.get(last);
    if (line instanceof RangeResolutionContext resolution) {
      repeated(range.resolution() != null, where, "the resolution");
      Amount step = leaves.amount(resolution.amount());
      ranges.set(
          last,
          new Tree.Range(
              range.from(), range.to(), step, range.error(), range.unknown(), range.span()));
    } else if (line instanceof RangeErrorContext error) {
      repeated(range.error() != null || range.unknown() != null, where, "the error");
      Word word = leaves.word(error.ERROR().getSymbol());
      ranges.set(
          last,
          new Tree.Range(
              range.from(),
              range.to(),
              range.resolution(),
              error.accuracy() == null ? null : leaves.accuracy(error.accuracy()),
              leaves.unknown(word, error.unknown(), where),
              range.span()));
    }
  }

  /** Once for a quantity, however many lines have no range. */
  private void sayRangeFirst(Span where) {
    if (!saidRangeFirst) {
      saidRangeFirst = true;
      diagnostics.say(
          Code.MISSING_ITEM, where, "a 'range' line must come before its resolution and error");
    }
  }

  private void repeated(boolean twice, Span where, String what) {
    if (twice) {
      diagnostics.say(Code.REPEATED_ITEM, where, "%s is given twice for this range", what);
    }
  }
}
