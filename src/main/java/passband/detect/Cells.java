package passband.detect;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where in the plane of two errors readings and values pass: convex polygons, since a reading's
 * limits are straight lines there, and so are the errors at which its display turns over.
 */
final class Cells {
  /** Of a step, at an edge along which a display turns over. */
  private static final double EDGE = 1e-9;

  /** What is smaller passes or fails as its middle does. */
  private static final double SMALLEST = 1e-8;

  private final int size;
  private final double smallest;

  /**
   * @param whole the area in which the two errors lie
   */
  Cells(int size, double whole) {
    this.size = size;
    this.smallest = SMALLEST * whole;
  }

  /** The part in which readings pass; null where there is none. */
  @Nullable Polygon passing(Polygon whole, List<PlacedReading> readings) {
    Polygon left = whole;
    for (PlacedReading one : readings) {
      double[] factors = one.factors(size);
      double truth = one.of().truth();
      Window window = one.of().window();
      if (left != null && window.low() != Double.NEGATIVE_INFINITY) {
        left = left.above(truth - window.low(), factors);
      }
      if (left != null && window.high() != Double.POSITIVE_INFINITY) {
        left = left.above(window.high() - truth, negated(factors));
      }
    }
    return left;
  }

  /** The parts in which a value passes as well. */
  List<Polygon> passing(List<Polygon> some, PlacedValue value) {
    List<Polygon> passing = new ArrayList<>();
    some.forEach(one -> add(passing, one, value));
    return passing;
  }

  private void add(List<Polygon> passing, Polygon cell, PlacedValue value) {
    Criterion.Everywhere there = value.everywhere(cell, size, EDGE);
    if (there == Criterion.Everywhere.PASS) {
      passing.add(cell);
    }
    if (there != Criterion.Everywhere.EITHER) {
      return;
    }
    PlacedReading most = null;
    long turns = 0;
    for (PlacedReading part : value.parts()) {
      long here = part.turns(cell, size, EDGE);
      most = here > turns ? part : most;
      turns = Math.max(turns, here);
    }
    if (most == null || cell.area() < smallest) {
      if (value.passesInside(cell, size)) {
        passing.add(cell);
      }
      return;
    }
    double off = most.of().truth() - most.middleTurn(cell, size);
    double[] factors = most.factors(size);
    addIfAny(passing, cell.above(off, factors), value);
    addIfAny(passing, cell.above(-off, negated(factors)), value);
  }

  private void addIfAny(List<Polygon> passing, @Nullable Polygon cell, PlacedValue value) {
    if (cell != null) {
      add(passing, cell, value);
    }
  }

  private static double[] negated(double[] factors) {
    double[] negated = new double[factors.length];
    for (int i = 0; i < negated.length; i++) {
      negated[i] = -factors[i];
    }
    return negated;
  }

  // ---- the probability ----

  /** Nodes over so much of an error's reach, where its density is not the same everywhere. */
  private static final double PANEL = 1.0 / 24;

  /** The cells over one error across, and how it is spread. */
  record Across(Spread spread, List<Polygon> cells) {
    double at(double along) {
      double sum = 0;
      for (Polygon cell : cells) {
        sum += cell.across(spread, along);
      }
      return sum;
    }
  }

  /** The probability that each of some errors across lies in its cells, over the one along. */
  static double probability(Spread along, List<Across> all) {
    Across most = all.get(0);
    boolean even = along.isRectangular();
    for (Across one : all) {
      most = one.cells.size() > most.cells.size() ? one : most;
      even &= one.spread.isRectangular();
    }
    List<Across> others = new ArrayList<>(all);
    others.remove(most);
    double[] breaks = breaks(others);
    double sum = 0;
    for (Polygon cell : most.cells) {
      double[] corners = cell.corners();
      double[] ends = ends(corners, breaks);
      for (int i = 0; i + 1 < ends.length; i++) {
        sum += piece(along, ends[i], ends[i + 1], even, most.spread, cell, others);
      }
    }
    return sum;
  }

  /** Where widths have corners, in order. */
  private static double[] breaks(List<Across> some) {
    List<double[]> corners = new ArrayList<>();
    int count = 0;
    for (Across one : some) {
      for (Polygon cell : one.cells) {
        corners.add(cell.corners());
        count += corners.get(corners.size() - 1).length;
      }
    }
    double[] breaks = new double[count];
    int at = 0;
    for (double[] ofCell : corners) {
      for (double corner : ofCell) {
        breaks[at++] = corner;
      }
    }
    Arrays.sort(breaks);
    return breaks;
  }

  private static double[] ends(double[] corners, double[] breaks) {
    double[] ends = Arrays.copyOf(corners, corners.length + breaks.length);
    int count = corners.length;
    for (double one : breaks) {
      if (one > corners[0] && one < corners[corners.length - 1]) {
        ends[count++] = one;
      }
    }
    Arrays.sort(ends, 0, count);
    return Arrays.copyOf(ends, count);
  }

  /** Widths are linear between two corners: for even densities four nodes are exact. */
  private static double piece(
      Spread along,
      double from,
      double to,
      boolean even,
      Spread across,
      Polygon cell,
      List<Across> others) {
    if (to <= from) {
      return 0;
    }
    double start = along.variable(from);
    double length = along.variable(to) - start;
    int panels = even ? 1 : (int) Math.ceil(length / (PANEL * along.reach()));
    double half = length / panels / 2;
    double sum = 0;
    for (int panel = 0; panel < panels; panel++) {
      for (int node = 0; node < Component.NODES.length; node++) {
        double variable = start + (2 * panel + 1 + Component.NODES[node]) * half;
        double error = along.error(variable);
        double passing = cell.across(across, error);
        for (Across other : others) {
          passing *= other.at(error);
        }
        sum += half * Component.WEIGHTS[node] * along.density(variable) * passing;
      }
    }
    return sum;
  }
}
