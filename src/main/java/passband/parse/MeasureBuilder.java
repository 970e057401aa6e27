package passband.parse;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.syntax.Tree;

/** From the contexts of a measured quantity to its part of the tree. */
final class MeasureBuilder {
  private final Terminals leaves;
  private final Diagnostics diagnostics;

  MeasureBuilder(Terminals leaves, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.diagnostics = diagnostics;
  }

  Tree.Measure measure(MeasureContext measure) {
    MeasureHeadContext head = measure.measureHead();
    return new Tree.Measure(
        leaves.name(head.name()),
        head.FROM() == null ? null : leaves.ref(head.ref(0)),
        head.FROM() == null ? null : leaves.ref(head.ref(1)),
        head.THROUGH() == null ? null : leaves.amount(head.amount()),
        new Ranges(leaves, diagnostics).of(wholeItems(measure)),
        leaves.line(head));
  }

  private List<MeasureItemContext> wholeItems(MeasureContext measure) {
    List<MeasureItemContext> whole = new ArrayList<>();
    for (MeasureItemContext item : measure.measureItem()) {
      if (isWhole(item)) {
        whole.add(item);
      }
    }
    return whole;
  }

  private boolean isWhole(MeasureItemContext item) {
    return item instanceof MeasureRangeContext range
        ? leaves.whole(range.rangeHead())
        : leaves.whole(item);
  }
}
