package passband.diff;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import com.github.difflib.patch.Chunk;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.source.SourceFile;
import passband.source.Span;

/** What was edited in the sources of a procedure, line by line; spaces and indents do not count. */
final class Hunks {
  /** A line of a file. */
  private record Line(String path, int number) {}

  private final Map<Line, Hunk> was = new HashMap<>();
  private final Map<Line, Hunk> now = new HashMap<>();

  private Hunks() {}

  /**
   * Of two sets of files; a file is the other's earlier form where the most of their paths, from
   * the end, is the same, or their lines are.
   */
  static Hunks between(Collection<SourceFile> was, Collection<SourceFile> now) {
    Hunks hunks = new Hunks();
    List<SourceFile> left = new ArrayList<>(was);
    List<SourceFile> others = new ArrayList<>();
    for (SourceFile fresh : now) {
      SourceFile old = earlier(fresh, left);
      if (old == null) {
        others.add(fresh);
      } else {
        left.remove(old);
        hunks.add(old, fresh);
      }
    }
    for (SourceFile fresh : others) {
      SourceFile old = alike(fresh, left);
      if (old != null) {
        left.remove(old);
        hunks.add(old, fresh);
      }
    }
    return hunks;
  }

  /** Under another name: the one with the most lines in common, half of them at least. */
  private static @Nullable SourceFile alike(SourceFile fresh, List<SourceFile> among) {
    List<String> lines = lines(fresh);
    SourceFile best = null;
    int most = lines.size() / 2;
    for (SourceFile old : among) {
      List<String> common = lines(old);
      common.retainAll(new HashSet<>(lines));
      if (common.size() > most) {
        most = common.size();
        best = old;
      }
    }
    return best;
  }

  private static @Nullable SourceFile earlier(SourceFile fresh, List<SourceFile> among) {
    SourceFile best = null;
    int most = 0;
    for (SourceFile old : among) {
      int alike = alike(old.path().split("/"), fresh.path().split("/"));
      if (alike > most) {
        most = alike;
        best = old;
      }
    }
    return best;
  }

  /** How many names at the ends of two paths are the same. */
  private static int alike(String[] one, String[] other) {
    int alike = 0;
    while (alike < one.length
        && alike < other.length
        && one[one.length - 1 - alike].equals(other[other.length - 1 - alike])) {
      alike++;
    }
    return alike;
  }

  /** As many lines in the place of as many are an edit each. */
  private void add(SourceFile old, SourceFile fresh) {
    for (AbstractDelta<String> delta : DiffUtils.diff(lines(old), lines(fresh)).getDeltas()) {
      Chunk<String> source = delta.getSource();
      Chunk<String> target = delta.getTarget();
      boolean each = source.size() == target.size();
      for (int i = 0; i < (each ? source.size() : 1); i++) {
        add(
            new Hunk(
                new Hunk.Lines(old, source.getPosition() + i + 1, each ? 1 : source.size()),
                new Hunk.Lines(fresh, target.getPosition() + i + 1, each ? 1 : target.size())));
      }
    }
  }

  private void add(Hunk hunk) {
    add(hunk, hunk.was(), was);
    add(hunk, hunk.now(), now);
  }

  private static void add(Hunk hunk, Hunk.Lines lines, Map<Line, Hunk> side) {
    for (int i = 0; i < lines.count(); i++) {
      side.put(new Line(lines.file().path(), lines.first() + i), hunk);
    }
  }

  /** Lines to compare: with single spaces. */
  private static List<String> lines(SourceFile file) {
    List<String> lines = new ArrayList<>();
    for (String line : file.text().split("\n", -1)) {
      lines.add(String.join(" ", line.strip().split("\\s+")));
    }
    return lines;
  }

  /** The edit of the first of these lines, as they were, that was edited; null where none was. */
  @Nullable Hunk ofOld(List<Span> lines) {
    return first(lines, was);
  }

  /** The same of lines as they are. */
  @Nullable Hunk ofNew(List<Span> lines) {
    return first(lines, now);
  }

  private static @Nullable Hunk first(List<Span> lines, Map<Line, Hunk> side) {
    for (Span span : lines) {
      Hunk hunk = side.get(new Line(span.file().path(), span.line()));
      if (hunk != null) {
        return hunk;
      }
    }
    return null;
  }
}
