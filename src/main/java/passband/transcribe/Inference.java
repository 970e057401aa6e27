package passband.transcribe;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * Chooses the rules of a table's modes together, so that what has to be said is least: a rule and
 * its basis are said once, however many modes have them (minimum description length; J. Rissanen,
 * Automatica 14 (1978) 465, from memory).
 */
final class Inference {
  private static final double NEARLY_AS_LIKELY = 6;
  private static final int LEAST_ROWS = 3;
  private static final int MOST_OF_A_MODE = 80;
  private static final int MOST_ROUNDS = 20;

  private final ManualTable table;
  private final Prediction prediction;

  /** By rule, how it explains each mode; null where it leaves too much unexplained. */
  private final Map<Rule, List<@Nullable Explanation>> explained = new LinkedHashMap<>();

  private final Map<Rule, Double> ruleBits = new HashMap<>();
  private final List<Explanation> stated = new ArrayList<>();

  private Inference(ManualTable table) {
    this.table = table;
    this.prediction = new Prediction(table);
  }

  /** What was found of each mode, with the bits of the whole. */
  record Found(ManualTable table, List<ModeFinding> modes, double bits) {}

  /** Of two ways to read limits with fewer decimals than others the likelier one. */
  static Found of(ManualTable table) {
    Found found = new Inference(table).found();
    ManualTable full = table.withZeros();
    if (full.rows().equals(table.rows())) {
      return found;
    }
    Found other = new Inference(full).found();
    return other.bits < found.bits ? other : found;
  }

  private Found found() {
    Set<Rule> proposed = new LinkedHashSet<>();
    for (int mode = 0; mode < table.modes().size(); mode++) {
      List<ManualRow> rows = table.of(mode);
      proposed.addAll(Candidates.of(prediction, rows));
      stated.add(Explanation.stated(rows));
    }
    if (table.modes().size() > 1) {
      proposed.addAll(Candidates.of(prediction, table.rows()));
    }
    proposed.forEach(this::explain);
    List<@Nullable Rule> best = best();
    List<ModeFinding> modes = new ArrayList<>();
    for (int mode = 0; mode < best.size(); mode++) {
      modes.add(finding(best, mode));
    }
    return new Found(table, modes, bits(best));
  }

  private void explain(Rule rule) {
    List<@Nullable Explanation> all = new ArrayList<>();
    boolean some = false;
    for (int mode = 0; mode < table.modes().size(); mode++) {
      Explanation one = Explanation.of(prediction, rule, table.of(mode));
      all.add(one);
      some |= one != null;
    }
    if (some) {
      explained.put(rule, all);
      ruleBits.put(rule, rule.bits());
    }
  }

  // ---- the choice ----

  private @Nullable Explanation explanation(@Nullable Rule rule, int mode) {
    if (rule == null) {
      return stated.get(mode);
    }
    List<@Nullable Explanation> all = explained.get(rule);
    return all == null ? null : all.get(mode);
  }

  /** What a choice costs; infinite where a rule does not explain its mode. */
  private double bits(List<@Nullable Rule> choice) {
    double bits = 0;
    Set<Rule> rules = new HashSet<>();
    Set<Basis> bases = new HashSet<>();
    for (int mode = 0; mode < choice.size(); mode++) {
      Rule rule = choice.get(mode);
      Explanation one = explanation(rule, mode);
      if (one == null) {
        return Double.POSITIVE_INFINITY;
      }
      bits += one.bits();
      if (rule != null) {
        bits += rules.add(rule) ? ruleBits.getOrDefault(rule, 0.0) : 0;
        bits += bases.add(rule.basis()) ? rule.basis().bits() : 0;
      }
    }
    return bits;
  }

  private List<@Nullable Rule> best() {
    List<List<@Nullable Rule>> starts = new ArrayList<>();
    List<@Nullable Rule> none = new ArrayList<>();
    List<@Nullable Rule> each = new ArrayList<>();
    List<List<@Nullable Rule>> likely = new ArrayList<>();
    for (int mode = 0; mode < stated.size(); mode++) {
      List<@Nullable Rule> some = likely(mode);
      likely.add(some);
      none.add(null);
      each.add(some.get(0));
    }
    starts.add(each);
    starts.add(none);
    explained.keySet().stream()
        .map(this::shared)
        .sorted(Comparator.comparingDouble(this::bits))
        .limit(MOST_OF_A_MODE)
        .forEach(starts::add);
    List<@Nullable Rule> best = none;
    double least = bits(none);
    for (List<@Nullable Rule> start : starts) {
      double bits = improve(start, likely);
      if (bits < least) {
        least = bits;
        best = start;
      }
    }
    return best;
  }

