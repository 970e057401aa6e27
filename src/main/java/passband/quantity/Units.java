package passband.quantity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The units of the trade, with the prefixes that the trade uses with each.
 *
 * <p>The table is text of this class and no file beside it: Java takes as long to open the first
 * resource of a jar as to check a small file.
 */
public final class Units {
  /**
   * Symbol, other spellings, printed form, UCUM code, dimension, factor to the coherent SI unit,
   * prefixes that the trade uses with it. Symbols and factors: SI Brochure, 9th edition, tables 2,
   * 4 and 8; codes: UCUM 2.1. mmHg: 133.322 Pa, as UCUM has it (m[Hg] = 133.322 kPa). bpm: beats a
   * minute.
   */
  private static final String TABLE =
      """
      W    |     | W    | W      | power       | 1       | u m k
      A    |     | A    | A      | current     | 1       | n u m
      V    |     | V    | V      | voltage     | 1       | u m k
      ohm  | Ω \u2126 | Ω    | Ohm    | resistance  | 1       | m k M
      %    |     | %    | %      | none        | 1/100   |
      J    |     | J    | J      | energy      | 1       | u m k
      s    |     | s    | s      | time        | 1       | n u m
      min  |     | min  | min    | time        | 60      |
      h    |     | h    | h      | time        | 3600    |
      Hz   |     | Hz   | Hz     | frequency   | 1       | k M
      bpm  |     | bpm  | /min   | frequency   | 1/60    |
      degC |     | °C   | Cel    | temperature | 1       |
      K    |     | K    | K      | kelvin      | 1       | m
      C    |     | C    | C      | charge      | 1       | n u m
      F    |     | F    | F      | capacitance | 1       | p n u m
      S    |     | S    | S      | conductance | 1       | u m
      L    |     | L    | L      | volume      | 1/1000  | u m
      Pa   |     | Pa   | Pa     | pressure    | 1       | m k
      mmHg |     | mmHg | mm[Hg] | pressure    | 133.322 |
      g    |     | g    | g      | mass        | 1/1000  | u m k
      m    |     | m    | m      | length      | 1       | u m c k
      N    |     | N    | N      | force       | 1       | m k
      """;

  private static final Map<String, Unit> BY_SPELLING = new HashMap<>();
  private static final Map<String, Unit> BY_SYMBOL = new LinkedHashMap<>();
  private static final int MOST_SUGGESTED = 3;

  static {
    BY_SPELLING.put("", Unit.ONE);
    for (String[] row : Table.rows(TABLE)) {
      add(row);
    }
  }

  private Units() {}

  /** Read when a slip is met. */
  private static final class Slips {
    private static final Map<String, List<String>> MEANT = new HashMap<>();

    static {
      for (String[] row : Table.read(Units.class, "unit-slips.tsv")) {
        MEANT.put(row[0], List.of(row[1].split(" ")));
      }
    }
  }

  /** SI prefixes (SI Brochure, 9th edition, table 7): spelling, printed, factor. */
  private enum Prefix {
    NONE("", "", 1, 1),
    P("p", "p", 1, 1_000_000_000_000L),
    N("n", "n", 1, 1_000_000_000),
    U("u", "µ", 1, 1_000_000),
    M("m", "m", 1, 1_000),
    C("c", "c", 1, 100),
    K("k", "k", 1_000, 1),
    MEGA("M", "M", 1_000_000, 1);

    private final String symbol;
    private final String printed;
    private final Rational factor;

    Prefix(String symbol, String printed, long times, long over) {
      this.symbol = symbol;
      this.printed = printed;
      this.factor = Rational.of(times, over);
    }

    static Prefix of(String symbol) {
      for (Prefix prefix : values()) {
        if (prefix.symbol.equals(symbol)) {
          return prefix;
        }
      }
      throw new IllegalStateException("there is no prefix '" + symbol + "'");
    }
  }

  private static void add(String[] row) {
    List<String> spellings = words(row[1]);
    Rational factor = factor(row[5]);
    add(row, spellings, Prefix.NONE, factor);
    for (String prefix : words(row[6])) {
      add(row, spellings, Prefix.of(prefix), factor);
    }
  }

