package passband.diagnostic;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/** Gathers what is found, once for each code and place, and gives it back in order of place. */
public final class Diagnostics {
  private record Key(Code code, Span span) {}

  private final Map<Key, Supplier<Diagnostic>> found = new LinkedHashMap<>();

  /** What is said of a block for itself, and the block. */
  private final Map<Key, Span> alone = new HashMap<>();

  private final Set<Span> tables = new LinkedHashSet<>();
  private final Set<Span> profiles = new LinkedHashSet<>();
  private List<Span> shared = List.of();
  private @Nullable Span sharer;
  private Map<Span, Span> included = Map.of();
  private String includer = "";

  /**
   * Says what is wrong, unless the same code was already said of the same place.
   *
   * @param format the message, one sentence without a full stop, in the form of {@link
   *     String#format}
   * @return takes notes, a hint and fixes
   */
  public DiagnosticBuilder say(Code code, Span span, String format, Object... args) {
    DiagnosticBuilder one = new DiagnosticBuilder(code, span, format, args);
    if (sharer != null && isShared(span)) {
      one.note(sharer, "for the test '%s'", sharer.text());
    }
    for (Span by = includedBy(span); by != null; by = includedBy(by)) {
      one.note(by, "included here%s", includedBy(by) == null ? includer : "");
    }
    found.putIfAbsent(new Key(code, span), one::build);
    return one;
  }

  /**
   * From now on what is said of a line that several tests share tells the test for which it is
   * said.
   *
   * @param lines the lines that are shared; none where the test stands by itself
   * @param test its name
   */
  public void sharing(List<Span> lines, Span test) {
    shared = lines;
    sharer = lines.isEmpty() ? null : test;
  }

  /**
   * From now on what is said inside a part tells where the part is included.
   *
   * @param blocks the block of each part, and where it is included
   * @param procedure the name of the procedure
   */
  public void including(Map<Span, Span> blocks, Span procedure) {
    included = blocks;
    includer = blocks.isEmpty() ? "" : ", in the procedure '" + procedure.text() + "'";
  }

  private @Nullable Span includedBy(Span span) {
    for (Map.Entry<Span, Span> one : included.entrySet()) {
      if (one.getKey().holds(span)) {
        return one.getValue();
      }
    }
    return null;
  }

  /** The one item of its kind, null when there is none; each further one is an error. */
  public <T> @Nullable T single(List<T> items, String what, Function<T, Span> span) {
    for (int i = 1; i < items.size(); i++) {
      say(Code.REPEATED_ITEM, span.apply(items.get(i)), "%s is given twice", what)
          .note(span.apply(items.get(0)), "first given here");
    }
    return items.isEmpty() ? null : items.get(0);
  }

  private boolean isShared(Span span) {
    for (Span line : shared) {
      if (line.holds(span)) {
        return true;
      }
    }
    return false;
  }

  /** Adds one, unless the same code was already said of the same place. */
  public void add(Diagnostic diagnostic) {
    found.putIfAbsent(new Key(diagnostic.code(), diagnostic.span()), () -> diagnostic);
  }

  /** Adds all of them. */
  public void addAll(Iterable<Diagnostic> diagnostics) {
    diagnostics.forEach(this::add);
  }

  /** Tells where the rows of a table are: what many of them have in common is said once. */
  public void table(Span rows) {
    tables.add(rows);
  }

  /**
   * Tells where a device, an analyzer or leads are: what a line of them brings about is said once.
   */
  public void profile(Span block) {
    profiles.add(block);
  }

  /** Adds all of another's, one by one, and with them what it was told of tables and profiles. */
  public void take(Diagnostics other) {
    other.found.forEach((key, one) -> take(key, one, other.alone.get(key)));
    tables.addAll(other.tables);
    profiles.addAll(other.profiles);
  }

  /**
   * Adds what was said of a block that nothing here takes up. What is said by whoever takes it up
   * comes before it.
   */
  public void takeAlone(Diagnostics other, Span block) {
    other.found.forEach((key, one) -> take(key, one, block));
    tables.addAll(other.tables);
  }

  private void take(Key key, Supplier<Diagnostic> one, @Nullable Span block) {
    boolean better = block == null && alone.remove(key) != null;
    if (better) {
      found.put(key, one);
    } else if (found.putIfAbsent(key, one) == null && block != null) {
      alone.put(key, block);
    }
  }

  /** Takes back what was said of blocks for themselves that were taken up after all. */
  public void removeAlone(Predicate<Span> takenUp) {
    alone
        .entrySet()
        .removeIf(one -> takenUp.test(one.getValue()) && found.remove(one.getKey()) != null);
  }

  /** Looks through all of them, in no particular order; nothing is grouped. */
  public void forEach(Consumer<Diagnostic> look) {
    found.values().forEach(one -> look.accept(one.get()));
  }

  /** Takes back what matches, and tells how many that were. */
  public int removeIf(Predicate<Diagnostic> filter) {
    int before = found.size();
    found.values().removeIf(one -> filter.test(one.get()));
    alone.keySet().retainAll(found.keySet());
    return before - found.size();
  }

  /** Whether any of them stops output. */
  public boolean hasErrors() {
    for (Key key : found.keySet()) {
      if (key.code.severity() == Severity.ERROR) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether any of them stops a comparison. That a released revision has another meaning does not:
   * what it is, is asked.
   */
  public boolean stopComparison() {
    for (Key key : found.keySet()) {
      if (key.code.severity() == Severity.ERROR && key.code != Code.REVISION_REUSED) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether any of them is an error that no {@code allow} lets stand: something could not be made.
   */
  public boolean hasFaults() {
    for (Key key : found.keySet()) {
      if (!key.code.allowable()) {
        return true;
      }
    }
    return false;
  }

  /** How many errors there are. */
  public int errorCount() {
    int count = 0;
    for (Diagnostic one : list()) {
      count += one.isError() ? 1 : 0;
    }
    return count;
  }

  /** All of them, in order of place; what has one cause in many places as one. */
  public List<Diagnostic> list() {
    TreeSet<Diagnostic> inOrder = new TreeSet<>();
    for (Supplier<Diagnostic> one : found.values()) {
      inOrder.add(one.get());
    }
    if (inOrder.size() >= Blamed.LEAST_OUT_OF_RANGE && !profiles.isEmpty()) {
      inOrder = new TreeSet<>(Blamed.of(inOrder, profiles, tables));
    }
    boolean few = tables.isEmpty() || inOrder.size() <= Grouped.MOST;
    return List.copyOf(few ? inOrder : Grouped.of(inOrder, tables));
  }
}
