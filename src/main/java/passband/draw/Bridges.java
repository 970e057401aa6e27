package passband.draw;

import static passband.draw.WiringGrid.EDGE;
import static passband.draw.WiringGrid.LANE;
import static passband.draw.WiringGrid.LEFT;
import static passband.draw.WiringGrid.RIGHT;

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

  /** The middle of a bridge's lane. */
  double laneX(Bridge bridge) {
    boolean analyzer = bridge.onAnalyzer();
    double away = 4 + LANE * (on(analyzer).indexOf(bridge) + 0.5) + 1;
    return analyzer ? RIGHT + away : LEFT - away;
  }

  /** Where the names of terminals begin at the right, or end at the left, beside the lanes. */
  double labelX(boolean analyzer) {
    double away = 9 + LANE * on(analyzer).size();
    return analyzer ? RIGHT + away : LEFT - away;
  }

  /** How wide the names of terminals can be beside the lanes. */
  double labelWidth(boolean analyzer) {
    return LEFT - EDGE - 13 - LANE * on(analyzer).size();
  }
}
