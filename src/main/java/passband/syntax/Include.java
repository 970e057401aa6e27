package passband.syntax;

import passband.source.Span;

/** {@code include NAME}: the lines of a shared part, in this place. */
public record Include(Word name, Span span) implements Tree.Part {}
