package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/** What a profile says of ratings, as written. */
public final class Ratings {
  private Ratings() {}

  /** {@code duty 10 s on, 30 s off}; both null when continuous. */
  public record Duty(@Nullable Amount on, @Nullable Amount off, Span span) {}

  /** {@code 300 W for 15 s}; {@code time} is null for continuous. */
  public record Power(Amount power, @Nullable Amount time, Span span) {}

  /**
   * {@code RATING unknown because "…"}, in the place of a rating that nobody states.
   *
   * @param rating the word that leads the line, {@code error}; before {@code rated} the lead's
   */
  public record Unknown(Word rating, Word reason, Span span) {
    /** The one of a rating, or null. */
    public static @Nullable Unknown find(List<Unknown> among, String rating) {
      for (Unknown one : among) {
        if (one.rating.text().equals(rating)) {
          return one;
        }
      }
      return null;
    }
  }
}
