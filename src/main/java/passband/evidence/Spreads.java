package passband.evidence;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.quantity.Distribution;
import passband.quantity.Rational;

/** Reads what uncertainties are made of from {@code limits.json}. */
final class Spreads {
  /** How the keys of a load's error begin. */
  static final String LOAD = "load_error_";

  private static final String SPREAD = "distribution";
  private static final String COVERAGE = "coverage_factor";
  private static final String NORMAL = Distribution.Shape.NORMAL.word();

  private Spreads() {}

  /** Null where the error is not known. */
  static @Nullable List<Item.Contribution> budget(JsonNode node, boolean spreads) throws BadInput {
    if (node.isNull()) {
      return null;
    }
    List<Item.Contribution> budget = new ArrayList<>();
    for (JsonNode part : node.list()) {
      Set<String> keys = new HashSet<>(Set.of("contribution", "relative", "absolute"));
      keys.addAll(keys(part, "", spreads));
      part.only(keys);
      budget.add(
          new Item.Contribution(
              part.at("contribution").name(),
              part.at("relative").notNegative(),
              part.at("absolute").notNegative(),
              spread(part, "", spreads)));
    }
    return budget;
  }

  static List<String> keys(JsonNode node, String prefix, boolean spreads) throws BadInput {
    String word = prefix + SPREAD;
    if (!spreads) {
      return List.of();
    }
    boolean normal = node.has(word) && node.at(word).text().equals(NORMAL);
    return normal ? List.of(word, prefix + COVERAGE) : List.of(word);
  }

  /** Rectangular where the file is of a format that does not say it. */
  private static Distribution spread(JsonNode node, String prefix, boolean spreads)
      throws BadInput {
    if (!spreads) {
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
    return found;
  }

  static Calculation calculation(JsonNode node, boolean spreads) throws BadInput {
    Calculation calculation =
        new Calculation(
            new WrittenFormula(node.at("formula").name()),
            node.at("parts").textsByName(),
            Calculation.loadError(
                node.at("load_error_relative").notNegative(),
                node.at("load_error_absolute").notNegative(),
                spread(node, LOAD, spreads)));
    if (calculation.formula().tree() == null) {
      throw node.at("formula").fault("this is not a formula");
    }
    return calculation;
  }
}
