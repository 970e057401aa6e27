package passband.compile;

import java.util.ArrayList;
import java.util.List;
import passband.resolve.Scope;
import passband.syntax.Derive;
import passband.syntax.Tree;

/** What the rules of a test calculate is calculated in the test, as if it stood there. */
final class RuleDerives {
  private RuleDerives() {}

  /** The procedure with the calculations of its rules in its tests. */
  static Tree.Procedure in(Tree.Procedure procedure, Scope scope) {
    List<Tree.Part> parts = new ArrayList<>();
    boolean same = true;
    for (Tree.Part part : procedure.parts()) {
      Tree.Part whole = part instanceof Tree.Test test ? whole(test, scope) : part;
      parts.add(whole);
      same &= whole == part;
    }
    return same
        ? procedure
        : new Tree.Procedure(
            procedure.name(),
            procedure.title(),
            procedure.revision(),
            procedure.bench(),
            procedure.decision(),
            procedure.cautions(),
            procedure.order(),
            procedure.setups(),
            List.copyOf(parts),
            procedure.allows(),
            procedure.span());
  }

  private static Tree.Test whole(Tree.Test test, Scope scope) {
    List<Derive> derives = new ArrayList<>(test.derives());
    for (Tree.Accept accept : test.accepts()) {
      for (Tree.Rule rule :
          accept.by() == null ? List.<Tree.Rule>of() : scope.all(Tree.Rule.class)) {
        if (accept.by() != null && rule.name().text().equals(accept.by().text())) {
          derives.addAll(rule.derives());
        }
      }
    }
    return derives.size() == test.derives().size()
        ? test
        : new Tree.Test(
            test.name(),
            test.title(),
            test.renamedFrom(),
            test.conditions(),
            test.sweep(),
            List.copyOf(derives),
            test.accepts(),
            test.table(),
            test.steps(),
            test.allows(),
            test.span());
  }
}
