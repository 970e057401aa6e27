package passband.model;

import passband.quantity.Rational;

/**
 * A part of a setting's span in which each mode is tested: low is the lowest quarter, high the
 * highest tenth, middle what is between. Common practice, no source.
 */
public enum SpanPart {
  LOW,
  MIDDLE,
  HIGH;

  private static final Rational QUARTER = Rational.of(1, 4);
  private static final Rational TENTH = Rational.of(1, 10);

  /** Where a setting lies; the ends of the middle count as low and high. */
  public static SpanPart of(Series span, Rational setting) {
    return setting.compareTo(lowEnd(span)) <= 0
        ? LOW
        : setting.compareTo(highStart(span)) >= 0 ? HIGH : MIDDLE;
  }

  /** The highest setting that is low. */
  public static Rational lowEnd(Series span) {
    return span.lowest().plus(width(span).times(QUARTER));
  }

  /** The lowest setting that is high. */
  public static Rational highStart(Series span) {
    return span.highest().minus(width(span).times(TENTH));
  }

  private static Rational width(Series span) {
    return span.highest().minus(span.lowest());
  }
}