  private static void add(String[] row, List<String> spellings, Prefix prefix, Rational factor) {
    String symbol = prefix.symbol + row[0];
    Unit unit =
        new Unit(
            symbol,
            prefix.printed + row[2],
            prefix.symbol + row[3],
            Dimension.named(row[4]),
            factor.times(prefix.factor));
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
  public static @Nullable Unit find(String text) {
    return quotient(text, BY_SPELLING);
  }

  private static @Nullable Unit quotient(String text, Map<String, Unit> names) {
    Unit unit = names.get(text);
    int stroke = text.indexOf('/');
    if (unit != null || stroke < 0) {
      return unit;
    }
    Unit over = names.get(text.substring(0, stroke));
    Unit under = names.get(text.substring(stroke + 1));
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

  /**
   * The unit of a spelling that is in the table.
   *
   * @throws IllegalStateException when it is not
   */
  public static Unit of(String symbol) {
    Unit unit = find(symbol);
    if (unit == null) {
      throw new IllegalStateException("there is no unit '" + symbol + "'");
    }
    return unit;
  }

  /** The unit with this UCUM code, which may be a quotient of two; null when there is none. */
  public static @Nullable Unit ofUcum(String code) {
    return quotient(code, Recorded.BY_UCUM);
  }

  /**
   * The unit that a file of readings names: by its UCUM code, as sources spell it or as it is
   * printed, or a quotient of two such; null when there is none.
   */
  public static @Nullable Unit recorded(String text) {
    return quotient(text, Recorded.BY_NAME);
  }

  /** Every name that {@link #recorded} knows, quotients apart. */
  public static Map<String, Unit> recordedNames() {
    return Collections.unmodifiableMap(Recorded.BY_NAME);
  }

  /**
   * A unit with what the trade makes of it by prefixes.
   *
   * @param unit the one without a prefix
   * @param names all that files of readings call it
   * @param prefixes before each of the names; {@code u} is written in two other ways too
   */
  public record Family(Unit unit, List<String> names, List<String> prefixes) {}

  /** Whose names are all of {@link #recordedNames}, in the order of the table. */
  public static List<Family> families() {
    List<Family> families = new ArrayList<>();
    for (String[] row : Table.rows(TABLE)) {
      Unit unit = of(row[0]);
      LinkedHashSet<String> names = new LinkedHashSet<>(List.of(unit.ucum(), unit.symbol()));
      names.addAll(words(row[1]));
      names.add(unit.printed());
      families.add(new Family(unit, List.copyOf(names), words(row[6])));
    }
    return families;
  }

  private static List<String> words(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(" "));
  }

  /** Read when a file is. */
  private static final class Recorded {
    private static final Map<String, Unit> BY_UCUM = new LinkedHashMap<>();
    private static final Map<String, Unit> BY_NAME = new LinkedHashMap<>();

    static {
      all().forEach(unit -> BY_UCUM.put(unit.ucum(), unit));
      BY_NAME.putAll(BY_UCUM);
      new TreeMap<>(BY_SPELLING).forEach(BY_NAME::putIfAbsent);
      all().forEach(unit -> BY_NAME.putIfAbsent(unit.printed(), unit));
      BY_NAME.remove("");
    }
  }

  /** What was probably meant by a spelling that is no unit, the likeliest first, at most three. */
  public static List<String> suggest(String text) {
    List<String> slip = Slips.MEANT.get(text);
    if (slip == null) {
      slip = Slips.MEANT.get(text.toLowerCase(Locale.ROOT));
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

  /** Those of a dimension, in the order of the table. */
  public static List<Unit> of(Dimension dimension) {
    List<Unit> units = new ArrayList<>();
    for (Unit unit : BY_SYMBOL.values()) {
      if (unit.dimension().equals(dimension)) {
        units.add(unit);
      }
    }
    return units;
  }

  /** Every symbol, in the order of the table. */
  public static List<String> symbols() {
    return List.copyOf(BY_SYMBOL.keySet());
  }
}
