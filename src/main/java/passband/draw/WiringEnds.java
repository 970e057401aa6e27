package passband.draw;

import java.util.List;
import passband.model.Analyzer;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Wire;
import passband.words.Language;

/**
 * What a wiring drawing shows: the terminals of every outlet and instrument that a wire goes to,
 * and the words beside them.
 *
 * @param left the generator's terminals, outlet by outlet, in the profile's order
 * @param right the instruments' jacks, likewise
 */
record WiringEnds(
    Language language,
    String generator,
    List<Terminal> left,
    List<Terminal> right,
    List<Wire> wires) {

  static WiringEnds of(Plan plan, List<Wire> wires) {
    List<Terminal> left =
        plan.device().outlets().stream()
            .filter(o -> o.terminals().stream().anyMatch(t -> isUsed(wires, t)))
            .flatMap(o -> o.terminals().stream())
            .toList();
    List<Analyzer> units = plan.instruments().units();
    List<Analyzer> used =
        units.stream().filter(u -> u.terminals().stream().anyMatch(t -> isUsed(wires, t))).toList();
    List<Terminal> right =
        (used.isEmpty() ? units.subList(0, 1) : used)
            .stream().flatMap(u -> u.terminals().stream()).toList();
    return new WiringEnds(plan.language(), plan.device().title(), left, right, wires);
  }

  private static boolean isUsed(List<Wire> wires, Terminal terminal) {
    return wires.stream().anyMatch(w -> w.from().same(terminal) || w.to().same(terminal));
  }

  /** Whether a wire goes to a terminal. */
  boolean isUsed(Terminal terminal) {
    return isUsed(wires, terminal);
  }

  /** What is printed beside a terminal. */
  String name(Terminal terminal) {
    return isUsed(terminal) ? terminal.title() : language.of("draw.is-empty", terminal.title());
  }

  /** A grid in which no word of these is broken that is not wider than a whole panel. */
  WiringGrid grid(Bridges bridges) {
    WiringGrid.Need leads = WiringGrid.Need.NONE;
    for (Wire wire : wires) {
      if (WiringOrder.isStraight(wire)) {
        leads = leads.and(WiringStrands.printedName(language, wire.lead()), false);
      }
    }
    return WiringGrid.fitting(
        side(left, bridges, false).and(generator, true),
        bridges.lanes(false),
        leads,
        side(right, bridges, true),
        bridges.lanes(true));
  }

  private WiringGrid.Need side(List<Terminal> terminals, Bridges bridges, boolean analyzer) {
    WiringGrid.Need need = WiringGrid.Need.NONE;
    for (Terminal terminal : terminals) {
      need = need.and(name(terminal), false).and(terminal.ownerTitle(), true);
    }
    for (Bridge bridge : bridges.on(analyzer)) {
      need = need.and(bridge.name(), false);
    }
    return need;
  }
}
