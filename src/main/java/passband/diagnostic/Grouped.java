package passband.diagnostic;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * Many rows of one table with the same cause are said once: the first of them, and how many more
 * there are. The cause is the same when the code is, and every note outside the table.
 */
final class Grouped {
  /** As many rows are still said one by one. */
  static final int MOST = 8;

  private record Cause(Code code, Span table, List<Span> outside) {}

  private Grouped() {}

  /**
   * The same diagnostics, each group as its first one.
   *
   * @param found in order of place
   * @param tables where the rows of each table are
   */
  static List<Diagnostic> of(Iterable<Diagnostic> found, Set<Span> tables) {
    Map<Cause, List<Diagnostic>> causes = new LinkedHashMap<>();
    for (Diagnostic one : found) {
      Span table = block(one.span(), tables);
      if (table != null) {
        causes.computeIfAbsent(cause(one, table), c -> new ArrayList<>()).add(one);
      }
    }
    Map<Diagnostic, Integer> firsts = new LinkedHashMap<>();
    Set<Diagnostic> others = new HashSet<>();
    for (List<Diagnostic> same : causes.values()) {
      int rows = rows(same);
      if (rows > MOST) {
        firsts.put(same.get(0), rows);
        others.addAll(same.subList(1, same.size()));
      }
    }
    List<Diagnostic> said = new ArrayList<>();
    for (Diagnostic one : found) {
      if (!others.contains(one)) {
        Integer rows = firsts.get(one);
        said.add(rows == null ? one : withCount(one, rows - 1, "row"));
      }
    }
    return said;
  }

  /** The first of the blocks that holds a span; null where none does. */
  static @Nullable Span block(Span span, Set<Span> blocks) {
    for (Span block : blocks) {
      if (block.holds(span)) {
        return block;
      }
    }
    return null;
  }

  private static Cause cause(Diagnostic one, Span table) {
    List<Span> outside = new ArrayList<>();
    for (Diagnostic.Note note : one.notes()) {
      if (!table.holds(note.span())) {
        outside.add(note.span());
      }
    }
    return new Cause(one.code(), table, outside);
  }

  /** On how many lines they are. */
  static int rows(List<Diagnostic> same) {
    Set<Integer> lines = new HashSet<>();
    same.forEach(one -> lines.add(one.span().line()));
    return lines.size();
  }

  /** The same, with how many more there are. */
  static Diagnostic withCount(Diagnostic one, int more, String what) {
    String message =
        String.format(
            Locale.ROOT, "%s (and %,d more %s%s)", one.message(), more, what, more == 1 ? "" : "s");
    return new Diagnostic(one.code(), one.span(), message, one.notes(), one.hint(), one.fixes());
  }
}