  /** The rules that are likeliest for a mode by itself, and none among them. */
  private List<@Nullable Rule> likely(int mode) {
    List<@Nullable Rule> all = new ArrayList<>();
    for (Rule rule : explained.keySet()) {
      if (explanation(rule, mode) != null) {
        all.add(rule);
      }
    }
    all.add(null);
    all.sort(Comparator.comparingDouble(rule -> alone(rule, mode)));
    List<@Nullable Rule> some =
        new ArrayList<>(all.subList(0, Math.min(MOST_OF_A_MODE, all.size())));
    if (!some.contains(null)) {
      some.add(null);
    }
    return some;
  }

  private double alone(@Nullable Rule rule, int mode) {
    Explanation one = explanation(rule, mode);
    if (one == null) {
      return Double.POSITIVE_INFINITY;
    }
    return one.bits() + (rule == null ? 0 : ruleBits.getOrDefault(rule, 0.0) + rule.basis().bits());
  }

  /** One rule for every mode that it explains. */
  private List<@Nullable Rule> shared(Rule rule) {
    List<@Nullable Rule> shared = new ArrayList<>();
    for (int mode = 0; mode < stated.size(); mode++) {
      shared.add(explanation(rule, mode) == null ? null : rule);
    }
    return shared;
  }

  /** Changes one mode after the other while that makes it less; what it comes to. */
  private double improve(List<@Nullable Rule> choice, List<List<@Nullable Rule>> likely) {
    double least = bits(choice);
    boolean better = choice.size() > 1;
    for (int round = 0; better && round < MOST_ROUNDS; round++) {
      better = false;
      for (int mode = 0; mode < choice.size(); mode++) {
        Set<@Nullable Rule> tried = new LinkedHashSet<>(choice);
        tried.addAll(likely.get(mode));
        Rule taken = choice.get(mode);
        for (Rule rule : tried) {
          choice.set(mode, rule);
          double bits = bits(choice);
          if (bits < least) {
            least = bits;
            taken = rule;
            better = true;
          }
        }
        choice.set(mode, taken);
      }
    }
    return least;
  }

  // ---- what it is worth ----

  private ModeFinding finding(List<@Nullable Rule> choice, int mode) {
    Rule rule = choice.get(mode);
    List<Integer> sharing = new ArrayList<>();
    for (int other = 0; other < choice.size(); other++) {
      if (rule != null && rule.equals(choice.get(other))) {
        sharing.add(other);
      }
    }
    Explanation one = explanation(rule, mode);
    List<RowFinding> differing = one == null ? List.of() : one.differing();
    List<Rule> others = rule == null ? List.of() : others(rule, sharing);
    boolean settled =
        rule != null
            && rule.roundNumbers()
            && others.isEmpty()
            && differing.stream().noneMatch(row -> row.slip() == Slip.UNEXPLAINED)
            && rowsExplained(rule, sharing) >= LEAST_ROWS;
    return new ModeFinding(mode, rule, settled, others, differing, sharing);
  }

  private double bits(Rule rule, List<Integer> modes) {
    double bits = ruleBits.getOrDefault(rule, 0.0) + rule.basis().bits();
    for (int mode : modes) {
      Explanation one = explanation(rule, mode);
      bits += one == null ? Double.POSITIVE_INFINITY : one.bits();
    }
    return bits;
  }

  /** What is nearly as likely and allows something else, each but once. */
  private List<Rule> others(Rule rule, List<Integer> sharing) {
    double most = bits(rule, sharing) + NEARLY_AS_LIKELY;
    List<Rule> near = new ArrayList<>();
    explained.keySet().stream()
        .filter(other -> !other.allowsAs(rule) && bits(other, sharing) <= most)
        .sorted(Comparator.comparingDouble(other -> bits(other, sharing)))
        .filter(other -> near.stream().noneMatch(other::allowsAs))
        .forEach(near::add);
    return List.copyOf(near);
  }

  /** How many different points with a limit a rule explains. */
  private int rowsExplained(Rule rule, List<Integer> sharing) {
    Set<List<Rational>> points = new HashSet<>();
    for (int mode : sharing) {
      Explanation one = explanation(rule, mode);
      if (one == null) {
        continue;
      }
      Set<Integer> differing = new HashSet<>();
      one.differing().forEach(finding -> differing.add(finding.row().line()));
      for (ManualRow row : table.of(mode)) {
        if (!differing.contains(row.line())) {
          points.add(row.point());
        }
      }
    }
    return points.size();
  }
}
