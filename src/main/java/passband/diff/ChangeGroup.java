package passband.diff;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Changes that one edit brings about.
 *
 * @param kind of the worst of them
 * @param edit the lines that were edited; null where no line tells
 * @param changes what can hurt most first
 */
public record ChangeGroup(Kind kind, @Nullable Hunk edit, List<Change> changes) {
  /** Copies the changes. */
  public ChangeGroup {
    changes = List.copyOf(changes);
  }

  /** How many changes there are of each kind, the worst first: {@code loosened (8), tightened}. */
  public String counts() {
    return counts(changes);
  }

  /** The same of any changes. */
  public static String counts(List<Change> changes) {
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    changes.forEach(change -> counts.merge(change.kind(), 1, Integer::sum));
    List<String> words = new ArrayList<>();
    counts.forEach(
        (kind, count) -> words.add(kind.word() + (count == 1 ? "" : " (" + count + ")")));
    return String.join(", ", words);
  }
}
