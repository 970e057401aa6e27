package passband.diagnostic;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * One thing found, where it is, and what to do about it.
 *
 * @param code what kind of thing
 * @param span the words it is about
 * @param message what is wrong, one sentence without a full stop
 * @param notes other places that belong to it, in order
 * @param hint what to write instead; null when only the author can tell
 * @param fixes the ways to make it go away, the likeliest first; empty when only the author can
 *     tell
 */
public record Diagnostic(
    Code code, Span span, String message, List<Note> notes, @Nullable String hint, List<Fix> fixes)
    implements Comparable<Diagnostic> {

  /** Another place that belongs to a diagnostic. */
  public record Note(Span span, String message) {}

  /** Copies the notes and the fixes. */
  public Diagnostic {
    notes = List.copyOf(notes);
    fixes = List.copyOf(fixes);
  }

  /** The text that its only fix puts in the place of its span; null where that is not the fix. */
  public @Nullable String replacement() {
    boolean one = fixes.size() == 1 && fixes.get(0).edits().size() == 1;
    Fix.Edit edit = one ? fixes.get(0).edits().get(0) : null;
    return edit != null && edit.span().equals(span) ? edit.text() : null;
  }

  /** The same with what to do about it: the title of the fix as the hint. */
  public Diagnostic with(Fix fix) {
    return new Diagnostic(code, span, message, notes, fix.title(), List.of(fix));
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
