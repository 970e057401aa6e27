package passband.transcribe;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where most of many intervals overlap. It works with doubles, because it only proposes: a rule is
 * kept by what it prints, which is exact.
 */
final class Sweep {
  private final double[] lows;
  private final double[] highs;
  private int count;

  /**
   * A range in which every number is in at least so many intervals.
   *
   * @param depth how many
   */
  record Region(double low, double high, int depth) {}

  /** For at most so many intervals. */
  Sweep(int most) {
    lows = new double[most];
    highs = new double[most];
  }

  void clear() {
    count = 0;
  }

  /** Adds an interval; none where its ends are the wrong way round. */
  void add(double low, double high) {
    if (low <= high) {
      double slack = 1e-12 * Math.max(Math.abs(low), Math.abs(high));
      lows[count] = low - slack;
      highs[count] = high + slack;
      count++;
    }
  }

  /** The greatest depth, and down to so much less. */
  List<Region> deepest(int less) {
    double[] starts = Arrays.copyOf(lows, count);
    double[] ends = Arrays.copyOf(highs, count);
    Arrays.sort(starts);
    Arrays.sort(ends);
    int max = max(starts, ends);
    List<Region> regions = new ArrayList<>();
    for (int depth = max; depth >= Math.max(1, max - less); depth--) {
      regions(starts, ends, depth, regions);
    }
    return regions;
  }

  private int max(double[] starts, double[] ends) {
    int depth = 0;
    int max = 0;
    int e = 0;
    for (double start : starts) {
      while (ends[e] < start) {
        e++;
        depth--;
      }
      depth++;
      max = Math.max(max, depth);
    }
    return max;
  }

  private void regions(double[] starts, double[] ends, int least, List<Region> regions) {
    int depth = 0;
    int s = 0;
    int e = 0;
    double low = 0;
    while (e < count) {
      if (s < count && starts[s] <= ends[e]) {
        depth++;
        if (depth == least) {
          low = starts[s];
        }
        s++;
      } else {
        if (depth == least) {
          regions.add(new Region(low, ends[e], least));
        }
        depth--;
        e++;
      }
    }
  }
}
