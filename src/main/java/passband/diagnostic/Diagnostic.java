package passband.diagnostic;

import java.util.List;
import passband.source.Span;

/**
 * One thing found, where it is, and what to write instead.
 *
 * @param code what kind of thing
 * @param span the words it is about
 * @param message what is wrong, one sentence without a full stop
 * @param notes other places that belong to it, in order
 * @param hint what to write instead; null when there is no one mend
 * @param replacement the text that would mend the span when put in its place; null when the hint is
 *     not that simple
 */
public record Diagnostic(
    Code code, Span span, String message, List<Note> notes, String hint, String replacement)
    implements Comparable<Diagnostic> {

  /** Another place that belongs to a diagnostic. */
  public record Note(Span span, String message) {}

  /** Copies the notes. */
  public Diagnostic {
    notes = List.copyOf(notes);
  }

  /** A diagnostic with a message only. */
  public static Diagnostic of(Code code, Span span, String message) {
    return new Diagnostic(code, span, message, List.of(), null, null);
  }

  /** The same with a hint. */
  public Diagnostic hint(String text) {
    return new Diagnostic(code, span, message, notes, text, replacement);
  }

  /** The same with a text that mends the span when put in its place. */
  public Diagnostic replaceBy(String text) {
    return new Diagnostic(
        code, span, message, notes, hint == null ? "write '" + text + "'" : hint, text);
  }

  /** The same with another place. */
  public Diagnostic note(Span where, String text) {
    List<Note> more = new java.util.ArrayList<>(notes);
    more.add(new Note(where, text));
    return new Diagnostic(code, span, message, more, hint, replacement);
  }

  /** Whether it stops output. */
  public boolean isError() {
    return code.severity() == Severity.ERROR;
  }

  /** By place, then code, then message. */
  @Override
  public int compareTo(Diagnostic other) {
    int byPlace = span.compareTo(other.span);
    if (byPlace != 0) {
      return byPlace;
    }
    int byCode = code.id().compareTo(other.code.id());
    return byCode != 0 ? byCode : message.compareTo(other.message);
  }
}
