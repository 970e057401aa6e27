package passband.quantity;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The units of the trade, from the table {@code units.tsv}, with the prefixes that the trade uses
 * with each.
 */
public final class Units {
  private static final Map<String, Unit> BY_SPELLING = new HashMap<>();
  private static final Map<String, Unit> BY_SYMBOL = new LinkedHashMap<>();
  private static final Map<String, List<String>> SLIPS = new HashMap<>();
  private static final int MOST_SUGGESTED = 3;

  static {
    BY_SPELLING.put("", Unit.ONE);
    Table.read("units.tsv").forEach(Units::add);
    for (String[] row : Table.read("unit-slips.tsv")) {
      SLIPS.put(row[0], List.of(row[1].split(" ")));
    }
  }

  private Units() {}

  /** SI prefixes (SI Brochure, 9th edition, table 7): spelling, printed, power of ten. */
  private enum Prefix {
    NONE("", "", 0),
    P("p", "p", -12),
    N("n", "n", -9),
    U("u", "µ", -6),
    M("m", "m", -3),
    C("c", "c", -2),
    K("k", "k", 3),
    MEGA("M", "M", 6);

    private final String symbol;
    private final String printed;
    private final int power;

    Prefix(String symbol, String printed, int power) {
      this.symbol = symbol;
      this.printed = printed;
      this.power = power;
    }

    static Prefix of(String symbol) {
      for (Prefix prefix : values()) {
        if (prefix.symbol.equals(symbol)) {
          return prefix;
        }
      }
      throw new IllegalStateException("units.tsv names a prefix '" + symbol + "'");
    }
  }

  private static void add(String[] row) {
    String[] spellings = row[1].isEmpty() ? new String[0] : row[1].split(" ");
    add(row, spellings, Prefix.NONE);
    for (String prefix : row[6].isEmpty() ? new String[0] : row[6].split(" ")) {
      add(row, spellings, Prefix.of(prefix));
    }
  }

  private static void add(String[] row, String[] spellings, Prefix prefix) {
    Rational factor = factor(row[5]).times(Rational.TEN.pow(prefix.power));
    String symbol = prefix.symbol + row[0];
    Unit unit =
        new Unit(
            symbol,
            prefix.printed + row[2],
            prefix.symbol + row[3],
            Dimension.named(row[4]),
            factor);
    BY_SYMBOL.put(symbol, unit);
    BY_SPELLING.put(symbol, unit);
    for (String spelling : spellings) {
      BY_SPELLING.put(prefix.symbol + spelling, unit);
    }
    if (prefix == Prefix.U) {
      for (String micro : List.of("\u00B5", "\u03BC")) {
        BY_SPELLING.put(micro + row[0], unit);
        for (String spelling : spellings) {
          BY_SPELLING.put(micro + spelling, unit);
        }
      }
    }
  }

  private static Rational factor(String text) {
    int stroke = text.indexOf('/');
    return stroke < 0
        ? Rational.parse(text)
        : Rational.parse(text.substring(0, stroke))
            .over(Rational.parse(text.substring(stroke + 1)));
  }

  /**
   * The unit of a spelling, two of them with a stroke between for a quotient; null when there is
   * none.
   */
  public static Unit find(String text) {
    Unit unit = BY_SPELLING.get(text);
    int stroke = text.indexOf('/');
    if (unit != null || stroke < 0) {
      return unit;
    }
    Unit over = BY_SPELLING.get(text.substring(0, stroke));
    Unit under = BY_SPELLING.get(text.substring(stroke + 1));
    if (over == null || under == null || over == Unit.ONE || under == Unit.ONE) {
      return null;
    }
    return new Unit(
        over.symbol() + "/" + under.symbol(),
        over.printed() + "/" + under.printed(),
        over.ucum() + "/" + under.ucum(),
        over.dimension().over(under.dimension()),
        over.factor().over(under.factor()));
  }

  /** The unit with this UCUM code; null when there is none. */
  public static Unit ofUcum(String code) {
    return all().stream().filter(u -> u.ucum().equals(code)).findFirst().orElse(null);
  }

  /** What was probably meant by a spelling that is no unit, the likeliest first, at most three. */
  public static List<String> suggest(String text) {
    List<String> slip = SLIPS.get(text);
    if (slip == null) {
      slip = SLIPS.get(text.toLowerCase(Locale.ROOT));
    }
    if (slip != null) {
      return slip;
    }
    List<String> near = new ArrayList<>();
    for (String symbol : BY_SYMBOL.keySet()) {
      if (symbol.equalsIgnoreCase(text)) {
        near.add(symbol);
      }
    }
    return near.subList(0, Math.min(MOST_SUGGESTED, near.size()));
  }

  /** Every unit, in the order of the table. */
  public static List<Unit> all() {
    return List.copyOf(BY_SYMBOL.values());
  }

  /** Every symbol, in the order of the table. */
  public static List<String> symbols() {
    return List.copyOf(BY_SYMBOL.keySet());
  }
}
