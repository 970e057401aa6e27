package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The probability that at least one of several readings fails. Readings that share no error are
 * independent; readings that share one are not, however many they are: what they have in common is
 * integrated over once.
 */
public final class Kernel {
  private static final int DRAWS = 200_000;

  /** Where values are worked out at each draw: four standard errors are below 0.009. */
  private static final int DRAWS_OF_VALUES = 50_000;

  private static final long SEED = 106;

  private final Map<Open, Chance> known = new HashMap<>();

  /** What is left to chance. */
  private record Open(List<Observation> readings, List<Reckoning> values) {}

  /** The probability that at least one fails. */
  public Chance failing(List<Observation> all) {
    return failing(all, List.of());
  }

  /** The probability that at least one reading, or one value worked out from readings, fails. */
  Chance failing(List<Observation> all, List<Reckoning> values) {
    Set<Observation> open = new LinkedHashSet<>();
    Set<Reckoning> openValues = new LinkedHashSet<>();
    boolean proved = true;
    for (Observation one : all) {
      if (one.neverPasses()) {
        return one.ends() ? Chance.SURE : Chance.ofPassing(0, Chance.Proof.QUADRATURE);
      }
      if (one.alwaysPasses()) {
        proved &= one.ends();
      } else {
        open.add(one);
      }
    }
    for (Reckoning one : values) {
      if (one.neverPasses()) {
        return one.ends() ? Chance.SURE : Chance.ofPassing(0, Chance.Proof.QUADRATURE);
      }
      if (one.alwaysPasses()) {
        proved &= one.ends();
      } else {
        openValues.add(one);
      }
    }
    if (open.isEmpty() && openValues.isEmpty()) {
      return proved ? Chance.NEVER : Chance.ofPassing(1, Chance.Proof.QUADRATURE);
    }
    return workedOut(new Open(List.copyOf(open), List.copyOf(openValues)));
  }

  private Chance workedOut(Open open) {
    Chance chance = known.get(open);
    if (chance == null) {
      chance = open.values.isEmpty() ? workedOut(open.readings) : jointly(open);
      known.put(open, chance);
    }
    return chance;
  }

  /** Where values are worked out from readings, these hang together with them. */
  private Chance jointly(Open open) {
    List<Joint> all = Joint.all(open.readings, open.values);
    if (all.size() == 1) {
      return together(all.get(0));
    }
    double passing = 1;
    boolean drawn = false;
    for (Joint one : all) {
      Chance chance = workedOut(new Open(one.readings(), one.values()));
      passing *= chance.passing();
      drawn |= chance.proof() == Chance.Proof.SIMULATION;
    }
    return Chance.ofPassing(passing, drawn ? Chance.Proof.SIMULATION : Chance.Proof.QUADRATURE);
  }

  /** Values that the limits of the readings settle are left aside. */
  private Chance together(Joint joint) {
    List<Reckoning> open = joint.open();
    if (open == null) {
      return Chance.ofPassing(0, Chance.Proof.QUADRATURE);
    }
    if (open.isEmpty() || open.size() < joint.values().size()) {
      return workedOut(new Open(joint.readings(), open));
    }
    double passing = joint.passing();
    return Double.isNaN(passing)
        ? Chance.ofPassing(
            1 - Simulation.failing(joint.readings(), joint.values(), DRAWS_OF_VALUES, SEED),
            Chance.Proof.SIMULATION)
        : Chance.ofPassing(passing, Chance.Proof.QUADRATURE);
  }

  /** Of readings of which none is decided. */
  private static Chance workedOut(List<Observation> open) {
    double passing = 1;
    boolean drawn = false;
    for (List<Observation> some : components(open)) {
      Component component = new Component(some);
      boolean draws = component.outer() > component.mostOuter();
      passing *= draws ? 1 - Simulation.failing(some, DRAWS, SEED) : component.passing();
      drawn |= draws;
    }
    return Chance.ofPassing(passing, drawn ? Chance.Proof.SIMULATION : Chance.Proof.QUADRATURE);
  }

  /** Readings that share errors, directly or through others. */
  private static List<List<Observation>> components(List<Observation> all) {
    Map<String, String> parents = new HashMap<>();
    for (Observation one : all) {
      String first = null;
      for (ErrorTerm error : one.errors()) {
        String root = root(error.key(), parents);
        if (first != null && !first.equals(root)) {
          parents.put(root, first);
        } else {
          first = root;
        }
      }
    }
    Map<String, List<Observation>> components = new LinkedHashMap<>();
    for (Observation one : all) {
      String root = root(one.errors().get(0).key(), parents);
      components.computeIfAbsent(root, key -> new ArrayList<>()).add(one);
    }
    return new ArrayList<>(components.values());
  }

  static String root(String key, Map<String, String> parents) {
    String at = key;
    for (String next = parents.get(at); next != null; next = parents.get(at)) {
      at = next;
    }
    return at;
  }

  /** The keys of the errors on one side. */
  static Set<String> keys(List<Observation> some, boolean own) {
    Set<String> keys = new TreeSet<>();
    for (Observation one : some) {
      ErrorTerm error = own ? one.own() : one.load();
      if (error.half() != 0) {
        keys.add(error.key());
      }
    }
    return keys;
  }
}
