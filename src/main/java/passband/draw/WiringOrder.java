package passband.draw;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import passband.model.Terminal;
import passband.plan.Wire;

/**
 * In which order terminals stand on the two sides of a wiring drawing: with as few crossings as can
 * be, then with the ends of links close together, then as the profiles have them. Terminals of one
 * outlet and jacks of one instrument stay together.
 *
 * @param left the generator's terminals, outlet by outlet
 * @param right the analyzer's
 */
record WiringOrder(List<Terminal> left, List<Terminal> right) {
  /** How many terminals are placed in search of an order; more than any real bench needs. */
  private static final int STEPS = 100_000;

  /** What is longer stays as the profile has it. */
  private static final int MOST_PERMUTED = 6;

  /**
   * @param left in the profile's order
   * @param right in the profile's order
   */
  static WiringOrder best(List<Terminal> left, List<Terminal> right, List<Wire> wires) {
    return new Search(left, right, wires).best();
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

  /** How many instruments are at the right. */
  int units() {
    return (int) right.stream().map(Terminal::owner).distinct().count();
  }

  /** The leads from a terminal of the generator, in the order of their jacks. */
  List<Wire> from(Terminal terminal, List<Wire> wires) {
    List<Wire> here = new ArrayList<>();
    for (Wire wire : wires) {
      if (isStraight(wire) && leftEnd(wire).same(terminal)) {
        here.add(wire);
      }
    }
    here.sort(Comparator.comparingInt(w -> index(right, rightEnd(w))));
    return here;
  }

  /** Whether a lead crosses another. */
  boolean crosses(List<Wire> wires) {
    int last = -1;
    for (Terminal terminal : left) {
      for (Wire wire : from(terminal, wires)) {
        int jack = index(right, rightEnd(wire));
        if (jack < last) {
          return true;
        }
        last = jack;
      }
    }
    return false;
  }

  /** Orders are of numbers: places in the profiles' orders. */
  private static final class Search {
    private final List<Terminal> left;
    private final List<Terminal> right;

    /** The ends of the straight wires, at the left and at the right. */
    private final int[] from;

    private final int[] to;

    /** The two ends of what goes from one terminal to another of its side. */
    private final int[][] leftLinks;

    private final int[][] rightLinks;

    /** The orders of the instruments that are tried. */
    private final List<List<String>> unitOrders;

    private int[] bestLeft = {};
    private int[] bestRight = {};
    private long least = Long.MAX_VALUE;
    private int steps;

    Search(List<Terminal> left, List<Terminal> right, List<Wire> wires) {
      this.left = left;
      this.right = right;
      List<Wire> straight = wires.stream().filter(WiringOrder::isStraight).toList();
      this.from = new int[straight.size()];
      this.to = new int[straight.size()];
      for (int i = 0; i < from.length; i++) {
        from[i] = index(left, leftEnd(straight.get(i)));
        to[i] = index(right, rightEnd(straight.get(i)));
      }
      this.leftLinks = links(left, wires, false);
      this.rightLinks = links(right, wires, true);
      List<String> units = right.stream().map(Terminal::owner).distinct().toList();
      this.unitOrders = units.size() > 3 ? List.of(units) : permutations(units);
    }

    private static int[][] links(List<Terminal> side, List<Wire> wires, boolean analyzer) {
      return wires.stream()
          .filter(w -> !isStraight(w) && w.from().onAnalyzer() == analyzer)
          .map(w -> new int[] {index(side, w.from()), index(side, w.to())})
          .toList()
          .toArray(new int[0][]);
    }

    WiringOrder best() {
      for (List<int[]> outlets : permutations(outlets())) {
        List<int[]> own = new ArrayList<>();
        outlets.forEach(outlet -> own.addAll(Collections.nCopies(outlet.length, outlet)));
        extend(new int[left.size()], 0, own, 0);
      }
      return new WiringOrder(in(bestLeft, left), in(bestRight, right));
    }

    /** The terminals of each outlet, in the profile's order. */
    private List<int[]> outlets() {
      return left.stream()
          .map(Terminal::owner)
          .distinct()
          .map(
              outlet ->
                  IntStream.range(0, left.size())
                      .filter(i -> left.get(i).owner().equals(outlet))
                      .toArray())
          .toList();
    }

    /**
     * Tries every order of the left side that goes on from the terminals placed so far, as long as
     * it can be better than the best.
     *
     * @param outlets of each place, the outlet whose terminals stand there
     * @param disorder of the terminals placed so far
     */
    private void extend(int[] order, int placed, List<int[]> outlets, long disorder) {
      if (disorder >= least || steps++ > STEPS) {
        return;
      }
      if (placed == order.length) {
        tryOut(order.clone(), disorder);
        return;
      }
      int[] outlet = outlets.get(placed);
      for (int terminal : outlet) {
        if (!isPlaced(terminal, order, placed)) {
          order[placed] = terminal;
          extend(order, placed + 1, outlets, disorder + before(order, placed));
          if (outlet.length > MOST_PERMUTED) {
            return;
          }
        }
      }
    }

    private static boolean isPlaced(int terminal, int[] order, int placed) {
      for (int i = 0; i < placed; i++) {
        if (order[i] == terminal) {
          return true;
        }
      }
      return false;
    }

    private void tryOut(int[] order, long disorder) {
      int[] places = places(order);
      if (length(leftLinks, places) * 1_000L + disorder >= least) {
        return; // whatever stands at the right, it is no better
      }
      int[] mixed = byMean(places);
      for (List<String> units : unitOrders) {
        int[] rightOrder = together(mixed, units);
        long cost = cost(places, rightOrder) + disorder;
        if (cost < least) {
          least = cost;
          bestLeft = order;
          bestRight = rightOrder;
        }
      }
    }

    /** The jacks of each instrument together, the instruments in an order. */
    private int[] together(int[] mixed, List<String> units) {
      int[] order = new int[mixed.length];
      int next = 0;
      for (String unit : units) {
        for (int jack : mixed) {
          if (right.get(jack).owner().equals(unit)) {
            order[next++] = jack;
          }
        }
      }
      return order;
    }

    private static List<Terminal> in(int[] order, List<Terminal> side) {
      List<Terminal> sorted = new ArrayList<>();
      for (int terminal : order) {
        sorted.add(side.get(terminal));
      }
      return sorted;
    }

    /** Where each terminal stands in an order. */
    private static int[] places(int[] order) {
      int[] places = new int[order.length];
      for (int i = 0; i < order.length; i++) {
        places[order[i]] = i;
      }
      return places;
    }

    /** All but the disorder of the left side. */
    private long cost(int[] places, int[] rightOrder) {
      int[] rightPlaces = places(rightOrder);
      return crossings(places, rightPlaces) * 1_000_000L
          + (length(leftLinks, places) + length(rightLinks, rightPlaces)) * 1_000L
          + disorder(rightOrder);
    }

    private int crossings(int[] places, int[] rightPlaces) {
      int crossings = 0;
      for (int i = 0; i < from.length; i++) {
        for (int j = 0; j < i; j++) {
          int l = Integer.compare(places[from[i]], places[from[j]]);
          int r = Integer.compare(rightPlaces[to[i]], rightPlaces[to[j]]);
          crossings += l * r < 0 ? 1 : 0;
        }
      }
      return crossings;
    }

    private static long length(int[][] links, int[] places) {
      long length = 0;
      for (int[] link : links) {
        length += Math.abs(places[link[0]] - places[link[1]]) - 1L;
      }
      return length;
    }

    /** How many pairs stand in another order than in the profile. */
    private static long disorder(int[] order) {
      long pairs = 0;
      for (int i = 0; i < order.length; i++) {
        pairs += before(order, i);
      }
      return pairs;
    }

    /** How many stand before the one at a place that come after it in the profile. */
    private static long before(int[] order, int place) {
      long pairs = 0;
      for (int i = 0; i < place; i++) {
        pairs += order[i] > order[place] ? 1 : 0;
      }
      return pairs;
    }

    /**
     * Each jack by the mean place of what its leads come from; a link's other end beside its first.
     */
    private int[] byMean(int[] places) {
      double[] mean = new double[right.size()];
      for (int jack = 0; jack < mean.length; jack++) {
        int sum = 0;
        int count = 0;
        for (int i = 0; i < to.length; i++) {
          if (to[i] == jack) {
            sum += places[from[i]];
            count++;
          }
        }
        mean[jack] = count == 0 ? Double.POSITIVE_INFINITY : (double) sum / count;
      }
      for (int[] link : rightLinks) {
        beside(mean, link[0], link[1]);
        beside(mean, link[1], link[0]);
      }
      return sorted(mean);
    }

    private static void beside(double[] mean, int placed, int other) {
      if (mean[other] == Double.POSITIVE_INFINITY) {
        mean[other] = mean[placed] + 0.1;
      }
    }

    /** By insertion: there are few, and equals stay as they were. */
    private static int[] sorted(double[] mean) {
      int[] order = new int[mean.length];
      for (int i = 0; i < order.length; i++) {
        int at = i;
        while (at > 0 && mean[order[at - 1]] > mean[i]) {
          order[at] = order[at - 1];
          at--;
        }
        order[at] = i;
      }
      return order;
    }
  }

  /** Every order of a short list, the given one first; of a long list that one alone. */
  private static <T> List<List<T>> permutations(List<T> items) {
    if (items.size() > MOST_PERMUTED) {
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
