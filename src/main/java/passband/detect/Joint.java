package passband.detect;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Readings and values that are worked out from some, all of which share errors. Over one or two
 * errors is integrated; with these given, what is left hangs on one error each, and where that
 * passes is found exactly: between two errors at which a display turns over nothing changes.
 */
final class Joint {
  /** Nodes a side over one error, and over each of two: panels of four nodes. */
  private static final int[] PANELS = {0, 48, 8};

  /** So many errors at which displays turn over are gone through one by one. */
  private static final int FEW_TURNS = 12;

  /** Over more pieces between turns is integrated as one. */
  private static final int MOST_PIECES = 40;

  private static final int MOST_ERRORS = 60;

  private final List<Observation> readings;
  private final List<Reckoning> values;
  private final List<String> keys = new ArrayList<>();
  private final List<Spread> spreads = new ArrayList<>();
  private final List<Term> terms = new ArrayList<>();
  private final List<Value> worked = new ArrayList<>();
  private final double[] errors;

  /** Which values pass wherever in the panels at hand the errors lie. */
  private boolean[] settled;

  /**
   * A reading with the places of its errors.
   *
   * @param own −1 for none
   * @param load −1 for none
   * @param hangsOn a bit for each error
   */
  private record Term(Observation of, int own, int load, long hangsOn) {
    double slope(int index) {
      return (own == index ? of.own().half() : 0) + (load == index ? of.load().half() : 0);
    }

    /** The undisplayed value while one error is none. */
    double rest(int index, double[] errors) {
      return of.truth()
          + (own < 0 || own == index ? 0 : of.own().half() * errors[own])
          + (load < 0 || load == index ? 0 : of.load().half() * errors[load]);
    }

    double displayed(double[] errors) {
      return of.displayed(own < 0 ? 0 : errors[own], load < 0 ? 0 : errors[load]);
    }

    /** While each error lies between two: a half-width may be below zero. */
    Arithmetic.Between displayed(double[] least, double[] most) {
      double[] ownLow = of.own().half() < 0 ? most : least;
      double[] loadLow = of.load().half() < 0 ? most : least;
      double[] ownHigh = ownLow == least ? most : least;
      double[] loadHigh = loadLow == least ? most : least;
      return new Arithmetic.Between(
          of.displayed(own < 0 ? 0 : ownLow[own], load < 0 ? 0 : loadLow[load]),
          of.displayed(own < 0 ? 0 : ownHigh[own], load < 0 ? 0 : loadHigh[load]));
    }
  }

  private record Value(Criterion criterion, Term[] parts, long hangsOn, Criterion.Band band) {
    boolean passes(double[] errors) {
      double[] displayed = new double[parts.length];
      for (int i = 0; i < displayed.length; i++) {
        displayed[i] = parts[i].displayed(errors);
      }
      return criterion.passes(displayed, band);
    }

    /** What each part shows while each error lies between two. */
    Arithmetic.Between[] displayed(double[] least, double[] most) {
      Arithmetic.Between[] displayed = new Arithmetic.Between[parts.length];
      for (int i = 0; i < displayed.length; i++) {
        displayed[i] = parts[i].displayed(least, most);
      }
      return displayed;
    }
  }

  private Joint(List<Observation> readings, List<Reckoning> values) {
    this.readings = readings;
    this.values = values;
    readings.forEach(one -> terms.add(term(one)));
    for (Reckoning value : new LinkedHashSet<>(values)) {
      Term[] parts = new Term[value.parts().size()];
      long hangsOn = 0;
      for (int i = 0; i < parts.length; i++) {
        parts[i] = term(value.parts().get(i));
        hangsOn |= parts[i].hangsOn;
      }
      worked.add(new Value(value.criterion(), parts, hangsOn, value.band()));
    }
    errors = new double[keys.size()];
    settled = new boolean[worked.size()];
  }

  private Term term(Observation one) {
    int own = index(one.own());
    int load = index(one.load());
    return new Term(one, own, load, bit(own) | bit(load));
  }

  private static long bit(int index) {
    return index < 0 ? 0 : 1L << index;
  }

  private int index(ErrorTerm error) {
    if (error.half() == 0) {
      return -1;
    }
    if (!keys.contains(error.key())) {
      keys.add(error.key());
      spreads.add(error.spread());
    }
    return keys.indexOf(error.key());
  }

  List<Observation> readings() {
    return readings;
  }

  List<Reckoning> values() {
    return values;
  }

