package passband.render;

import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemWords;
import passband.limit.Limit;
import passband.quantity.Unit;
import passband.words.Language;

/** Limits in the words of a sheet's language. */
final class LimitWords {
  private final Language language;

  LimitWords(Language language) {
    this.language = language;
  }

  /** What a reading has to be. */
  String of(Limit limit, Limit.Rounded ends) {
    String unit = limit.unit().equals(Unit.ONE) ? "" : " " + limit.unit().printed();
    return between(limit.end(ends.lower()), limit.end(ends.upper()), unit);
  }

  /** What a recorded number has to be; empty where any will do. */
  String of(Item.Recorded item) {
    Item.Accepts accepts = item.accepts();
    if (accepts == null) {
      return "";
    }
    String low = accepts.lower() == null ? null : accepts.lower().toPlainString();
    String high = accepts.upper() == null ? null : accepts.upper().toPlainString();
    return between(low, high, ItemWords.unit(item));
  }

  private String between(@Nullable String low, @Nullable String high, String unit) {
    if (low == null) {
      return high == null ? "" : language.of("limits.at-most", language.number(high) + unit);
    }
    return high == null
        ? language.of("limits.at-least", language.number(low) + unit)
        : language.of("limits.between", language.number(low), language.number(high) + unit);
  }
}
