package passband.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.limit.Stated;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;

/**
 * {@code limits-out-of-family}, an error that can be allowed: a row that states one side where most
 * rows of its column state both.
 */
final class StatedOneSided implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Map<String, List<Point>> open = new LinkedHashMap<>();
      Map<String, Integer> closed = new LinkedHashMap<>();
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          for (Stated stated : limit.stated()) {
            if (stated.lower() == null || stated.upper() == null) {
              open.computeIfAbsent(stated.quantity(), q -> new ArrayList<>()).add(point);
            } else {
              closed.merge(stated.quantity(), 1, Integer::sum);
            }
          }
        }
      }
      open.forEach(
          (quantity, points) -> {
            if (points.size() < closed.getOrDefault(quantity, 0)) {
              points.forEach(point -> say(point, quantity, diagnostics));
            }
          });
    }
  }

  private static void say(Point point, String quantity, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LIMITS_OUT_OF_FAMILY,
            point.span(),
            "this row states one limit of %s; most rows state two",
            quantity)
        .hint("look the other one up in the manual");
  }
}
