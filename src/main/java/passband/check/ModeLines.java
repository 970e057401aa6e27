package passband.check;

import java.util.ArrayList;
import java.util.List;
import passband.model.Device.Mode;
import passband.source.Span;
import passband.syntax.Tree;

/** Where a mode says what, for notes: its name where it has no such line. */
final class ModeLines {
  private ModeLines() {}

  /** What it can be set to. */
  static Span setting(Mode mode) {
    return series(mode, mode.tree().setting());
  }

  /** Its rated loads. */
  static Span loads(Mode mode) {
    return series(mode, mode.tree().loads());
  }

  private static Span series(Mode mode, List<Tree.SeriesItem> items) {
    return items.isEmpty()
        ? mode.name().span()
        : items.get(0).span().to(items.get(items.size() - 1).span());
  }

  /** What it says of a quantity; of its output where it has no line of that quantity's own. */
  static Span limit(Mode mode, String quantity) {
    List<Tree.QuantityLimit> lines = new ArrayList<>(mode.limits());
    if (mode.output() != null) {
      lines.add(mode.output());
    }
    for (Tree.QuantityLimit line : lines) {
      if (line.quantity().text().equals(quantity)) {
        return line.span();
      }
    }
    return mode.output() == null ? mode.name().span() : mode.output().span();
  }
}
