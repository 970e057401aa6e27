package passband.check;

import java.util.HashSet;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.draw.WiringSize;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;

/**
 * {@code drawing-off-paper}, an error: a setup whose drawing does not fit the paper, so that the
 * technician would not see how the leads go.
 */
final class DrawingFits implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Set<String> seen = new HashSet<>();
    for (Stage.Run run : plan.runs()) {
      Setup setup = run.setup();
      String outlet = run.outlet() == null ? "-" : run.outlet().name().text();
      if (setup != null
          && seen.add(setup.name() + " on " + outlet)
          && fitsAcross(plan, setup, diagnostics)) {
        fitsDown(plan, run, setup, diagnostics);
      }
    }
  }

  private static boolean fitsAcross(Plan plan, Setup setup, Diagnostics diagnostics) {
    for (boolean analyzer : new boolean[] {true, false}) {
      int lanes = WiringSize.lanes(plan, setup, analyzer);
      if (lanes > WiringSize.MOST_LANES) {
        diagnostics
            .say(
                Code.DRAWING_OFF_PAPER,
                setup.name().span(),
                "the drawing of this setup does not fit the paper: beside the terminals of the %s"
                    + " there is room for %d links, loads and meters, and there are %d",
                analyzer ? "analyzer" : "generator",
                WiringSize.MOST_LANES,
                lanes)
            .hint("make two setups of it, each with a test of its own");
        return false;
      }
    }
    return true;
  }

  private static void fitsDown(Plan plan, Stage.Run run, Setup setup, Diagnostics diagnostics) {
    int height = WiringSize.height(plan, run, setup);
    if (height > WiringSize.MOST_HEIGHT) {
      diagnostics
          .say(
              Code.DRAWING_OFF_PAPER,
              setup.name().span(),
              "the drawing of this setup does not fit the paper: it is %d mm high, and there is"
                  + " room for %d mm",
              height,
              WiringSize.MOST_HEIGHT)
          .hint(
              "give terminals and leads short names, or make two setups of it, each with a test of"
                  + " its own");
    }
  }
}
