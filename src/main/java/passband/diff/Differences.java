package passband.diff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.plan.Fact;

/**
 * What is not the same in two meanings, without what another difference says already. Where there
 * is any difference, one is told.
 */
final class Differences {
  private final Map<String, Fact> was;
  private final Map<String, Fact> now;
  private final List<Difference> all = new ArrayList<>();

  private Differences(Map<String, Fact> was, Map<String, Fact> now) {
    this.was = was;
    this.now = now;
  }

  /** The differences to tell; both sides by key. */
  static List<Difference> between(Map<String, Fact> was, Map<String, Fact> now) {
    Differences differences = new Differences(was, now);
    differences.find();
    return differences.told();
  }

  private void find() {
    Set<String> keys = new LinkedHashSet<>(now.keySet());
    keys.addAll(was.keySet());
    for (String key : keys) {
      Fact old = was.get(key);
      Fact fresh = now.get(key);
      boolean same = old != null && fresh != null && old.canonical().equals(fresh.canonical());
      if (!same) {
        all.add(new Difference(old, fresh));
      }
    }
  }

  private List<Difference> told() {
    boolean rewired = all.stream().anyMatch(Differences::isOfWiring);
    List<Difference> told = new ArrayList<>();
    for (Difference difference : all) {
      if (!isImplied(difference, rewired)) {
        told.add(difference);
      }
    }
    return told.isEmpty() ? all : told;
  }

  /** Whether another difference says it already. */
  private boolean isImplied(Difference difference, boolean rewired) {
    if (difference.area() == Fact.Area.MOVES && rewired) {
      return true;
    }
    String key = difference.fact().key();
    if (key.endsWith("/output") && isEmptied(key.substring(0, key.lastIndexOf('/')))) {
      return true;
    }
    if (difference.was() != null && difference.now() != null) {
      List<String> old = difference.was().sequence();
      List<String> fresh = difference.now().sequence();
      return old != null && fresh != null && sameOrder(old, fresh);
    }
    String owner = difference.fact().owner();
    return owner != null && was.containsKey(owner) != now.containsKey(owner);
  }

  /** Whether a run has no points on one side: then it delivers no output there. */
  private boolean isEmptied(String run) {
    Fact old = was.get(run + "/order");
    Fact fresh = now.get(run + "/order");
    return old != null
        && fresh != null
        && (List.of().equals(old.sequence()) || List.of().equals(fresh.sequence()));
  }

  /** The changes of the wiring follow from the setups and from the order of the runs. */
  private static boolean isOfWiring(Difference difference) {
    return difference.area() == Fact.Area.WIRE || difference.fact().key().equals("order");
  }

  /** Whether what is on both sides is in the same order there: the rest came or went. */
  private static boolean sameOrder(List<String> was, List<String> now) {
    List<String> old = new ArrayList<>(was);
    List<String> fresh = new ArrayList<>(now);
    Set<String> common = new HashSet<>(old);
    common.retainAll(fresh);
    old.retainAll(common);
    fresh.retainAll(common);
    return old.equals(fresh);
  }
}