  /** One for all that hang together. */
  static List<Joint> all(List<Observation> readings, List<Reckoning> values) {
    Map<String, String> parents = new HashMap<>();
    readings.forEach(one -> join(List.of(one), parents));
    values.forEach(value -> join(value.parts(), parents));
    Map<String, List<Observation>> someReadings = new LinkedHashMap<>();
    Map<String, List<Reckoning>> someValues = new LinkedHashMap<>();
    for (Observation one : readings) {
      String root = Kernel.root(one.errors().get(0).key(), parents);
      someReadings.computeIfAbsent(root, r -> new ArrayList<>()).add(one);
      someValues.computeIfAbsent(root, r -> new ArrayList<>());
    }
    for (Reckoning value : values) {
      String root = "";
      for (Observation part : value.parts()) {
        root = part.errors().isEmpty() ? root : Kernel.root(part.errors().get(0).key(), parents);
      }
      someReadings.computeIfAbsent(root, r -> new ArrayList<>());
      someValues.computeIfAbsent(root, r -> new ArrayList<>()).add(value);
    }
    List<Joint> all = new ArrayList<>();
    someReadings.forEach(
        (root, some) -> all.add(new Joint(some, someValues.getOrDefault(root, List.of()))));
    return all;
  }

  private static void join(List<Observation> some, Map<String, String> parents) {
    String first = null;
    for (Observation one : some) {
      for (ErrorTerm error : one.errors()) {
        String root = Kernel.root(error.key(), parents);
        if (first != null && !first.equals(root)) {
          parents.put(root, first);
        } else {
          first = root;
        }
      }
    }
  }

  // ---- what hangs on which errors ----

  /** The probability that all pass; not a number where too many errors are shared crosswise. */
  double passing() {
    List<Integer> outer = keys.size() > MOST_ERRORS ? null : outer();
    return outer == null ? Double.NaN : integral(outer, 0);
  }

  /** The fewest errors, two at most, without which nothing hangs on more than one; else null. */
  private @Nullable List<Integer> outer() {
    int n = keys.size();
    if (leavesOne(0)) {
      return List.of();
    }
    for (int i = 0; i < n; i++) {
      if (leavesOne(bit(i))) {
        return List.of(i);
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        if (leavesOne(bit(i) | bit(j))) {
          return List.of(i, j);
        }
      }
    }
    return null;
  }

  private boolean leavesOne(long outer) {
    for (Term one : terms) {
      if (Long.bitCount(one.hangsOn & ~outer) > 1) {
        return false;
      }
    }
    for (Value one : worked) {
      if (Long.bitCount(one.hangsOn & ~outer) > 1) {
        return false;
      }
    }
    return true;
  }

  private static long bits(List<Integer> some) {
    long bits = 0;
    for (int one : some) {
      bits |= bit(one);
    }
    return bits;
  }

  /** Over the outer errors from one on. */
  private double integral(List<Integer> outer, int at) {
    if (at == outer.size()) {
      return inner(outer);
    }
    int index = outer.get(at);
    Spread spread = spreads.get(index);
    double sum = 0;
    List<double[]> pieces = pieces(index, outer.subList(0, at));
    double whole = 0;
    for (double[] piece : pieces) {
      whole += piece[1] - piece[0];
    }
    boolean[] before = settled;
    for (double[] piece : pieces) {
      double from = spread.variable(piece[0]);
      double to = spread.variable(piece[1]);
      int most = PANELS[outer.size()];
      int panels = Math.max(1, (int) Math.ceil(most * (piece[1] - piece[0]) / whole));
      double half = (to - from) / panels / 2;
      for (int panel = 0; panel < panels; panel++) {
        double start = from + 2 * panel * half;
        errors[index] = spread.error(start);
        if (settles(outer.subList(0, at + 1), before, spread.error(start + 2 * half))) {
          for (int node = 0; node < Component.NODES.length; node++) {
            double variable = start + (1 + Component.NODES[node]) * half;
            errors[index] = spread.error(variable);
            double weight = half * Component.WEIGHTS[node] * spread.density(variable);
            sum += weight * integral(outer, at + 1);
          }
        }
      }
    }
    settled = before;
    return sum;
  }

  /**
   * Finds which values pass in a panel of the last of the given errors, wherever all others lie.
   *
   * @param before those that pass anyway
   * @param to where the panel ends; it begins at the error as it is
   * @return whether anything of the panel may pass
   */
  private boolean settles(List<Integer> given, boolean[] before, double to) {
    double[] least = errors.clone();
    double[] most = errors.clone();
    for (int index = 0; index < errors.length; index++) {
      if (!given.contains(index)) {
        most[index] = spreads.get(index).reach();
        least[index] = -most[index];
      }
    }
    most[given.get(given.size() - 1)] = to;
    settled = before.clone();
    for (int i = 0; i < settled.length; i++) {
      if (!settled[i]) {
        Value value = worked.get(i);
        Criterion.Everywhere there = value.criterion.everywhere(value.displayed(least, most));
        settled[i] = there == Criterion.Everywhere.PASS;
        if (there == Criterion.Everywhere.FAIL) {
          return false;
        }
      }
    }
    return true;
  }

