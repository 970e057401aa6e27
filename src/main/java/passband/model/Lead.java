package passband.model;

import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.syntax.LeadKind;
import passband.syntax.Ratings;
import passband.syntax.Word;

/**
 * A wire, a jumper or an accessory.
 *
 * @param rated the highest peak voltage, in volts; null when not known
 * @param ratedText the same as written
 * @param unknown why nobody knows it; null when it is known, or nothing is said
 * @param colour null when not given
 */
public record Lead(
    LeadKind kind,
    Word name,
    String title,
    @Nullable Rational rated,
    @Nullable String ratedText,
    Ratings.@Nullable Unknown unknown,
    @Nullable String colour)
    implements Named {
  /** Whether it is a jumper. */
  public boolean link() {
    return kind == LeadKind.LINK;
  }

  /** Whether it is an accessory. */
  public boolean accessory() {
    return kind == LeadKind.ACCESSORY;
  }
}
