package passband.detect;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;

/**
 * A gain error that is caught on a bench in order, and hidden by one that is not: the power is off
 * at all rows of a mode, outlet and load by a quarter more than the tolerance.
 *
 * @param bench the fault of the bench, with its size
 * @param load as printed; empty for none
 * @param gain the error of the power, as a share: −0.25 is 25 % too little
 * @param power the probability that the sheet still fails, below 95 %
 */
public record Masked(
    Fault bench, Fault.Size size, Place place, String load, double gain, Chance power) {
  private static final double TOLERANCES = 1.25;

  /** A gain error at all rows of a mode, outlet and load. */
  private record Off(List<SheetLine> rows, double gain) {}

  /** Every pair, by fault of the bench in the order of the catalogue. */
  static List<Masked> of(SheetLines lines, List<Instance> instances, Kernel kernel) {
    List<Off> caught = caught(lines, kernel);
    List<Masked> masked = new ArrayList<>();
    for (Instance instance : instances) {
      if (instance.fault().who().equals("bench")) {
        Map<SheetLine, DoubleFunction<Observation>> moved = moved(instance);
        for (Off off : caught) {
          if (off.rows.stream().anyMatch(moved::containsKey)) {
            add(masked, instance, moved, off, kernel);
          }
        }
      }
    }
    return masked;
  }

  /** What is caught on a bench in order. */
  private static List<Off> caught(SheetLines lines, Kernel kernel) {
    List<Off> caught = new ArrayList<>();
    for (List<SheetLine> rows : Gain.read(lines).values()) {
      for (boolean above : new boolean[] {false, true}) {
        double tolerance = Gain.tolerance(rows, above);
        double gain = Math.round(TOLERANCES * tolerance * 100) / 100.0;
        if (Double.isFinite(tolerance)
            && gain > -1
            && Gain.power(rows, kernel, gain, false) >= Outcome.SURE_ENOUGH) {
          caught.add(new Off(rows, gain));
        }
      }
    }
    return caught;
  }

  /** What the fault makes of each reading that it changes. */
  private static Map<SheetLine, DoubleFunction<Observation>> moved(Instance instance) {
    Map<SheetLine, DoubleFunction<Observation>> moved = new IdentityHashMap<>();
    for (Instance.Change change : instance.changes()) {
      moved.put(change.line(), change.of());
    }
    return moved;
  }

  private static void add(
      List<Masked> masked,
      Instance instance,
      Map<SheetLine, DoubleFunction<Observation>> moved,
      Off off,
      Kernel kernel) {
    Visit visit = new Visit();
    for (SheetLine line : Gain.withParts(off.rows)) {
      visit.add(line, moved.getOrDefault(line, line::at).apply(line.scaled(1 + off.gain)));
    }
    Chance power = visit.failing(kernel);
    if (power.value() < Outcome.SURE_ENOUGH) {
      SheetLine first = off.rows.get(0);
      masked.add(
          new Masked(
              instance.fault(),
              instance.size(),
              Place.of(first),
              first.loadText(),
              off.gain,
              power));
    }
  }
}
