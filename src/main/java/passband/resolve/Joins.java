package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Join;
import passband.model.Terminal;
import passband.syntax.Tree;

/** What an outlet or a load says has to be joined. */
final class Joins {
  private Joins() {}

  /**
   * Those of which both terminals are there.
   *
   * @param terminal finds one; null, with the fault said, where there is none
   */
  static List<Join> of(
      List<Tree.Join> trees,
      Function<Tree.Ref, @Nullable Terminal> terminal,
      Diagnostics diagnostics) {
    List<Join> joins = new ArrayList<>();
    for (Tree.Join tree : trees) {
      Terminal one = terminal.apply(tree.one());
      Terminal other = terminal.apply(tree.other());
      if (one != null && other != null && one.same(other)) {
        diagnostics.say(
            Code.DUPLICATE_NAME,
            tree.other().span(),
            "'%s' is joined to itself",
            tree.other().text());
      } else if (one != null && other != null) {
        joins.add(new Join(one, other, tree.span()));
      }
    }
    return List.copyOf(joins);
  }
}
