package passband.diagnostic;

import java.util.List;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * Prints diagnostics for a person: place, message, code, the source line with its span marked,
 * notes and hint.
 */
public final class TextReport {
  private static final int WIDEST = 160;

  private TextReport() {}

  /** All of them, one after the other. */
  public static String of(List<Diagnostic> diagnostics) {
    StringBuilder out = new StringBuilder();
    for (Diagnostic diagnostic : diagnostics) {
      append(out, diagnostic);
    }
    return out.toString();
  }

  private static void append(StringBuilder out, Diagnostic diagnostic) {
    out.append(diagnostic.span())
        .append(": ")
        .append(diagnostic.code().severity().word())
        .append(": ");
    out.append(diagnostic.message()).append(" [").append(diagnostic.code().id()).append("]\n");
    excerpt(out, diagnostic.span());
    for (Diagnostic.Note note : diagnostic.notes()) {
      out.append(note.span()).append(": note: ").append(note.message()).append('\n');
      excerpt(out, note.span());
    }
    if (diagnostic.hint() != null) {
      out.append("hint: ").append(diagnostic.hint()).append('\n');
    }
  }

  /** The line, cut to what fits round the span, and a row of marks below it. */
  private static void excerpt(StringBuilder out, Span span) {
    SourceFile file = span.file();
    String line = file.line(span.line());
    int from = Math.min(span.start() - file.lineStart(span.line()), line.length());
    int to = Math.min(Math.max(from, span.end() - file.lineStart(span.line())), line.length());
    int first = from > WIDEST / 2 ? from - WIDEST / 4 : 0;
    int last = Math.min(line.length(), first + WIDEST);
    if (first > 0 && Character.isLowSurrogate(line.charAt(first))) {
      first--;
    }
    if (last < line.length() && Character.isLowSurrogate(line.charAt(last))) {
      last--;
    }
    to = Math.min(to, last);
    String cutBefore = first > 0 ? "… " : "";
    String cutAfter = last < line.length() ? " …" : "";
    out.append("  ")
        .append(cutBefore)
        .append(visible(line.substring(first, last)))
        .append(cutAfter)
        .append('\n');
    out.append("  ").append(" ".repeat(cutBefore.length() + columns(line, first, from)));
    out.append("^".repeat(Math.max(1, columns(line, from, to)))).append('\n');
  }

  private static int columns(String line, int from, int to) {
    return from < to ? line.codePointCount(from, to) : 0;
  }

  /**
   * One visible mark for each code point: tabs become a space, control characters a picture of
   * their absence.
   */
  private static String visible(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> out.appendCodePoint(c == '\t' ? ' ' : Character.isISOControl(c) ? 0xFFFD : c));
    return out.toString();
  }
}
