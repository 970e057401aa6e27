package passband.evidence;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.words.Language;

/** Limits and units as people write them. */
public final class ItemWords {
  private ItemWords() {}

  /** What is accepted: {@code 179.0 to 219.0 mA}; empty for a reading without limits. */
  public static String accepted(Item.Measured item) {
    return accepted(item, Language.ENGLISH);
  }

  /** The same in a language. */
  public static String accepted(Item.Measured item, Language language) {
    Item.Limits limits = item.limits();
    return limits == null
        ? ""
        : between(limits.acceptLower(), limits.acceptUpper(), item, language);
  }

  /** The tolerance, likewise. */
  public static String tolerance(Item.Measured item, Language language) {
    Item.Limits limits = item.limits();
    return limits == null ? "" : between(limits.lower(), limits.upper(), item, language);
  }

  /** The setting at which it is measured: {@code 30 W}; empty for none. */
  public static String setting(Item.Measured item) {
    return amount(item.where().setting(), item.where().settingUnit());
  }

  /** The load at which it is measured, likewise. */
  public static String load(Item.Measured item) {
    return amount(item.where().load(), item.where().loadUnit());
  }

  private static String amount(@Nullable BigDecimal number, @Nullable String unit) {
    return number == null ? "" : number.toPlainString() + unit(unit);
  }

  /** Further settings, {@code NAME=VALUE} between semicolons; empty for none. */
  public static String furtherSettings(Item.Measured item) {
    List<String> further = new ArrayList<>();
    item.where().extras().forEach((name, value) -> further.add(name + "=" + value));
    return String.join("; ", further);
  }

  /** What a recorded number has to be; empty where any will do. */
  public static String accepted(Item.Recorded item) {
    return accepted(item, Language.ENGLISH);
  }

  /** The same in a language. */
  public static String accepted(Item.Recorded item, Language language) {
    Item.Accepts accepts = item.accepts();
    return accepts == null ? "" : between(accepts.lower(), accepts.upper(), item, language);
  }

  private static String between(
      @Nullable BigDecimal low, @Nullable BigDecimal high, Item item, Language language) {
    String from = low == null ? null : language.number(low.toPlainString());
    String to = high == null ? null : language.number(high.toPlainString());
    String unit = unit(item);
    if (from == null) {
      return to == null ? "" : language.of("limits.at-most", to + unit);
    }
    return to == null
        ? language.of("limits.at-least", from + unit)
        : language.of("limits.between", from, to + unit);
  }

  /** A UCUM code as people write the unit, after a space; empty for a plain number or null. */
  public static String unit(@Nullable String ucum) {
    if (ucum == null || ucum.equals("1")) {
      return "";
    }
    Unit known = Units.recorded(ucum);
    return " " + (known == null ? ucum : known.printed());
  }

  /** The unit of an item; empty for one that has none. */
  public static String unit(Item item) {
    return item instanceof Item.Measured m
        ? unit(m.scale().unit())
        : item instanceof Item.Recorded r ? unit(r.unit()) : "";
  }
}
