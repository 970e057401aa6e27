package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * An {@code allow} of a procedure, or of a part, reaches into the parts that it includes; one of
 * the part itself goes before it. It answers for this procedure alone, so that what is found for
 * another one that includes the part stands.
 */
public final class AllowsOfIncluders {
  private final List<Tree.Allow> allows = new ArrayList<>();
  private final Map<Span, Span> includedBy;
  private final Set<Span> used = new HashSet<>();

  private AllowsOfIncluders(Tree.Procedure whole, Map<Span, Span> includedBy) {
    this.includedBy = includedBy;
    allows.addAll(whole.allows());
    whole.setups().forEach(setup -> allows.addAll(setup.allows()));
    whole.tests().forEach(test -> allows.addAll(test.allows()));
  }

  /**
   * Takes what is covered out of what was found for a procedure.
   *
   * @param whole the procedure with the lines of its parts
   * @param includedBy the block of each of its parts, and where it is included
   * @return the places of the allows that suppressed something
   */
  public static Set<Span> apply(
      Tree.Procedure whole, Map<Span, Span> includedBy, Diagnostics found) {
    AllowsOfIncluders work = new AllowsOfIncluders(whole, includedBy);
    found.removeIf(work::isAllowed);
    return work.used;
  }

  private boolean isAllowed(Diagnostic one) {
    if (!one.code().allowable() || find(one.code(), one.span()) != null) {
      return false; // the last is for Allows to see
    }
    for (Span by = includedBy(one.span()); by != null; by = includedBy(by)) {
      Tree.Allow allow = find(one.code(), by);
      if (allow != null) {
        used.add(allow.span());
        return true;
      }
    }
    return false;
  }

  private Tree.@Nullable Allow find(Code code, Span place) {
    for (Tree.Allow one : allows) {
      if (Code.find(one.code().text()) == code
          && !one.reason().text().isBlank()
          && one.scope().holds(place)) {
        return one;
      }
    }
    return null;
  }

  private @Nullable Span includedBy(Span place) {
    for (Map.Entry<Span, Span> one : includedBy.entrySet()) {
      if (one.getKey().holds(place)) {
        return one.getValue();
      }
    }
    return null;
  }
}
