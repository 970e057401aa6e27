package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.model.Series;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;

/**
 * {@code load-off-rated}: a load that is not the mode's rated one. A load curve allows it with a
 * reason.
 */
final class LoadRated implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      if (run.setup() == null || run.setup().whole()) {
        run.points().forEach(point -> look(plan, point, diagnostics));
      }
    }
  }

  private static void look(Plan plan, Point point, Diagnostics diagnostics) {
    Mode mode = point.mode();
    Figure load = point.load();
    if (mode != null
        && load != null
        && plan.instruments().load(load.si()) != null
        && isOffRated(mode, load)) {
      say(point, load, mode, diagnostics);
    }
  }

  /** Of a mode that is rated for open alone any load is off. */
  private static boolean isOffRated(Mode mode, Figure load) {
    Series rated = mode.loads();
    return rated == null ? !mode.terminations().isEmpty() : !rated.contains(load.si());
  }

  private static void say(Point point, Figure load, Mode mode, Diagnostics diagnostics) {
    Series rated = mode.loads();
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
            rated == null
                ? mode.terminations().get(0).word()
                : Figures.text(rated.lowest(), rated.unit()))
        .hint("for a load curve write 'allow load-off-rated because \"…\"' in the test");
  }
}
