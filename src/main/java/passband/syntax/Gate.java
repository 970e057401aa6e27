package passband.syntax;

import passband.source.Span;

/** {@code gate NAME "…"}: nothing after it is done unless everything before it has passed. */
public record Gate(Word name, Word text, Span span) implements Tree.Part {}
