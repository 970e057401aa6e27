package passband.diff;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import com.github.difflib.patch.Chunk;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.source.SourceFile;
import passband.source.Span;

/** What was edited in the sources of a procedure, line by line; spaces and indents do not count. */
final class Hunks {
  private final Map<String, List<Hunk>> byOld = new LinkedHashMap<>();
  private final Map<String, List<Hunk>> byFresh = new LinkedHashMap<>();

  private Hunks() {}

  /**
   * Of two sets of files; a file is the other's earlier form where the most of their paths, from
   * the end, is the same.
   */
  static Hunks between(Collection<SourceFile> was, Collection<SourceFile> now) {
    Hunks hunks = new Hunks();
    List<SourceFile> left = new ArrayList<>(was);
    for (SourceFile fresh : now) {
      SourceFile old = earlier(fresh, left);
      if (old != null) {
        left.remove(old);
        hunks.add(old, fresh);
      }
    }
    return hunks;
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

  private void add(SourceFile old, SourceFile fresh) {
    List<String> before = lines(old);
    List<String> after = lines(fresh);
    for (AbstractDelta<String> delta : DiffUtils.diff(before, after).getDeltas()) {
      Chunk<String> source = delta.getSource();
      Chunk<String> target = delta.getTarget();
      if (source.size() == target.size()) {
        for (int i = 0; i < source.size(); i++) {
          add(old, source, i, i + 1, fresh, target, i, i + 1);
        }
      } else {
        add(old, source, 0, source.size(), fresh, target, 0, target.size());
      }
    }
  }

  private void add(
      SourceFile old,
      Chunk<String> source,
      int from,
      int to,
      SourceFile fresh,
      Chunk<String> target,
      int first,
      int end) {
    Hunk hunk =
        new Hunk(
            old,
            source.getPosition() + from + 1,
            written(old, source.getPosition() + from, source.getPosition() + to),
            fresh,
            target.getPosition() + first + 1,
            written(fresh, target.getPosition() + first, target.getPosition() + end));
    byOld.computeIfAbsent(old.path(), path -> new ArrayList<>()).add(hunk);
    byFresh.computeIfAbsent(fresh.path(), path -> new ArrayList<>()).add(hunk);
  }

  /** Lines as they are written, without their indent. */
  private static List<String> written(SourceFile file, int from, int to) {
    List<String> written = new ArrayList<>();
    for (int line = from + 1; line <= to; line++) {
      written.add(file.line(line).strip());
    }
    return written;
  }

  /** Lines to compare: with single spaces. */
  private static List<String> lines(SourceFile file) {
    List<String> lines = new ArrayList<>();
    for (String line : file.text().split("\n", -1)) {
      lines.add(String.join(" ", line.strip().split("\\s+")));
    }
    return lines;
  }

  /** The edit of a line as it was; null where it was not edited. */
  @Nullable Hunk old(@Nullable Span span) {
    return span == null
        ? null
        : byOld.getOrDefault(span.file().path(), List.of()).stream()
            .filter(hunk -> hunk.holdsOld(span.line()))
            .findFirst()
            .orElse(null);
  }

  /** The edit of a line as it is; null where it was not edited. */
  @Nullable Hunk fresh(@Nullable Span span) {
    return span == null
        ? null
        : byFresh.getOrDefault(span.file().path(), List.of()).stream()
            .filter(hunk -> hunk.holdsFresh(span.line()))
            .findFirst()
            .orElse(null);
  }
}
