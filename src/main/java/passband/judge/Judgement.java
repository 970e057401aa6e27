package passband.judge;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemNames;
import passband.quantity.Rational;
import passband.words.Language;

/**
 * A verdict on one item.
 *
 * @param attempts as written, in the order of their numbers; the last is judged
 * @param value the number that was compared, in the item's unit; null where there is none
 * @param causes why, and what else is to be said of it; empty for nothing
 * @param uncertainty the expanded uncertainty of the value; NaN where none is known
 * @param factor its coverage factor k; null where none is known
 * @param freedom its effective degrees of freedom; null for infinitely many
 * @param conformity the probability that it conforms to the tolerance; NaN where none is known
 * @param effects what the uncertainty of a derived value is made of; empty for any other, and where
 *     that is not known
 */
public record Judgement(
    Item item,
    List<String> attempts,
    Verdict verdict,
    @Nullable BigDecimal value,
    List<Cause> causes,
    double uncertainty,
    @Nullable Rational factor,
    @Nullable Integer freedom,
    double conformity,
    List<Effect> effects) {

  /** A verdict without a number. */
  static Judgement of(Item item, List<String> attempts, Verdict verdict, List<Cause> causes) {
    return new Judgement(
        item,
        List.copyOf(attempts),
        verdict,
        null,
        causes,
        Double.NaN,
        null,
        null,
        Double.NaN,
        List.of());
  }

  /** The same with what its uncertainty is made of. */
  Judgement effects(List<Effect> known) {
    return new Judgement(
        item, attempts, verdict, value, causes, uncertainty, factor, freedom, conformity, known);
  }

  /** The same with a number. */
  Judgement value(BigDecimal value) {
    return new Judgement(
        item, attempts, verdict, value, causes, uncertainty, factor, freedom, conformity, effects);
  }

  /** What is stated of its value; null where it has no tolerance or no known uncertainty. */
  public @Nullable Statement statement() {
    Item.Limits limits = item instanceof Item.Measured measured ? measured.limits() : null;
    if (limits == null || value == null || Double.isNaN(uncertainty)) {
      return null;
    }
    return Statement.of(value, limits.lower(), limits.upper(), BigDecimal.valueOf(uncertainty));
  }

  /** The causes in words; empty for none. */
  public String why() {
    return CauseWords.of(causes);
  }

  /** The same for people, with the names of items in place of their identities. */
  public String why(ItemNames names, Language language) {
    return CauseWords.of(causes, names, language);
  }

  /** The identity without the phase: the same in every phase. */
  String base() {
    String phase = item.head().phase();
    if (phase == null) {
      return item.id();
    }
    int last = item.id().lastIndexOf('/');
    String place = item.id().substring(0, Math.max(0, last));
    return place.endsWith("/" + phase)
        ? place.substring(0, place.length() - phase.length() - 1) + item.id().substring(last)
        : item.id();
  }
}
