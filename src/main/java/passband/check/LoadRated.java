package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;
import passband.plan.Point;

/**
 * {@code load-off-rated}, a warning: a load that is not the mode's rated one. A load curve allows
 * it with a reason.
 */
final class LoadRated implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      boolean known = point.mode() != null && point.mode().loads() != null && point.load() != null;
      boolean there = known && plan.analyzer().load(point.load().si()) != null;
      if (there && !point.mode().loads().contains(point.load().si())) {
        String rated = Figures.text(point.mode().loads().lowest(), point.mode().loads().unit());
        diagnostics
            .say(
                Code.LOAD_OFF_RATED,
                point.places().load(),
                "%s is not the rated load of '%s'",
                point.load().text(),
                point.mode().name().text())
            .note(point.mode().name().span(), "its rated load is %s", rated)
            .hint("for a load curve write 'allow load-off-rated because \"…\"' in the test");
      }
    }
  }
}
