package passband.diagnostic;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * A diagnostic that has been said and is still being added to. Formats are those of {@link
 * String#format}, without a locale's signs; what is counted in a unit comes already formatted.
 */
public final class DiagnosticBuilder {
  private final Code code;
  private final Span span;
  private final String message;
  private final List<Diagnostic.Note> notes = new ArrayList<>();
  private final List<Fix> fixes = new ArrayList<>();
  private @Nullable String hint;

  DiagnosticBuilder(Code code, Span span, String format, Object... args) {
    this.code = code;
    this.span = span;
    this.message = text(format, args);
  }

  private static String text(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }

  /** Adds another place that belongs to it; of one place the last note counts. */
  public DiagnosticBuilder note(Span where, String format, Object... args) {
    notes.removeIf(one -> one.span().equals(where));
    notes.add(new Diagnostic.Note(where, text(format, args)));
    return this;
  }

  /** Says what to write instead. */
  public DiagnosticBuilder hint(String format, Object... args) {
    hint = text(format, args);
    return this;
  }

  /** Adds a way to make it go away. */
  public DiagnosticBuilder fix(Fix fix) {
    fixes.add(fix);
    return this;
  }

  /** Adds the fix that is meant: this text in the place of the span. */
  public DiagnosticBuilder fixBy(String text) {
    hint = hint == null ? "write '" + text + "'" : hint;
    return fix(Fix.replace(span, text).asPreferred());
  }

  /**
   * Adds the word that was probably meant, as a hint and a fix.
   *
   * @param near null when there is none that is near
   * @param otherwise the hint then
   */
  public DiagnosticBuilder meant(@Nullable String near, String otherwise, Object... args) {
    return near == null ? hint(otherwise, args) : hint("did you mean '%s'?", near).fixBy(near);
  }

  Diagnostic build() {
    return new Diagnostic(code, span, message, notes, hint, fixes);
  }
}
