package passband.check;

import java.util.HashMap;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;

/**
 * {@code limits-disagree}, an error: two tests that read the same at the same point and hold it to
 * different limits.
 */
final class SamePointTwice implements Check {
  private record Seen(Limit limit, Point point) {}

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Map<String, Seen> seen = new HashMap<>();
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        if (point.mode() == null) {
          continue;
        }
        for (Limit limit : point.limits()) {
          String place = limit.id().substring(run.test().text().length());
          Seen before = seen.putIfAbsent(place, new Seen(limit, point));
          if (before != null && !before.limit.printed().equals(limit.printed())) {
            diagnostics.add(fault(limit, point, before));
          }
        }
      }
    }
  }

  private static Diagnostic fault(Limit limit, Point point, Seen before) {
    return Diagnostic.of(
            Code.LIMITS_DISAGREE,
            point.span(),
            limit.id()
                + " is held to "
                + limit.words(limit.printed())
                + ", and in another test to "
                + before.limit.words(before.limit.printed()))
        .note(before.point.span(), before.limit.id() + " is here");
  }
}
