package passband.diagnostic;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import passband.sequence.Seq;
import passband.source.Span;

/** Gathers what is found, once for each code and place, and gives it back in order of place. */
public final class Diagnostics {
  private record Key(Code code, Span span) {}

  private final Set<Key> seen = new HashSet<>();
  private final TreeSet<Diagnostic> found = new TreeSet<>();
  private int errors;

  /** Adds one, unless the same code was already said of the same place. */
  public void add(Diagnostic diagnostic) {
    if (seen.add(new Key(diagnostic.code(), diagnostic.span()))
        && found.add(diagnostic)
        && diagnostic.isError()) {
      errors++;
    }
  }

  /** Adds one with a message only. */
  public void add(Code code, Span span, String message) {
    add(Diagnostic.of(code, span, message));
  }

  /** Adds all of them. */
  public void addAll(Iterable<Diagnostic> diagnostics) {
    diagnostics.forEach(this::add);
  }

  /** Takes back what matches, and tells how many that were. */
  public int removeIf(java.util.function.Predicate<Diagnostic> filter) {
    int before = found.size();
    found.removeIf(filter);
    seen.clear();
    found.forEach(d -> seen.add(new Key(d.code(), d.span())));
    errors = Seq.of(found).filter(Diagnostic::isError).count();
    return before - found.size();
  }

  /** Whether any of them stops output. */
  public boolean hasErrors() {
    return errors > 0;
  }

  /** How many errors there are. */
  public int errorCount() {
    return errors;
  }

  /** All of them, in order of place. */
  public List<Diagnostic> list() {
    return List.copyOf(found);
  }
}
