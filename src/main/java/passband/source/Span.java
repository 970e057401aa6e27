package passband.source;

/**
 * A stretch of one file's text.
 *
 * @param file the file
 * @param start the first UTF-16 offset
 * @param end the offset after the last
 */
public record Span(SourceFile file, int start, int end) implements Comparable<Span> {

  /** The line, from 1, on which the stretch starts. */
  public int line() {
    return file.lineOf(start);
  }

  /** The column, from 1 and in code points, at which the stretch starts. */
  public int column() {
    return file.columnOf(start);
  }

  /** The text of the stretch. */
  public String text() {
    return file.text().substring(start, end);
  }

  /** From the start of this stretch to the end of the other, in the same file. */
  public Span to(Span other) {
    return new Span(file, Math.min(start, other.start), Math.max(end, other.end));
  }

  /** The empty stretch before this one's first character. */
  public Span atStart() {
    return new Span(file, start, start);
  }

  /** The empty stretch after this one's last character. */
  public Span atEnd() {
    return new Span(file, end, end);
  }

  /** Whether the other is in this stretch, of a file of the same name. */
  public boolean holds(Span other) {
    return file.path().equals(other.file.path()) && start <= other.start && other.end <= end;
  }

  /** Whether a cursor at an offset is in the stretch or at one of its ends. */
  public boolean touches(int offset) {
    return start <= offset && offset <= end;
  }

  /** By file name, then position. */
  @Override
  public int compareTo(Span other) {
    int byFile = file == other.file ? 0 : file.path().compareTo(other.file.path());
    if (byFile != 0) {
      return byFile;
    }
    int byStart = Integer.compare(start, other.start);
    return byStart != 0 ? byStart : Integer.compare(end, other.end);
  }

  /** Written out, for the one that Java makes costs a cold start several milliseconds. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Span s && file == s.file && start == s.start && end == s.end;
  }

  @Override
  public int hashCode() {
    return (System.identityHashCode(file) * 31 + start) * 31 + end;
  }

  @Override
  public String toString() {
    return file.path() + ":" + line() + ":" + column();
  }
}
