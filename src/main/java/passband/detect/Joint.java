package passband.detect;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
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
  private static final int[] PANELS = {0, 48, 14};

  /** More errors at which displays turn over are not gone through one by one. */
  private static final int MOST_TURNS = 1500;

  /** Over more pieces between turns is integrated as one. */
  private static final int MOST_PIECES = 40;

  private static final int MOST_ERRORS = 60;

  private static final int HALVINGS = 40;

  private final List<Observation> readings;
  private final List<Reckoning> values;
  private final List<String> keys = new ArrayList<>();
  private final List<Spread> spreads = new ArrayList<>();
  private final List<Term> terms = new ArrayList<>();
  private final List<Value> worked = new ArrayList<>();
  private final double[] errors;

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
  }

  private record Value(Criterion criterion, Term[] parts, long hangsOn, Criterion.Band band) {
    boolean passes(double[] errors) {
      double[] displayed = new double[parts.length];
      for (int i = 0; i < displayed.length; i++) {
        displayed[i] = parts[i].displayed(errors);
      }
      return criterion.passes(displayed, band);
    }
  }

  private Joint(List<Observation> readings, List<Reckoning> values) {
    this.readings = readings;
    this.values = values;
    readings.forEach(one -> terms.add(term(one)));
    for (Reckoning value : values) {
      Term[] parts = new Term[value.parts().size()];
      long hangsOn = 0;
      for (int i = 0; i < parts.length; i++) {
        parts[i] = term(value.parts().get(i));
        hangsOn |= parts[i].hangsOn;
      }
      worked.add(new Value(value.criterion(), parts, hangsOn, value.band()));
    }
    errors = new double[keys.size()];
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
    for (double[] piece : pieces) {
      double from = spread.variable(piece[0]);
      double to = spread.variable(piece[1]);
      int most = PANELS[outer.size()];
      int panels = Math.max(1, (int) Math.ceil(most * (piece[1] - piece[0]) / whole));
      double half = (to - from) / panels / 2;
      for (int panel = 0; panel < panels; panel++) {
        for (int node = 0; node < Component.NODES.length; node++) {
          double variable = from + (2 * panel + 1 + Component.NODES[node]) * half;
          errors[index] = spread.error(variable);
          double weight = half * Component.WEIGHTS[node] * spread.density(variable);
          sum += weight * integral(outer, at + 1);
        }
      }
    }
    return sum;
  }

  /** Where what hangs on one error alone passes, the others given, cut where a display turns. */
  private List<double[]> pieces(int index, List<Integer> given) {
    List<double[]> pieces = new ArrayList<>();
    for (double[] one : allowed(index, bits(given))) {
      double[] turns = turns(index, bits(given), worked, one[0], one[1]);
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

  private double[] turns(int index, long given, List<Value> some, double from, double to) {
    double[] turns = new double[MOST_TURNS + 1];
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
            if (count > MOST_TURNS) {
              return turns;
            }
            turns[count++] = (k * step - rest) / slope;
          }
        }
      }
    }
    double[] all = Arrays.copyOf(turns, Math.min(count, MOST_TURNS));
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
    List<Value> some = new ArrayList<>();
    for (Value value : worked) {
      if (hangsOn(value.hangsOn, index, given)) {
        some.add(value);
      }
    }
    return some.isEmpty()
        ? List.of(new double[] {from, to})
        : passing(some, index, given, from, to);
  }

  private List<double[]> passing(List<Value> some, int index, long given, double from, double to) {
    double[] ends = turns(index, given, some, from, to);
    boolean each = ends.length <= MOST_TURNS;
    if (!each) {
      ends = new double[MOST_TURNS - 1];
      for (int i = 1; i < MOST_TURNS; i++) {
        ends[i - 1] = from + (to - from) * i / MOST_TURNS;
      }
    }
    List<double[]> passing = new ArrayList<>();
    double start = from;
    for (int i = 0; i <= ends.length; i++) {
      double stop = i == ends.length ? to : ends[i];
      if (stop > start && passes(some, index, (start + stop) / 2)) {
        double[] last = passing.isEmpty() ? null : passing.get(passing.size() - 1);
        if (last != null && last[1] == start) {
          last[1] = stop;
        } else {
          passing.add(new double[] {start, stop});
        }
      }
      start = stop;
    }
    if (!each) {
      passing.forEach(one -> refine(one, some, index, from, to));
    }
    return passing;
  }

  private boolean passes(List<Value> some, int index, double error) {
    errors[index] = error;
    for (Value value : some) {
      if (!value.passes(errors)) {
        return false;
      }
    }
    return true;
  }

  /** Moves the ends of a piece, found on a grid, to where passing begins and ends. */
  private void refine(double[] piece, List<Value> some, int index, double from, double to) {
    double cell = (to - from) / MOST_TURNS;
    piece[0] =
        piece[0] <= from ? from : edge(some, index, piece[0] - cell / 2, piece[0] + cell / 2);
    piece[1] = piece[1] >= to ? to : edge(some, index, piece[1] + cell / 2, piece[1] - cell / 2);
  }

  private double edge(List<Value> some, int index, double fails, double passes) {
    double bad = fails;
    double good = passes;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (bad + good) / 2;
      if (passes(some, index, middle)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return good;
  }
}
