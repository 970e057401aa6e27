package passband.parse;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.source.Span;
import passband.syntax.Word;

/** Undoes the escapes of a text. */
final class Texts {
  private Texts() {}

  /** Says what cannot be printed of a text or a name, in one message. */
  static void printable(Span span, Diagnostics diagnostics) {
    if (Scripts.check(span, diagnostics)) {
      Glyphs.check(span, diagnostics);
    }
  }

  /**
   * The contents of a quoted text; an unknown escape is an error and stands for itself, likewise a
   * letter that cannot be printed.
   */
  static Word unquoted(Span span, Diagnostics diagnostics) {
    String raw = span.text();
    printable(span, diagnostics);
    boolean closed = raw.length() > 1 && raw.endsWith("\"");
    String body = raw.substring(1, closed ? raw.length() - 1 : raw.length());
    if (body.indexOf('\\') < 0) {
      return new Word(body, span);
    }
    StringBuilder out = new StringBuilder(body.length());
    for (int i = 0; i < body.length(); i++) {
      char c = body.charAt(i);
      if (c != '\\' || i + 1 == body.length()) {
        out.append(c);
        continue;
      }
      i++;
      switch (body.charAt(i)) {
        case '"', '\\' -> out.append(body.charAt(i));
        case 'n' -> out.append('\n');
        default -> {
          Span where = new Span(span.file(), span.start() + i, span.start() + i + 2);
          diagnostics
              .say(Code.UNKNOWN_ESCAPE, where, "unknown escape sequence '%s'", where.text())
              .hint("the escape sequences are \\\" \\\\ and \\n; write \\\\ for a backslash")
              .fix(Fix.insert("write a backslash", where.atStart(), "\\"));
          out.append(body.charAt(i));
        }
      }
    }
    return new Word(out.toString(), span);
  }
}
