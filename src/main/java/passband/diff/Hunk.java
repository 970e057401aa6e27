package passband.diff;

import java.util.ArrayList;
import java.util.List;
import passband.source.SourceFile;

/**
 * Lines of a source that were edited together.
 *
 * @param was the lines as they were; none for what was put in
 * @param now the lines as they are; none for what was taken out
 */
public record Hunk(Lines was, Lines now) {

  /**
   * Lines of a file.
   *
   * @param first from 1; where there are none, the line that they would stand before
   */
  public record Lines(SourceFile file, int first, int count) {
    /** As they are written, without their indent. */
    public List<String> texts() {
      List<String> texts = new ArrayList<>();
      for (int line = first; line < first + count; line++) {
        texts.add(file.line(line).strip());
      }
      return texts;
    }

    /** Whether there are none. */
    public boolean isEmpty() {
      return count == 0;
    }
  }

  /** The lines as they are, or as they were where nothing is left of them. */
  public Lines left() {
    return now.isEmpty() ? was : now;
  }

  /** Where it is. */
  public String place() {
    return left().file.path() + ":" + left().first;
  }
}
