package passband.draw;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Figure;
import passband.plan.Wire;
import passband.quantity.Units;
import passband.words.Language;

/** What joins two terminals of the same side: a link, or the analyzer's own load or meter. */
final class Bridge {
  private final Terminal from;
  private final Terminal to;
  private final @Nullable Wire wire;
  private final String name;
  private final boolean load;
  private double label;
  private double middle;

  private Bridge(Terminal from, Terminal to, @Nullable Wire wire, String name, boolean load) {
    this.from = from;
    this.to = to;
    this.wire = wire;
    this.name = name;
    this.load = load;
  }

  /** The wires of one side, and the loads and meters of the analyzer that wires lead to. */
  static List<Bridge> of(Language language, Instruments instruments, List<Wire> wires) {
    List<Bridge> bridges = new ArrayList<>();
    for (Wire wire : wires) {
      if (!WiringOrder.isStraight(wire)) {
        bridges.add(
            new Bridge(
                wire.from(),
                wire.to(),
                wire,
                WiringStrands.printedName(language, wire.lead()),
                false));
      }
    }
    for (Analyzer.LoadBank load : instruments.loads()) {
      addInside(
          bridges, wires, new Bridge(load.from(), load.to(), null, language.of("draw.load"), true));
    }
    List<Analyzer.Measure> measures = instruments.measures();
    for (Analyzer.Measure measure : measures) {
      if (measure.from() != null && measure.to() != null) {
        String name = printed(language, measure, measures);
        addInside(bridges, wires, new Bridge(measure.from(), measure.to(), null, name, false));
      }
    }
    return bridges;
  }

  /**
   * What is measured, with the meter's own resistance where that is known; no more than that it is
   * a meter where several quantities are measured between the same jacks, since one drawing serves
   * the tests of all of them.
   */
  private static String printed(
      Language language, Analyzer.Measure measure, List<Analyzer.Measure> all) {
    for (Analyzer.Measure other : all) {
      if (other != measure && isBeside(measure, other)) {
        return language.of("draw.meter");
      }
    }
    String quantity = language.term(measure.quantity().printed());
    return measure.through() == null
        ? quantity
        : quantity + ", " + language.number(new Figure(measure.through(), Units.of("ohm")).text());
  }

  private static boolean isBeside(Analyzer.Measure one, Analyzer.Measure other) {
    return one.from() != null
        && one.to() != null
        && other.from() != null
        && other.to() != null
        && one.from().same(other.from())
        && one.to().same(other.to());
  }

  private static void addInside(List<Bridge> bridges, List<Wire> wires, Bridge bridge) {
    Terminal from = bridge.from;
    Terminal to = bridge.to;
    if (!known(bridges, from, to) && reached(wires, from) && reached(wires, to)) {
      bridges.add(bridge);
    }
  }

  private static boolean known(List<Bridge> bridges, Terminal from, Terminal to) {
    for (Bridge bridge : bridges) {
      if (bridge.from.same(from) && bridge.to.same(to)) {
        return true;
      }
    }
    return false;
  }

  private static boolean reached(List<Wire> wires, Terminal jack) {
    for (Wire wire : wires) {
      if (wire.from().same(jack) || wire.to().same(jack)) {
        return true;
      }
    }
    return false;
  }

  /** The name printed beside it. */
  String name() {
    return name;
  }

  boolean isAt(Terminal terminal) {
    return from.same(terminal) || to.same(terminal);
  }

  boolean isLoad() {
    return load;
  }

  boolean onAnalyzer() {
    return from.onAnalyzer();
  }

  Terminal from() {
    return from;
  }

  Terminal to() {
    return to;
  }

  /** Null for a load or a meter. */
  @Nullable Wire wire() {
    return wire;
  }

  /** Puts the top of its name here; the symbol stands beside it. */
  void labelAt(double y, int lines) {
    label = y;
    middle = y + lines * WiringGrid.LINE / 2;
  }

  /** The top of its name. */
  double label() {
    return label;
  }

  /** The middle of its name, where its symbol is. */
  double middle() {
    return middle;
  }

  /** Its name in lines of this width. */
  List<String> lines(double width) {
    return TextWidths.wrapped(name, width, WiringGrid.SIZE, false);
  }
}
