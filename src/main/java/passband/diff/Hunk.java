package passband.diff;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.SourceFile;

/**
 * Lines of a source that were edited together.
 *
 * @param old the file as it was; null where it is new
 * @param oldLine the first of its lines, from 1; where there are none, the line that they stood
 *     before
 * @param was the lines as they were; empty for what was put in
 * @param fresh the file as it is; null where it is gone
 * @param freshLine the first of its lines, from 1
 * @param now the lines as they are; empty for what was taken out
 */
public record Hunk(
    @Nullable SourceFile old,
    int oldLine,
    List<String> was,
    @Nullable SourceFile fresh,
    int freshLine,
    List<String> now) {
  /** Copies the lines. */
  public Hunk {
    was = List.copyOf(was);
    now = List.copyOf(now);
  }

  /** Where it is: in the file as it is, or as it was where nothing is left of it. */
  public String place() {
    boolean gone = now.isEmpty() || fresh == null;
    SourceFile file = gone && old != null ? old : fresh;
    int line = gone && old != null ? oldLine : freshLine;
    return file == null ? "" : file.path() + ":" + line;
  }

  boolean holdsOld(int line) {
    return line >= oldLine && line < oldLine + was.size();
  }

  boolean holdsFresh(int line) {
    return line >= freshLine && line < freshLine + now.size();
  }
}
