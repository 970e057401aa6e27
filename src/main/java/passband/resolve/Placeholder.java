package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import passband.source.Span;
import passband.syntax.Word;

/**
 * A name in braces in a text, such as {@code {setting}}; {@code {{} is a brace and no placeholder.
 *
 * @param name the name without the braces, where it stands in the source
 * @param start the offset of the opening brace in the text
 * @param end the offset after the closing brace in the text, or its length where there is none
 */
public record Placeholder(Word name, int start, int end) {

  /** The placeholders of a text, in order. */
  public static List<Placeholder> in(Word text) {
    List<Placeholder> found = new ArrayList<>();
    String raw = text.text();
    String written = text.span().text();
    int open = raw.indexOf('{');
    int source = written.indexOf('{');
    while (open >= 0 && source >= 0) {
      boolean brace = raw.startsWith("{{", open);
      int close = brace ? open + 1 : raw.indexOf('}', open);
      int end = close < 0 ? raw.length() : close + 1;
      if (!brace) {
        String name = raw.substring(open + 1, close < 0 ? end : close);
        found.add(new Placeholder(new Word(name, place(text, source + 1, name)), open, end));
      }
      source = after(written, source, raw.substring(open, end));
      open = raw.indexOf('{', end);
    }
    return found;
  }

  /** Whether a text has the placeholder of a name. */
  public static boolean stands(Word text, String name) {
    for (Placeholder one : in(text)) {
      if (one.name.text().equals(name)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Where the brace after those of a part stands in the source. Escapes make a text shorter than it
   * is written, but give no brace of their own, so that braces count alike in both.
   */
  private static int after(String written, int source, String part) {
    int next = source;
    for (int i = 0; i < part.length() && next >= 0; i++) {
      next = part.charAt(i) == '{' ? written.indexOf('{', next + 1) : next;
    }
    return next;
  }

  private static Span place(Word text, int offset, String name) {
    int start = text.span().start() + offset;
    int end = Math.min(start + name.length(), text.span().end());
    return new Span(text.span().file(), start, end);
  }

  /** The placeholder with its braces, in the source. */
  public Span span() {
    Span inner = name.span();
    boolean closed = inner.file().text().startsWith("}", inner.end());
    return new Span(inner.file(), inner.start() - 1, inner.end() + (closed ? 1 : 0));
  }
}
