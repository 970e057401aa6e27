package passband.bench;

import passband.source.Span;

/**
 * The value of a variable and where it was brought about.
 *
 * @param value in words, as the sheet prints it
 * @param since the line that did it
 */
public record Known(String value, Span since) {}
