package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
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
  private static final long SEED = 106;

  private final Map<List<Observation>, Chance> known = new HashMap<>();

  /** The probability that at least one fails. */
  public Chance failing(List<Observation> all) {
    List<Observation> open = new ArrayList<>();
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
    if (open.isEmpty()) {
      return proved ? Chance.NEVER : Chance.ofPassing(1, Chance.Proof.QUADRATURE);
    }
    Chance chance = known.get(open);
    if (chance == null) {
      chance = workedOut(open);
      known.put(open, chance);
    }
    return chance;
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

  private static String root(String key, Map<String, String> parents) {
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
