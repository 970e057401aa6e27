package passband.diagnostic;

import java.util.List;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * One way to make a diagnostic go away, made where the fault is found.
 *
 * @param title what it does, such as {@code write '20 mA'}
 * @param edits what to write where; they do not overlap
 * @param preferred whether it is the one that is meant, so that an editor may apply it unasked; of
 *     several fixes at most one
 */
public record Fix(String title, List<Edit> edits, boolean preferred) {

  /** A text in the place of a span. */
  public record Edit(Span span, String text) {}

  /** Copies the edits. */
  public Fix {
    edits = List.copyOf(edits);
  }

  /** Another text in the place of a span. */
  public static Fix replace(Span span, String text) {
    return of("write '" + text + "'", new Edit(span, text));
  }

  /** A text at an empty span. */
  public static Fix insert(String title, Span at, String text) {
    return of(title, new Edit(at, text));
  }

  /** The whole lines that a span is on, with their ends, taken out. */
  public static Fix removeLines(String title, Span span) {
    SourceFile source = span.file();
    int last = source.lineOf(span.end());
    int end = last < source.lineCount() ? source.lineStart(last + 1) : source.text().length();
    return of(title, new Edit(new Span(source, source.lineStart(span.line()), end), ""));
  }

  /** Two texts in each other's place. */
  public static Fix swap(Span one, Span other) {
    return of(
        "swap '" + one.text() + "' and '" + other.text() + "'",
        new Edit(one, other.text()),
        new Edit(other, one.text()));
  }

  /** A fix of these edits. */
  public static Fix of(String title, Edit... edits) {
    return new Fix(title, List.of(edits), false);
  }

  /** The same, preferred. */
  public Fix asPreferred() {
    return new Fix(title, edits, true);
  }
}
