package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.model.Series;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;

/**
 * {@code load-off-rated}: a load that is not the mode's rated one. A load curve allows it with a
 * reason.
 */
final class LoadRated implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      Mode mode = point.mode();
      Series rated = mode == null ? null : mode.loads();
      Figure load = point.load();
      if (mode != null
          && rated != null
          && load != null
          && plan.analyzer().load(load.si()) != null
          && !rated.contains(load.si())) {
        say(point, load, mode, rated, diagnostics);
      }
    }
  }

  private static void say(
      Point point, Figure load, Mode mode, Series rated, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LOAD_OFF_RATED,
            point.places().load(),
            "%s is not the rated load of '%s'",
            load.text(),
            mode.name().text())
        .note(
            ModeLines.loads(mode),
            "its rated load is %s",
            Figures.text(rated.lowest(), rated.unit()))
        .hint("for a load curve write 'allow load-off-rated because \"…\"' in the test");
  }
}
