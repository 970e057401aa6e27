package passband.syntax;

import passband.source.Span;

/** A name, or the contents of a text with its escapes undone, and where it stands. */
public record Word(String text, Span span) {
  @Override
  public String toString() {
    return text;
  }
}
