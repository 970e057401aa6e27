package passband.judge;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A straight line of least squares (JCGM 100, H.3.1).
 *
 * @param start its value at zero
 * @param slope what it rises by a unit
 */
public record StraightLine(double start, double slope) {

  /** The line through points; null when there are not two different places. */
  public static @Nullable StraightLine fit(List<Double> x, List<Double> y) {
    int n = x.size();
    double meanX = x.stream().mapToDouble(v -> v).average().orElse(0);
    double meanY = y.stream().mapToDouble(v -> v).average().orElse(0);
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < n; i++) {
      xx += (x.get(i) - meanX) * (x.get(i) - meanX);
      xy += (x.get(i) - meanX) * (y.get(i) - meanY);
    }
    return xx == 0 ? null : new StraightLine(meanY - xy / xx * meanX, xy / xx);
  }

  /** Its value at a place. */
  public double at(double x) {
    return start + slope * x;
  }
}
