package passband.draw;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.model.Terminal;
import passband.plan.Wire;

/**
 * In which order terminals stand on the two sides of a wiring drawing: with as few crossings as can
 * be, then with the ends of links close together, then as the profiles have them. Terminals of one
 * outlet stay together.
 *
 * @param left the generator's terminals, outlet by outlet
 * @param right the analyzer's
 */
record WiringOrder(List<Terminal> left, List<Terminal> right) {
  /** How many orders of the left side are tried; more than any real bench needs. */
  private static final int TRIES = 20_000;

  /**
   * @param left in the profile's order
   * @param right in the profile's order
   */
  static WiringOrder best(List<Terminal> left, List<Terminal> right, List<Wire> wires) {
    WiringOrder best = null;
    long least = Long.MAX_VALUE;
    for (List<Terminal> order : orders(left)) {
      if (disorder(order, left) >= least) {
        continue; // it costs that at the least
      }
      WiringOrder tried = new WiringOrder(order, byMean(order, right, wires));
      long cost = tried.cost(left, right, wires);
      if (cost < least) {
        least = cost;
        best = tried;
      }
    }
    return best;
  }

  /** How many pairs of leads cross. */
  int crossings(List<Wire> wires) {
    List<int[]> ends = new ArrayList<>();
    for (Wire wire : wires) {
      if (isStraight(wire)) {
        ends.add(new int[] {index(left, leftEnd(wire)), index(right, rightEnd(wire))});
      }
    }
    int crossings = 0;
    for (int i = 0; i < ends.size(); i++) {
      for (int j = 0; j < i; j++) {
        int l = Integer.compare(ends.get(i)[0], ends.get(j)[0]);
        int r = Integer.compare(ends.get(i)[1], ends.get(j)[1]);
        crossings += l * r < 0 ? 1 : 0;
      }
    }
    return crossings;
  }

  static boolean isStraight(Wire wire) {
    return wire.from().onAnalyzer() != wire.to().onAnalyzer();
  }

  static Terminal leftEnd(Wire wire) {
    return wire.from().onAnalyzer() ? wire.to() : wire.from();
  }

  static Terminal rightEnd(Wire wire) {
    return wire.from().onAnalyzer() ? wire.from() : wire.to();
  }

  static int index(List<Terminal> list, Terminal wanted) {
    for (int i = 0; i < list.size(); i++) {
      if (list.get(i).same(wanted)) {
        return i;
      }
    }
    return -1;
  }

  private long cost(List<Terminal> leftWas, List<Terminal> rightWas, List<Wire> wires) {
    long links = 0;
    for (Wire wire : wires) {
      if (!isStraight(wire)) {
        List<Terminal> side = wire.from().onAnalyzer() ? right : left;
        links += Math.abs(index(side, wire.from()) - index(side, wire.to())) - 1L;
      }
    }
    return crossings(wires) * 1_000_000L
        + links * 1_000L
        + disorder(left, leftWas)
        + disorder(right, rightWas);
  }

  private static long disorder(List<Terminal> now, List<Terminal> was) {
    long pairs = 0;
    for (int i = 0; i < now.size(); i++) {
      for (int j = 0; j < i; j++) {
        pairs += index(was, now.get(j)) > index(was, now.get(i)) ? 1 : 0;
      }
    }
    return pairs;
  }

  /**
   * Each jack by the mean place of what its leads come from; a link's other end beside its first.
   */
  private static List<Terminal> byMean(
      List<Terminal> left, List<Terminal> right, List<Wire> wires) {
    Map<String, Double> place = new HashMap<>();
    for (Terminal jack : right) {
      int sum = 0;
      int count = 0;
      for (Wire wire : wires) {
        if (isStraight(wire) && rightEnd(wire).same(jack)) {
          sum += index(left, leftEnd(wire));
          count++;
        }
      }
      if (count > 0) {
        place.put(jack.id(), (double) sum / count);
      }
    }
    for (Wire wire : wires) {
      if (wire.from().onAnalyzer() && wire.to().onAnalyzer()) {
        beside(place, wire.from(), wire.to());
        beside(place, wire.to(), wire.from());
      }
    }
    List<Terminal> sorted = new ArrayList<>(right);
    sorted.sort(
        (one, other) ->
            Double.compare(
                place.getOrDefault(one.id(), Double.POSITIVE_INFINITY),
                place.getOrDefault(other.id(), Double.POSITIVE_INFINITY)));
    return sorted;
  }

  private static void beside(Map<String, Double> place, Terminal placed, Terminal other) {
    if (place.containsKey(placed.id())) {
      place.putIfAbsent(other.id(), place.get(placed.id()) + 0.1);
    }
  }

  /** Orders of the left side: outlets in every order, terminals within each in every order. */
  private static List<List<Terminal>> orders(List<Terminal> left) {
    Map<String, List<Terminal>> outlets = new LinkedHashMap<>();
    left.forEach(t -> outlets.computeIfAbsent(t.owner(), o -> new ArrayList<>()).add(t));
    List<List<Terminal>> orders = new ArrayList<>();
    for (List<List<Terminal>> groups : permutations(new ArrayList<>(outlets.values()))) {
      List<List<Terminal>> made = new ArrayList<>();
      made.add(List.of());
      for (List<Terminal> group : groups) {
        List<List<Terminal>> longer = new ArrayList<>();
        for (List<Terminal> start : made) {
          for (List<Terminal> order : permutations(group)) {
            List<Terminal> joined = new ArrayList<>(start);
            joined.addAll(order);
            longer.add(joined);
          }
        }
        made = longer.size() > TRIES ? longer.subList(0, TRIES) : longer;
      }
      orders.addAll(made);
      if (orders.size() > TRIES) {
        break;
      }
    }
    return orders;
  }

  /** Every order of a short list, the given one first; of a long list that one alone. */
  private static <T> List<List<T>> permutations(List<T> items) {
    if (items.size() > 6) {
      return List.of(items);
    }
    List<List<T>> all = new ArrayList<>();
    permute(items, new ArrayList<>(), all);
    return all;
  }

  private static <T> void permute(List<T> rest, List<T> start, List<List<T>> all) {
    if (rest.isEmpty()) {
      all.add(start);
    }
    for (int i = 0; i < rest.size(); i++) {
      List<T> longer = new ArrayList<>(start);
      longer.add(rest.get(i));
      List<T> fewer = new ArrayList<>(rest);
      fewer.remove(i);
      permute(fewer, longer, all);
    }
  }
}
