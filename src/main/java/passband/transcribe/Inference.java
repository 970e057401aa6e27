package passband.transcribe;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
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

  private final List<Candidate> candidates = new ArrayList<>();
  private final List<Explanation> stated = new ArrayList<>();
  private final List<Integer> rowCounts = new ArrayList<>();

  private Inference(ManualTable table) {
    this.table = table;
    this.prediction = new Prediction(table);
  }

  /** A rule with how it explains each mode, null where it does not; one object for each rule. */
  private static final class Candidate {
    private final Rule rule;
    private final List<@Nullable Explanation> explanations;
    private final double bits;

    Candidate(Rule rule, double bits, List<@Nullable Explanation> explanations) {
      this.rule = rule;
      this.explanations = explanations;
      this.bits = bits;
    }
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
      rowCounts.add(rows.size());
    }
    if (table.modes().size() > 1) {
      proposed.addAll(Candidates.of(prediction, table.rows()));
    }
    proposed.forEach(this::explain);
    List<@Nullable Candidate> best = best();
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
      boolean printed = table.rows().stream().anyMatch(row -> saysRule(row, rule));
      candidates.add(new Candidate(rule, printed ? rule.bitsOfForm() : rule.bits(), all));
    }
  }

  /** Whether the row's tolerance is the rule's, which then need not be said again. */
  private static boolean saysRule(ManualRow row, Rule rule) {
    ManualRow.Tolerance tolerance = row.tolerance();
    return tolerance != null && tolerance.rule(rule.basis()).equals(rule);
  }

  // ---- the choice ----

  private @Nullable Explanation explanation(@Nullable Candidate candidate, int mode) {
    return candidate == null ? stated.get(mode) : candidate.explanations.get(mode);
  }

  /** What a choice costs; infinite where a rule does not explain its modes. */
  private double bits(List<@Nullable Candidate> choice) {
    double bits = 0;
    Map<Candidate, Share> shares = new IdentityHashMap<>();
    Set<Basis> bases = new HashSet<>();
    for (int mode = 0; mode < choice.size(); mode++) {
      Candidate candidate = choice.get(mode);
      Explanation one = explanation(candidate, mode);
      if (one == null) {
        return Double.POSITIVE_INFINITY;
      }
      bits += one.bits();
      if (candidate != null) {
        Share before = shares.getOrDefault(candidate, Share.NONE);
        shares.put(candidate, before.plus(one.differing().size(), rowCounts.get(mode)));
        bits += before == Share.NONE ? candidate.bits : 0;
        Basis basis = candidate.rule.basis();
        bits += bases.add(basis) ? basis.bits() : 0;
      }
    }
    for (Share share : shares.values()) {
      bits += share.isMost() ? Double.POSITIVE_INFINITY : 0;
    }
    return bits;
  }

  /** How many rows of some modes differ from their rule. */
  private record Share(int differing, int rows) {
    static final Share NONE = new Share(0, 0);

    Share plus(int more, int ofRows) {
      return new Share(differing + more, rows + ofRows);
    }

    boolean isMost() {
      return Explanation.areMost(differing, rows);
    }
  }

  private List<@Nullable Candidate> best() {
    List<List<@Nullable Candidate>> starts = new ArrayList<>();
    List<@Nullable Candidate> none = new ArrayList<>();
    List<@Nullable Candidate> each = new ArrayList<>();
    List<List<@Nullable Candidate>> likely = new ArrayList<>();
    for (int mode = 0; mode < stated.size(); mode++) {
      List<@Nullable Candidate> some = likely(mode);
      likely.add(some);
      none.add(null);
      each.add(some.get(0));
    }
    starts.add(each);
    starts.add(none);
    candidates.stream()
        .map(this::shared)
        .sorted(Comparator.comparingDouble(this::bits))
        .limit(MOST_OF_A_MODE)
        .forEach(starts::add);
    List<@Nullable Candidate> best = none;
    double least = bits(none);
    for (List<@Nullable Candidate> start : starts) {
      double bits = improve(start, likely);
      if (bits < least) {
        least = bits;
        best = start;
      }
    }
    return best;
  }

  /** The rules that are likeliest for a mode by itself, and none among them. */
  private List<@Nullable Candidate> likely(int mode) {
    List<@Nullable Candidate> all = new ArrayList<>();
    for (Candidate candidate : candidates) {
      if (explanation(candidate, mode) != null) {
        all.add(candidate);
      }
    }
    all.add(null);
    all.sort(Comparator.comparingDouble(candidate -> alone(candidate, mode)));
    List<@Nullable Candidate> some =
        new ArrayList<>(all.subList(0, Math.min(MOST_OF_A_MODE, all.size())));
    if (!some.contains(null)) {
      some.add(null);
    }
    return some;
  }

  private double alone(@Nullable Candidate candidate, int mode) {
    Explanation one = explanation(candidate, mode);
    if (one == null) {
      return Double.POSITIVE_INFINITY;
    }
    return one.bits() + (candidate == null ? 0 : candidate.bits + candidate.rule.basis().bits());
  }

  /** One rule for every mode that it explains. */
  private List<@Nullable Candidate> shared(Candidate candidate) {
    List<@Nullable Candidate> shared = new ArrayList<>();
    for (int mode = 0; mode < stated.size(); mode++) {
      shared.add(explanation(candidate, mode) == null ? null : candidate);
    }
    return shared;
  }

  /** Changes one mode after the other while that makes it less; what it comes to. */
  private double improve(List<@Nullable Candidate> choice, List<List<@Nullable Candidate>> likely) {
    double least = bits(choice);
    boolean better = choice.size() > 1;
    for (int round = 0; better && round < MOST_ROUNDS; round++) {
      better = false;
      for (int mode = 0; mode < choice.size(); mode++) {
        Set<@Nullable Candidate> tried = new LinkedHashSet<>(choice);
        tried.addAll(likely.get(mode));
        Candidate taken = choice.get(mode);
        for (Candidate candidate : tried) {
          choice.set(mode, candidate);
          double bits = bits(choice);
          if (bits < least) {
            least = bits;
            taken = candidate;
            better = true;
          }
        }
        choice.set(mode, taken);
      }
    }
    return least;
  }

  // ---- what it is worth ----

  private ModeFinding finding(List<@Nullable Candidate> choice, int mode) {
    Candidate chosen = choice.get(mode);
    Rule rule = chosen == null ? null : chosen.rule;
    List<Integer> sharing = new ArrayList<>();
    for (int other = 0; other < choice.size(); other++) {
      if (chosen != null && chosen == choice.get(other)) {
        sharing.add(other);
      }
    }
    Explanation one = explanation(chosen, mode);
    List<RowFinding> differing = one == null ? List.of() : one.differing();
    List<Rule> others = chosen == null ? List.of() : others(chosen, sharing);
    boolean settled =
        chosen != null
            && chosen.rule.roundNumbers()
            && others.isEmpty()
            && differing.size() < rowCounts.get(mode)
            && differing.stream().noneMatch(row -> row.slip() == Slip.UNEXPLAINED)
            && rowsExplained(chosen, sharing) >= LEAST_ROWS;
    return new ModeFinding(mode, rule, settled, others, differing, sharing);
  }

  private double bits(Candidate candidate, List<Integer> modes) {
    double bits = candidate.bits + candidate.rule.basis().bits();
    Share share = Share.NONE;
    for (int mode : modes) {
      Explanation one = explanation(candidate, mode);
      if (one == null) {
        return Double.POSITIVE_INFINITY;
      }
      bits += one.bits();
      share = share.plus(one.differing().size(), rowCounts.get(mode));
    }
    return share.isMost() ? Double.POSITIVE_INFINITY : bits;
  }

  /** What is nearly as likely and allows something else, each but once. */
  private List<Rule> others(Candidate chosen, List<Integer> sharing) {
    double most = bits(chosen, sharing) + NEARLY_AS_LIKELY;
    List<Rule> near = new ArrayList<>();
    candidates.stream()
        .filter(other -> !other.rule.allowsAs(chosen.rule) && bits(other, sharing) <= most)
        .sorted(Comparator.comparingDouble(other -> bits(other, sharing)))
        .map(other -> other.rule)
        .filter(other -> near.stream().noneMatch(other::allowsAs))
        .forEach(near::add);
    return List.copyOf(near);
  }

  /** How many different points with a limit a rule explains. */
  private int rowsExplained(Candidate candidate, List<Integer> sharing) {
    Set<List<Rational>> points = new HashSet<>();
    for (int mode : sharing) {
      Explanation one = explanation(candidate, mode);
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
