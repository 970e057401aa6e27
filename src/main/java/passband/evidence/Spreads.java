package passband.evidence;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.quantity.Distribution;
import passband.quantity.Rational;

/** Reads what uncertainties are made of from {@code limits.json}. */
final class Spreads {
  /** How the keys of a load's error begin. */
  static final String LOAD = "load_error_";

  static final String REPEATS = "repeats";

  private static final String SPREAD = "distribution";
  private static final String COVERAGE = "coverage_factor";
  private static final String FREEDOM = "degrees_of_freedom";
  private static final String NORMAL = Distribution.Shape.NORMAL.word();

  private Spreads() {}

  /** Null where the error is not known. */
  static @Nullable List<Item.Contribution> budget(JsonNode node, int format) throws BadInput {
    if (node.isNull()) {
      return null;
    }
    List<Item.Contribution> budget = new ArrayList<>();
    for (JsonNode part : node.list()) {
      Set<String> keys = new HashSet<>(Set.of("contribution", "relative", "absolute"));
      keys.addAll(keys(part, "", format));
      part.only(keys);
      budget.add(
          new Item.Contribution(
              part.at("contribution").name(),
              part.at("relative").notNegative(),
              part.at("absolute").notNegative(),
              spread(part, "", format)));
    }
    return budget;
  }

  static Set<String> keys(JsonNode node, String prefix, int format) throws BadInput {
    String word = prefix + SPREAD;
    Set<String> keys = new HashSet<>();
    if (format < 4) {
      return keys;
    }
    keys.add(word);
    if (node.has(word) && node.at(word).text().equals(NORMAL)) {
      keys.add(prefix + COVERAGE);
    }
    if (format > 4) {
      keys.add(prefix + FREEDOM);
    }
    return keys;
  }

  /** Rectangular where the file is of a format that does not say it. */
  private static Distribution spread(JsonNode node, String prefix, int format) throws BadInput {
    if (format < 4) {
      return Distribution.RECTANGULAR;
    }
    JsonNode word = node.at(prefix + SPREAD);
    boolean normal = word.text().equals(NORMAL);
    Distribution found =
        Distribution.find(
            word.text(), normal ? Rational.of(node.at(prefix + COVERAGE).positive()) : null);
    if (found == null) {
      throw word.fault("unknown distribution '" + word.text() + "'");
    }
    String degrees = prefix + FREEDOM;
    BigDecimal number = format == 4 ? null : node.at(degrees).optionalNumber();
    if (number == null) {
      return found;
    }
    Rational freedom = Rational.of(number);
    if (freedom.compareTo(Rational.ONE) < 0) {
      throw node.at(degrees).fault("there is at least one degree of freedom");
    }
    return found.with(freedom);
  }

  static Calculation calculation(JsonNode node, int format) throws BadInput {
    Calculation calculation =
        new Calculation(
            new WrittenFormula(node.at("formula").name()),
            node.at("parts").textsByName(),
            Calculation.loadError(
                node.at("load_error_relative").notNegative(),
                node.at("load_error_absolute").notNegative(),
                spread(node, LOAD, format)),
            format > 6 ? repeats(node.at(REPEATS), node.at("parts").textsByName()) : List.of());
    if (calculation.formula().tree() == null) {
      throw node.at("formula").fault("this is not a formula");
    }
    return calculation;
  }

  /**
   * Of each quantity the names of its readings: parts of the formula, two or more, equally many.
   */
  private static List<List<String>> repeats(JsonNode node, Map<String, String> parts)
      throws BadInput {
    List<List<String>> repeats = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (JsonNode one : node.list()) {
      List<String> names = one.texts();
      boolean asMany = repeats.isEmpty() || repeats.get(0).size() == names.size();
      if (names.size() < 2 || !asMany) {
        throw one.fault("expected two readings or more, of each quantity as many");
      }
      for (String name : names) {
        if (!parts.containsKey(name) || !seen.add(name)) {
          throw one.fault("'" + name + "' is not a part of the formula, or stands twice");
        }
      }
      repeats.add(names);
    }
    return repeats;
  }
}
