package passband.detect;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;

/**
 * Rows of one mode, outlet and load that let a greater gain error pass than the mode's tolerance
 * and the error of a reading explain, at that row where both together are least. Errors are of the
 * power, as shares: −0.21 is 21 % too little.
 *
 * @param first the first of the rows
 * @param load as printed; empty for none
 * @param above whether it is an excess, not a shortage
 * @param tolerance at that row, on that side
 * @param expected the tolerance and by how much the reading may be off: its expanded uncertainty
 *     and half a step of the display
 * @param caught the least error that is caught with 95 %; null where none is
 */
public record BluntRows(
    Point first,
    Place place,
    String load,
    boolean above,
    double tolerance,
    double expected,
    @Nullable Double caught) {

  /** Of a compiled procedure, in the order of the sheet, a shortage before an excess. */
  public static List<BluntRows> of(Plan plan) {
    Kernel kernel = new Kernel();
    List<BluntRows> blunt = new ArrayList<>();
    for (List<SheetLine> some : Gain.read(SheetLines.of(plan)).values()) {
      add(blunt, some, kernel, false);
      add(blunt, some, kernel, true);
    }
    return blunt;
  }

  private static void add(
      List<BluntRows> blunt, List<SheetLine> some, Kernel kernel, boolean above) {
    int side = above ? 1 : -1;
    double tolerance = side * Double.POSITIVE_INFINITY;
    double expected = tolerance;
    SheetLine narrowest = some.get(0);
    for (SheetLine line : some) {
      Real limit = Gain.limit(line, above);
      if (limit != null) {
        double own = line.factor(limit.doubleValue()) - 1;
        double beyond = own + side * line.doubtShare(limit.doubleValue());
        if (Math.abs(beyond) < Math.abs(expected)) {
          tolerance = own;
          expected = beyond;
          narrowest = line;
        }
      }
    }
    double just = expected + side * 1e-9;
    boolean bounded = Double.isFinite(expected) && just > -1;
    if (bounded && isMissed(some, narrowest, kernel, just)) {
      SheetLine first = some.get(0);
      blunt.add(
          new BluntRows(
              first.point(),
              Place.of(first),
              first.loadText(),
              above,
              tolerance,
              expected,
              Gain.least(some, kernel, side, false)));
    }
  }

  /** All rows together catch at least what one reading does. */
  private static boolean isMissed(
      List<SheetLine> some, SheetLine narrowest, Kernel kernel, double error) {
    Observation alone = narrowest.at(narrowest.scaled(1 + error));
    return kernel.failing(List.of(alone)).value() < Outcome.SURE_ENOUGH
        && Gain.power(some, kernel, error, false) < Outcome.SURE_ENOUGH;
  }
}
