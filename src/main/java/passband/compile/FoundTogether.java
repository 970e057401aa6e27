package passband.compile;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.Word;

/** What is found in several groups of files that share some, put together. */
public final class FoundTogether {
  private final Diagnostics diagnostics = new Diagnostics();
  private final Set<Span> usedAllows = new HashSet<>();
  private final Set<String> takenUp = new HashSet<>();
  private final Map<String, Word> names = new HashMap<>();

  /**
   * Takes what was found in a group.
   *
   * @param allows the places of the allows that suppressed something there
   * @param parts the parts and rules that its procedures took up
   * @param procedures the names of its procedures
   */
  public void take(Diagnostics found, Set<Span> allows, Set<String> parts, List<Word> procedures) {
    diagnostics.take(found);
    usedAllows.addAll(allows);
    takenUp.addAll(parts);
    Set<String> own = new HashSet<>();
    for (Word name : procedures) {
      boolean twin = !own.add(name.text()); // the compiler has said so
      Word first = names.putIfAbsent(name.text(), name);
      if (first != null && !twin) {
        Scope.duplicate(diagnostics, "procedure ", first, name);
      }
    }
  }

  /**
   * All of it. An allow in a shared file is unused when no group has a use for it, and while there
   * are errors none is reported: it may be for what was not reached. One that names in a note the
   * message that it does not reach stays. A part or a rule that no procedure of a group takes up is
   * looked at by itself there; what was found so is left out where another group takes it up.
   */
  public Diagnostics diagnostics() {
    diagnostics.removeAlone(block -> takenUp.contains(TakenUp.key(block)));
    boolean faults = diagnostics.hasErrors();
    if (faults || !usedAllows.isEmpty()) {
      diagnostics.removeIf(
          d ->
              d.code() == Code.ALLOW_UNUSED
                  && (usedAllows.contains(d.span()) || (faults && d.notes().isEmpty())));
    }
    return diagnostics;
  }
}
