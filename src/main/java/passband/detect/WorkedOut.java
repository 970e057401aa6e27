package passband.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import passband.limit.Limit;
import passband.plan.Point;

/**
 * A value with limits that the sheet works out from readings.
 *
 * @param point at which it stands
 * @param parts the readings, in the order of the formula's names
 * @param nominals what a good generator shows there, in SI
 */
record WorkedOut(
    Point point, Limit limit, Criterion criterion, List<SheetLine> parts, List<Double> nominals) {

  /**
   * As it comes out in a visit.
   *
   * @param seen what stands on the display, by line; a reading that is not among them is a good
   *     generator's
   * @param delivered whether the output itself is another one, so that its peak goes with it
   */
  Reckoning of(Map<SheetLine, Observation> seen, boolean delivered) {
    List<Observation> observed = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      SheetLine part = parts.get(i);
      Observation one = seen.get(part);
      observed.add(
          one != null
              ? one
              : part.at(delivered ? follows(part, nominals.get(i), seen) : nominals.get(i)));
    }
    return new Reckoning(criterion, observed);
  }

  /** A peak goes with what else is read of the same wave, else with the root of the power. */
  private static double follows(SheetLine part, double nominal, Map<SheetLine, Observation> seen) {
    if (part.kind() != SheetLine.Kind.PEAK) {
      return nominal;
    }
    String wave = part.limit().quantity().substring("peak-".length());
    double times = 1;
    for (Map.Entry<SheetLine, Observation> other : seen.entrySet()) {
      SheetLine line = other.getKey();
      if (line.point() == part.point() && line.kind() == SheetLine.Kind.OUTPUT) {
        double truth = other.getValue().truth();
        boolean same = line.limit().quantity().equals(wave);
        double root = same ? truth / line.nominal() : Math.sqrt(line.factor(truth));
        if (same) {
          return nominal * root;
        }
        times = root;
      }
    }
    return nominal * times;
  }
}
