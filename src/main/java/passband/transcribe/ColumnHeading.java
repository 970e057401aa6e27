package passband.transcribe;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.quantity.Dimension;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * A column's heading: what it holds, and in what unit.
 *
 * @param unit null where the heading names none
 */
record ColumnHeading(String text, Role role, @Nullable Unit unit) {

  /**
   * What a column holds, asked for in this order: the words of one heading may be of several. No
   * heading has the last one: 'output' alone is of limits, 'output power' may be the setting.
   */
  enum Role {
    NOTE("note notes remark remarks comment bemerkung anmerkung remarque"),
    OUTLET("outlet socket connector ausgang buchse anschluss sortie prise"),
    TOLERANCE("tolerance tol ± toleranz tolérance"),
    LOWER("lower min minimum low untere unterer unten untergrenze inférieure inférieur"),
    UPPER("upper max maximum high obere oberer oben obergrenze supérieure supérieur"),
    NOMINAL(
        "nominal target sollwert sollstrom sollspannung nennwert nennstrom nennspannung nominale"
            + " cible"),
    MODE("mode function betriebsart modus funktion fonction"),
    LOAD("load resistance r rl last lastwiderstand widerstand charge résistance"),
    SETTING("setting set level einstellung stufe réglage niveau"),
    LIMITS(
        "limits limit range current voltage leakage i u grenzwert grenzwerte grenzen bereich strom"
            + " spannung limites courant tension fuite"),
    POWER("power energy p leistung energie puissance énergie"),
    OUTPUT("output");

    private final Set<String> words;

    Role(String words) {
      this.words = Set.of(words.split(" "));
    }
  }

  private static final Map<String, String> SPELLINGS = new HashMap<>();

  static {
    spelt("ohm", "Ohm Ohms ohms");
    spelt("kohm", "kOhm kOhms");
    spelt("W", "Watt watt Watts watts");
    spelt("V", "Volt volt Volts volts Vp Vpk");
    spelt("kV", "kVp kVpk");
    spelt("A", "Ap Amp Amps amps");
    spelt("mA", "mAp");
  }

  private static void spelt(String unit, String spellings) {
    for (String spelling : spellings.split(" ")) {
      SPELLINGS.put(spelling, unit);
    }
  }

  /** What of a current or a voltage a heading is about. */
  enum Kind {
    EFFECTIVE(""),
    PEAK("peak vp vpk kvp kvpk ap map spitze spitzenspannung spitzenstrom scheitelwert crête"),
    LEAKAGE("leakage ableitstrom leckstrom fuite");

    private final Set<String> words;

    Kind(String words) {
      this.words = Set.of(words.split(" "));
    }
  }

  /** What of a current or a voltage it is about. */
  Kind kind() {
    List<String> words = words(text);
    for (Kind kind : List.of(Kind.LEAKAGE, Kind.PEAK)) {
      if (words.stream().anyMatch(kind.words::contains)) {
        return kind;
      }
    }
    return Kind.EFFECTIVE;
  }

  static final String KNOWN_UNITS = "W, mW, kW, mA, A, V, kV, mJ, J, ohm, kohm, %";

  private static final int SHORTEST_OF_COMPOUND = 5;

  private static final Set<Dimension> DIMENSIONS =
      Set.of(
          Units.of("W").dimension(),
          Units.of("A").dimension(),
          Units.of("V").dimension(),
          Units.of("J").dimension(),
          Units.of("ohm").dimension(),
          Units.of("%").dimension());

  /** The unit of a spelling; null for none that tables of limits have. */
  static @Nullable Unit unit(String text) {
    Unit unit = Units.find(SPELLINGS.getOrDefault(text, text));
    return unit == null || unit == Unit.ONE || !DIMENSIONS.contains(unit.dimension()) ? null : unit;
  }

  /** Reads {@code NAME}, {@code NAME/UNIT}, {@code NAME (UNIT)}, {@code NAME in UNIT} and such. */
  static ColumnHeading of(String text) throws TableFault {
    String name = text;
    String written = "";
    int open = Math.max(text.lastIndexOf('('), text.lastIndexOf('['));
    int stroke = text.lastIndexOf('/');
    int blank = text.lastIndexOf(' ');
    if (open > 0 && (text.endsWith(")") || text.endsWith("]"))) {
      name = text.substring(0, open);
      written = text.substring(open + 1, text.length() - 1).strip();
    } else if (stroke > 0) {
      name = text.substring(0, stroke);
      written = text.substring(stroke + 1).strip();
    } else if (blank > 0 && unit(text.substring(blank + 1)) != null) {
      name = text.substring(0, blank);
      written = text.substring(blank + 1);
    }
    if (written.startsWith("in ")) {
      written = written.substring(3).strip();
    }
    Unit unit = written.isEmpty() ? null : unit(written);
    Role role = role(name);
    if (role == null) {
      throw new TableFault(
          "the heading '"
              + text
              + "' is none that is known (outlet, mode; setting, power, level or energy; load; limits, or"
              + " lower and upper; nominal; tolerance; note)");
    }
    if (!written.isEmpty() && unit == null && role != Role.NOTE && role != Role.MODE) {
      throw new TableFault(
          "the heading '"
              + text
              + "': unknown unit '"
              + written
              + "' (known here: "
              + KNOWN_UNITS
              + ")"
              + meant(written));
    }
    return new ColumnHeading(text, role, unit);
  }

  private static String meant(String written) {
    for (String near : Units.suggest(written)) {
      if (unit(near) != null) {
        return "; did you mean '" + near + "'?";
      }
    }
    return "";
  }

  private static @Nullable Role role(String name) {
    List<String> words = words(name);
    for (Role role : Role.values()) {
      if (words.stream().anyMatch(role.words::contains)) {
        return role == Role.OUTPUT ? Role.LIMITS : role;
      }
    }
    for (Role role : Role.values()) {
      if (words.stream().anyMatch(word -> isCompound(word, role))) {
        return role;
      }
    }
    return null;
  }

  private static List<String> words(String text) {
    return List.of(text.toLowerCase(Locale.ROOT).replace("+/-", "±").strip().split("[^\\p{L}±]+"));
  }

  /** Whether a word is a German compound of a role's word: Ausgangsstrom. */
  private static boolean isCompound(String word, Role role) {
    return role.words.stream()
        .anyMatch(own -> own.length() >= SHORTEST_OF_COMPOUND && word.endsWith(own));
  }
}
