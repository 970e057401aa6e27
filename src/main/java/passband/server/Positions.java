package passband.server;

import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import passband.source.SourceFile;
import passband.source.Span;

/** Between offsets of a text and the protocol's lines and columns, which count UTF-16 units. */
final class Positions {
  private Positions() {}

  static Position of(SourceFile source, int offset) {
    int line = source.lineOf(offset);
    return new Position(line - 1, offset - source.lineStart(line));
  }

  static Range of(Span span) {
    return new Range(of(span.file(), span.start()), of(span.file(), span.end()));
  }

  /** The offset; the nearest there is for a position that is not in the text. */
  static int offset(SourceFile source, Position position) {
    if (position.getLine() >= source.lineCount()) {
      return source.text().length();
    }
    int line = Math.max(0, position.getLine()) + 1;
    int start = source.lineStart(line);
    int length = source.line(line).length();
    return start + Math.max(0, Math.min(position.getCharacter(), length));
  }
}
