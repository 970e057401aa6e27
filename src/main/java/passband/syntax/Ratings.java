package passband.syntax;

import java.util.List;
import java.util.Map;
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
   * How long an instrument takes until a reading is steady, and until it is written down: {@code
   * settle 3 s}, {@code reads in 4 s}; null where nothing says.
   */
  public record Timing(
      @Nullable Amount settle, @Nullable Unknown unknownSettle, @Nullable Amount reads) {}

  /**
   * {@code RATING unknown because "…"}, in the place of a rating that nobody states.
   *
   * @param rating the word that leads the line, {@code error}; before {@code rated} the lead's
   */
  public record Unknown(Word rating, Word reason, Span span) {
    /** What a mode's ratings are called that are no quantities with a limit. */
    private static final Map<String, String> CALLED =
        Map.of("load", "rated load", "duty", "duty", "activate", "activated by");

    /** What a mode's rating is called; null for a quantity with a limit. */
    public @Nullable String called() {
      return CALLED.get(rating.text());
    }

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
