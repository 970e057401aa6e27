package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Termination;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Dimension;
import passband.syntax.Derive;
import passband.syntax.Variables;

/**
 * {@code no-load}, an error: a quantity that is not there with the load open or short. Through an
 * open load no current flows, across a short there is no voltage, and neither takes any power
 * (Joule's and Ohm's laws; OpenStax College Physics 2e, 20.4). What is measured on a path of its
 * own does not go through the load.
 */
final class ReadOpenOrShort implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        if (point.termination() != null) {
          look(plan, run, point, point.termination(), diagnostics);
        }
      }
    }
  }

  private static void look(
      Plan plan, Stage.Run run, Point point, Termination end, Diagnostics diagnostics) {
    for (Point.Reading reading : point.readings()) {
      if (isThroughLoad(plan.measure(reading.quantity(), reading.by()))
          && isNothing(reading.unit().dimension(), end)) {
        say(point, reading.quantity(), end, diagnostics);
      }
    }
    for (Limit limit : point.limits()) {
      boolean calculated = isCalculatedWithLoad(run, limit.quantity());
      boolean read = isThroughLoad(plan.measure(limit));
      if (calculated || read && isNothing(limit.unit().dimension(), end)) {
        say(point, limit.quantity(), end, diagnostics);
      }
    }
  }

  private static boolean isThroughLoad(Analyzer.@Nullable Measure measure) {
    return measure != null && measure.from() == null;
  }

  private static boolean isNothing(Dimension dimension, Termination end) {
    if (dimension.equals(Dimension.POWER) || dimension.equals(Dimension.ENERGY)) {
      return true;
    }
    return end == Termination.OPEN
        ? dimension.equals(Dimension.CURRENT) || dimension.equals(Dimension.CHARGE)
        : dimension.equals(Dimension.VOLTAGE);
  }

  private static boolean isCalculatedWithLoad(Stage.Run run, String quantity) {
    for (Derive derive : run.tree().derives()) {
      if (derive.name().text().equals(quantity)) {
        return Variables.of(derive.value()).contains("load");
      }
    }
    return false;
  }

  private static void say(Point point, String quantity, Termination end, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.NO_LOAD,
            point.places().load(),
            "there is no %s to read or to calculate with: the load is %s",
            quantity,
            end.word())
        .note(point.span(), "at this point")
        .hint(
            end == Termination.OPEN
                ? "with the load open accept a voltage, or what is measured beside the load"
                : "with the load short accept a current");
  }
}