  /** Where what hangs on one error alone passes, the others given, cut where a display turns. */
  private List<double[]> pieces(int index, List<Integer> given) {
    List<double[]> pieces = new ArrayList<>();
    for (double[] one : allowed(index, bits(given))) {
      double[] turns = turns(index, bits(given), worked, one[0], one[1], MOST_PIECES);
      double from = one[0];
      for (double turn : turns.length > MOST_PIECES ? new double[0] : turns) {
        if (turn > from) {
          pieces.add(new double[] {from, turn});
          from = turn;
        }
      }
      pieces.add(new double[] {from, one[1]});
    }
    return pieces;
  }

  private double inner(List<Integer> outer) {
    long given = bits(outer);
    double passing = 1;
    for (int index = 0; index < keys.size() && passing > 0; index++) {
      if (!outer.contains(index)) {
        double between = 0;
        for (double[] one : allowed(index, given)) {
          between += spreads.get(index).between(one[0], one[1]);
        }
        passing *= between;
      }
    }
    return passing;
  }

  // ---- one error, others given ----

  private static boolean hangsOn(long some, int index, long given) {
    return (some & bit(index)) != 0 && (some & ~given & ~bit(index)) == 0;
  }

  /** The errors at which a part's display turns over, in order; of more than enough no others. */
  private double[] turns(
      int index, long given, List<Value> some, double from, double to, int enough) {
    double[] turns = new double[enough + 1];
    int count = 0;
    for (Value value : some) {
      for (Term part : value.parts) {
        double slope = part.slope(index);
        if (slope != 0 && hangsOn(part.hangsOn, index, given)) {
          double rest = part.rest(index, errors);
          double step = part.of.window().step();
          double a = rest + slope * from;
          double b = rest + slope * to;
          double last = Math.max(a, b);
          double first = Math.floor(Math.min(a, b) / step + 0.5) + 0.5;
          for (double k = first; k * step < last; k++) {
            turns[count++] = (k * step - rest) / slope;
            if (count > enough) {
              return turns;
            }
          }
        }
      }
    }
    double[] all = Arrays.copyOf(turns, count);
    Arrays.sort(all);
    return all;
  }

  /** Where all pass that hangs on one error and no other that is not given: from and to. */
  private List<double[]> allowed(int index, long given) {
    double from = -spreads.get(index).reach();
    double to = -from;
    for (Term one : terms) {
      if (hangsOn(one.hangsOn, index, given)) {
        double slope = one.slope(index);
        double rest = one.rest(index, errors);
        double a = (one.of.window().low() - rest) / slope;
        double b = (one.of.window().high() - rest) / slope;
        from = Math.max(from, Math.min(a, b));
        to = Math.min(to, Math.max(a, b));
      }
    }
    if (from >= to) {
      return List.of();
    }
    List<double[]> passing = List.of(new double[] {from, to});
    for (int i = 0; i < settled.length; i++) {
      if (!settled[i] && hangsOn(worked.get(i).hangsOn, index, given)) {
        passing = passing(worked.get(i), index, given, passing);
      }
    }
    return passing;
  }

  private List<double[]> passing(Value value, int index, long given, List<double[]> within) {
    List<double[]> passing = new ArrayList<>();
    for (double[] one : within) {
      addPassing(value, index, given, one[0], one[1], passing);
    }
    return passing;
  }

  /** Halves what neither passes nor fails as a whole, until few displays turn over in it. */
  private void addPassing(
      Value value, int index, long given, double from, double to, List<double[]> passing) {
    double[] least = errors.clone();
    double[] most = errors.clone();
    least[index] = from;
    most[index] = to;
    Criterion.Everywhere between = value.criterion.everywhere(value.displayed(least, most));
    if (between == Criterion.Everywhere.PASS) {
      add(passing, from, to);
    }
    if (between != Criterion.Everywhere.EITHER) {
      return;
    }
    double[] turns = turns(index, given, List.of(value), from, to, FEW_TURNS);
    if (turns.length > FEW_TURNS) {
      double middle = (from + to) / 2;
      addPassing(value, index, given, from, middle, passing);
      addPassing(value, index, given, middle, to, passing);
      return;
    }
    double start = from;
    for (int i = 0; i <= turns.length; i++) {
      double stop = i == turns.length ? to : turns[i];
      if (stop > start) {
        errors[index] = (start + stop) / 2;
        if (value.passes(errors)) {
          add(passing, start, stop);
        }
        start = stop;
      }
    }
  }

  private static void add(List<double[]> passing, double from, double to) {
    double[] last = passing.isEmpty() ? null : passing.get(passing.size() - 1);
    if (last != null && last[1] == from) {
      last[1] = to;
    } else {
      passing.add(new double[] {from, to});
    }
  }
}
