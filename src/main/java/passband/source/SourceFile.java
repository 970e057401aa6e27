package passband.source;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * One file's text with the name it is shown by. Offsets are UTF-16 units of the text; lines and
 * columns count from 1, columns in code points.
 */
public final class SourceFile {
  private final String path;
  private final String text;
  private int @Nullable [] lineStarts;

  /**
   * @param path the name shown in messages, with {@code /} between folders
   * @param text the decoded text, without a byte-order mark
   */
  public SourceFile(String path, String text) {
    this.path = path;
    this.text = text;
  }

  /** The name shown in messages. */
  public String path() {
    return path;
  }

  /** The whole text. */
  public String text() {
    return text;
  }

  /** The number of lines; an empty text has one. */
  public int lineCount() {
    return lineStarts().length;
  }

  /** The line, from 1, that holds the offset. */
  public int lineOf(int offset) {
    int found = Arrays.binarySearch(lineStarts(), offset);
    return found >= 0 ? found + 1 : -found - 1;
  }

  /** The column, from 1 and in code points, of the offset. */
  public int columnOf(int offset) {
    return text.codePointCount(lineStarts()[lineOf(offset) - 1], offset) + 1;
  }

  /** The offset at which a line, from 1, starts. */
  public int lineStart(int line) {
    return lineStarts()[line - 1];
  }

  /** A line's text, from 1, without its end-of-line characters. */
  public String line(int line) {
    int[] starts = lineStarts();
    int start = starts[line - 1];
    int end = line < starts.length ? starts[line] : text.length();
    while (end > start && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
      end--;
    }
    return text.substring(start, end);
  }

  /** Found when first asked for: where nothing is at fault, hardly anyone asks. */
  private synchronized int[] lineStarts() {
    if (lineStarts == null) {
      lineStarts = lineStarts(text);
    }
    return lineStarts;
  }

  private static int[] lineStarts(String text) {
    int[] starts = new int[16];
    int count = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean ends =
          c == '\n' || (c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n'));
      if (ends) {
        if (count == starts.length) {
          starts = Arrays.copyOf(starts, count * 2);
        }
        starts[count++] = i + 1;
      }
    }
    return Arrays.copyOf(starts, count);
  }

  @Override
  public String toString() {
    return path;
  }
}
