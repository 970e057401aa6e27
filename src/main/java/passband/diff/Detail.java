package passband.diff;

import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What else a reviewer needs of a limit that changed, worked out again on both sides. */
public record Detail(What what, Side was, Side now) {
  /** What it tells. */
  public enum What {
    RULE,
    BEFORE_ROUNDING,
    UNCERTAINTY,
    SOURCE;

    /** As printed. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /**
   * One side.
   *
   * @param text for people
   * @param values what it is in numbers; null for what is no number
   */
  public record Side(String text, @Nullable Values values) {
    static Side of(String text) {
      return new Side(text, null);
    }
  }

  /**
   * Numbers with six significant digits.
   *
   * @param unit a UCUM code
   * @param lower null where that side is open; of an uncertainty the value, likewise {@code upper}
   */
  public record Values(String unit, @Nullable BigDecimal lower, @Nullable BigDecimal upper) {}

  /** In one line. */
  public String text() {
    return what.word() + ": " + was.text + " -> " + now.text;
  }
}
