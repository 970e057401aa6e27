package passband.check;

import java.util.HashMap;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;

/**
 * {@code limits-disagree}, an error: two tests that read the same at the same point and have
 * different limits for it.
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
            say(limit, point, before, diagnostics);
          }
        }
      }
    }
  }

  private static void say(Limit limit, Point point, Seen before, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LIMITS_DISAGREE,
            point.span(),
            "the limits of %s are %s, but %s in another test",
            limit.id(),
            limit.words(limit.printed()),
            before.limit.words(before.limit.printed()))
        .note(before.point.span(), "%s is here", before.limit.id());
  }
}
