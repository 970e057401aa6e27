package passband.diagnostic;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * What one line of a device, an analyzer or leads brings about in many places is said once. The
 * line is the one to which the most findings of a code refer in a note. Where they are of several
 * tests, the message stands at that line, and what else refers to it is named there too; where they
 * are rows of one table, at the first of them.
 */
final class Blamed {
  /** From so many places on the line to which they refer is taken for the cause. */
  static final int LEAST = 3;

  /**
   * The same of limits outside every range, which a single wrong line is likelier to bring about.
   */
  static final int LEAST_OUT_OF_RANGE = 2;

  private static final Set<Code> AGAINST_A_RULE =
      EnumSet.of(Code.STATED_LOOSER, Code.STATED_TIGHTER);

  private record Cause(Code code, Span line) {}

  private final Set<Span> profiles;
  private final Set<Span> tables;

  private Blamed(Set<Span> profiles, Set<Span> tables) {
    this.profiles = profiles;
    this.tables = tables;
  }

  /**
   * The same diagnostics, each group as one.
   *
   * @param found in order of place
   * @param profiles where the devices, analyzers and leads are
   * @param tables where the rows of each table are
   */
  static List<Diagnostic> of(Collection<Diagnostic> found, Set<Span> profiles, Set<Span> tables) {
    Blamed blamed = new Blamed(profiles, tables);
    Set<Diagnostic> left = new LinkedHashSet<>(found);
    List<Diagnostic> said = new ArrayList<>();
    for (Map.Entry<Cause, List<Diagnostic>> most = blamed.most(left);
        most != null;
        most = blamed.most(left)) {
      left.removeAll(most.getValue());
      said.add(blamed.one(most.getKey().line, most.getValue(), left));
    }
    said.addAll(left);
    return said;
  }

  /** The line to which the most places refer, and what refers to it; null where only a few do. */
  private Map.@Nullable Entry<Cause, List<Diagnostic>> most(Set<Diagnostic> left) {
    Map<Cause, List<Diagnostic>> causes = new LinkedHashMap<>();
    for (Diagnostic one : left) {
      for (Span line : lines(one)) {
        causes.computeIfAbsent(new Cause(one.code(), line), c -> new ArrayList<>()).add(one);
      }
    }
    Map.Entry<Cause, List<Diagnostic>> most = null;
    int places = 0;
    for (Map.Entry<Cause, List<Diagnostic>> cause : causes.entrySet()) {
      int here = places(cause.getValue());
      boolean outOfRange = cause.getKey().code == Code.OUT_OF_RANGE;
      if (here > places && here >= (outOfRange ? LEAST_OUT_OF_RANGE : LEAST)) {
        most = cause;
        places = here;
      }
    }
    return most;
  }

  /**
   * The lines of profiles that the notes name, none of what is said of a profile itself; of stated
   * limits also the rule that they are compared with, which may be the one that is wrong.
   */
  private Set<Span> lines(Diagnostic one) {
    Set<Span> lines = new LinkedHashSet<>();
    if (AGAINST_A_RULE.contains(one.code()) && !one.notes().isEmpty()) {
      lines.add(one.notes().get(0).span());
    }
    for (Diagnostic.Note note : one.notes()) {
      if (Grouped.block(note.span(), profiles) != null
          && Grouped.block(one.span(), profiles) == null) {
        lines.add(note.span());
      }
    }
    return lines;
  }

  private static int places(List<Diagnostic> same) {
    Set<Span> places = new HashSet<>();
    same.forEach(one -> places.add(one.span()));
    return places.size();
  }

  /** The others are of other codes; those that refer to the same line of a profile are joined. */
  private Diagnostic one(Span line, List<Diagnostic> same, Set<Diagnostic> others) {
    Diagnostic first = same.get(0);
    Set<Span> blocks = new HashSet<>();
    for (Diagnostic one : same) {
      Span table = Grouped.block(one.span(), tables);
      blocks.add(table == null ? one.span() : table);
    }
    if (blocks.size() > 1) {
      List<Diagnostic> joined = new ArrayList<>(same);
      if (Grouped.block(line, profiles) != null) {
        others.stream().filter(other -> lines(other).contains(line)).forEach(joined::add);
        others.removeAll(joined);
      }
      return atLine(line, joined);
    }
    return Grouped.block(first.span(), tables) == null
        ? Grouped.withCount(first, places(same) - 1, "place")
        : Grouped.withCount(first, Grouped.rows(same) - 1, "row");
  }

  /** The first error of them leads; one of each other code is named below it. */
  private static Diagnostic atLine(Span line, List<Diagnostic> same) {
    Diagnostic first = same.get(0);
    for (Diagnostic one : same) {
      if (!first.isError() && one.isError()) {
        first = one;
      }
    }
    List<Diagnostic.Note> notes = new ArrayList<>();
    notes.add(new Diagnostic.Note(first.span(), "the first: " + first.message()));
    for (Diagnostic.Note note : first.notes()) {
      if (!note.span().equals(line)) {
        notes.add(note);
      }
    }
    Set<Code> named = EnumSet.of(first.code());
    for (Diagnostic one : same) {
      if (named.add(one.code())) {
        notes.add(new Diagnostic.Note(one.span(), one.message() + " [" + one.code().id() + "]"));
      }
    }
    String message = places(same) + " places are at odds with this line: " + first.code().title();
    return new Diagnostic(first.code(), line, message, notes, first.hint(), List.of());
  }
}
