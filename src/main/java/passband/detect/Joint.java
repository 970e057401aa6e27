package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Readings and values that are worked out from some, all of which share errors. Over one of them at
 * most is integrated by nodes; with it given, what is left hangs on one error each and on one that
 * they share, and where that passes is found exactly, in cells between the errors at which a
 * display turns over.
 */
final class Joint {
  /** Over one error: panels of four nodes. */
  private static final int PANELS = 48;

  private static final int MOST_ERRORS = 60;

  /** An error on which nothing hangs, the last one: what hangs on one alone has a plane with it. */
  private static final ErrorTerm NOTHING = new ErrorTerm("nothing", 1, Spread.RECTANGULAR);

  private final List<Observation> readings;
  private final List<Reckoning> values;
  private final ErrorPlaces places = new ErrorPlaces();
  private final List<PlacedReading> placed = new ArrayList<>();
  private final List<PlacedValue> worked = new ArrayList<>();

  /** Outside of it some reading fails, whatever the other errors are. */
  private final Region.Box box;

  private Joint(List<Observation> readings, List<Reckoning> values) {
    this.readings = readings;
    this.values = values;
    readings.forEach(one -> placed.add(PlacedReading.of(one, places)));
    values.forEach(value -> worked.add(PlacedValue.of(value, value.band(), places)));
    places.of(NOTHING);
    box = Region.Box.whole(places);
    placed.forEach(this::cut);
  }

  private void cut(PlacedReading one) {
    double[] factors = one.factors(places.size());
    for (int place : new int[] {one.own(), one.load()}) {
      if (place >= 0) {
        double slack = one.of().own().reach() + one.of().load().reach();
        slack -= Math.abs(factors[place]) * places.spread(place).reach();
        double a = (one.of().window().low() - one.of().truth() - slack) / factors[place];
        double b = (one.of().window().high() - one.of().truth() + slack) / factors[place];
        box.least()[place] = Math.max(box.least()[place], Math.min(a, b));
        box.most()[place] = Math.min(box.most()[place], Math.max(a, b));
      }
    }
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

  // ---- the probability ----

  /** The values that the limits of the readings leave open; null where nothing can pass. */
  @Nullable List<Reckoning> open() {
    if (box.isEmpty()) {
      return null;
    }
    List<Reckoning> open = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      switch (worked.get(i).everywhere(box, places.size(), 0)) {
        case FAIL -> {
          return null;
        }
        case PASS -> {}
        case EITHER -> open.add(values.get(i));
      }
    }
    return open;
  }

  /** The probability that all pass; not a number where too many errors are shared crosswise. */
  double passing() {
    List<Integer> outer = places.size() > MOST_ERRORS ? null : outer();
    if (outer == null) {
      return Double.NaN;
    }
    double[] errors = new double[places.size()];
    int along = outer.get(outer.size() - 1);
    return outer.size() == 1 ? passing(errors, -1, along) : integral(errors, outer.get(0), along);
  }

  /**
   * The one or two errors without which nothing hangs on more than one; null where there are none.
   * Of two no value hangs on the first one alone where that can be, since its probability would
   * have steps there.
   */
  private @Nullable List<Integer> outer() {
    int n = places.size();
    for (int i = 0; i < n; i++) {
      if (leavesOne(PlacedReading.bit(i))) {
        return List.of(i);
      }
    }
    List<Integer> two = null;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        if (i != j && leavesOne(PlacedReading.bit(i) | PlacedReading.bit(j))) {
          two = two == null || !hasSteps(i) && hasSteps(two.get(0)) ? List.of(i, j) : two;
        }
      }
    }
    return two;
  }

  private boolean hasSteps(int place) {
    return worked.stream().anyMatch(one -> one.hangsOn() == PlacedReading.bit(place));
  }

  private boolean leavesOne(long outer) {
    for (PlacedReading one : placed) {
      if (Long.bitCount(one.hangsOn() & ~outer) > 1) {
        return false;
      }
    }
    for (PlacedValue one : worked) {
      if (Long.bitCount(one.hangsOn() & ~outer) > 1) {
        return false;
      }
    }
    return true;
  }

  /** Over one error by nodes. */
  private double integral(double[] errors, int over, int along) {
    Spread spread = places.spread(over);
    double start = spread.variable(box.least()[over]);
    double half = (spread.variable(box.most()[over]) - start) / PANELS / 2;
    double sum = 0;
    for (int panel = 0; panel < PANELS; panel++) {
      for (int node = 0; node < Component.NODES.length; node++) {
        double variable = start + (2 * panel + 1 + Component.NODES[node]) * half;
        errors[over] = spread.error(variable);
        double weight = half * Component.WEIGHTS[node] * spread.density(variable);
        sum += weight * passing(errors, over, along);
      }
    }
    return sum;
  }

  /**
   * Over one error along, while one is given.
   *
   * @param given −1 for none
   */
  private double passing(double[] errors, int given, int along) {
    long known = PlacedReading.bit(given) | PlacedReading.bit(along);
    List<Cells.Across> all = new ArrayList<>();
    for (int across = 0; across < places.size(); across++) {
      if (across != given && across != along) {
        List<Polygon> cells = cells(Polygon.of(errors, across, along, box), across, known);
        if (cells.isEmpty()) {
          return 0;
        }
        all.add(new Cells.Across(places.spread(across), cells));
      }
    }
    return Cells.probability(places.spread(along), all);
  }

  /** Where all passes that hangs on an error; what hangs on none of these hangs on the last. */
  private List<Polygon> cells(Polygon whole, int across, long known) {
    Cells cells = new Cells(places.size(), whole.area());
    long some = across == places.size() - 1 ? 0 : PlacedReading.bit(across);
    List<PlacedReading> here = new ArrayList<>(placed);
    here.removeIf(one -> (one.hangsOn() & ~known) != some);
    Polygon left = cells.passing(whole, here);
    List<Polygon> passing = left == null ? List.of() : List.of(left);
    for (PlacedValue value : worked) {
      passing = (value.hangsOn() & ~known) == some ? cells.passing(passing, value) : passing;
    }
    return passing;
  }
}
