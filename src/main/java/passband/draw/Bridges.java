package passband.draw;

import static passband.draw.WiringGrid.LANE;

import java.util.ArrayList;
import java.util.List;
import passband.model.Instruments;
import passband.plan.Wire;
import passband.words.Language;

/** What joins terminals of the same side, each in a lane of its own beside the terminals. */
final class Bridges {
  private final List<Bridge> all;
  private final List<Bridge> ofAnalyzer = new ArrayList<>();
  private final List<Bridge> ofGenerator = new ArrayList<>();

  Bridges(Language language, Instruments instruments, List<Wire> wires) {
    this.all = Bridge.of(language, instruments, wires);
    all.forEach(b -> (b.onAnalyzer() ? ofAnalyzer : ofGenerator).add(b));
  }

  List<Bridge> all() {
    return all;
  }

  /** Those of the analyzer or of the generator. */
  List<Bridge> on(boolean analyzer) {
    return analyzer ? ofAnalyzer : ofGenerator;
  }

  /** How many lanes are on a side. */
  int lanes(boolean analyzer) {
    return on(analyzer).size();
  }

  /** The middle of a bridge's lane. */
  double laneX(WiringGrid grid, Bridge bridge) {
    boolean analyzer = bridge.onAnalyzer();
    double away = 4 + LANE * (on(analyzer).indexOf(bridge) + 0.5) + 1;
    return analyzer ? grid.right() + away : grid.left() - away;
  }

  /** Where the names of terminals begin at the right, or end at the left, beside the lanes. */
  double nameX(WiringGrid grid, boolean analyzer) {
    double away = 9 + LANE * lanes(analyzer);
    return analyzer ? grid.right() + away : grid.left() - away;
  }

  /** How wide the names of terminals can be beside the lanes. */
  double nameWidth(WiringGrid grid, boolean analyzer) {
    return grid.nameWidth(analyzer, lanes(analyzer));
  }

  /**
   * How wide a heading can be: as wide as the panel, but for the lanes where something goes past
   * it, from one outlet or instrument to another.
   */
  double headingWidth(WiringGrid grid, boolean analyzer) {
    for (Bridge bridge : on(analyzer)) {
      if (!bridge.from().owner().equals(bridge.to().owner())) {
        return nameWidth(grid, analyzer);
      }
    }
    return grid.nameWidth(analyzer, 0);
  }

  /** The middle of a heading. */
  double headingX(WiringGrid grid, boolean analyzer) {
    double lanes =
        headingWidth(grid, analyzer) < grid.nameWidth(analyzer, 0) ? 9 + LANE * lanes(analyzer) : 0;
    return analyzer
        ? (grid.right() + lanes + grid.width() - WiringGrid.EDGE) / 2
        : (grid.left() - lanes + WiringGrid.EDGE) / 2;
  }
}
