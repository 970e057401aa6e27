package passband.syntax;

import passband.source.Span;

/** One term of an error statement. */
public record AccuracyTerm(Amount amount, Of of, Span span) {
  /** What a percentage is taken of. */
  public enum Of {
    /** Nothing: the amount stands by itself; a bare percentage is of the value. */
    ITSELF,
    READING,
    RANGE
  }
}
