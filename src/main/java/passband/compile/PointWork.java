package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Stage;
import passband.plan.WiredLoads;

/**
 * What there is to do at a point.
 *
 * @param sweep null for a point without one
 * @param activate how output is activated, if it is
 * @param also what further outlets deliver at the same time
 */
record PointWork(
    RowSpec spec,
    PointLoads loads,
    Points.Asked asked,
    Stage.@Nullable Swept sweep,
    Points.Place place,
    Act.Activate activate,
    List<Simultaneous.Partner> also) {

  /**
   * The instruments that start and stop here, the one with the key first: it stops the output. They
   * are those that show something and the one whose load is swept; where there is none, the one
   * whose load is set; else the first.
   *
   * @param key to which the contact is wired that activates; null where there is none
   */
  List<Analyzer> units(Instruments instruments, @Nullable Terminal key) {
    List<Analyzer> working = new ArrayList<>();
    for (Analyzer unit : instruments.units()) {
      boolean holdsKey = key != null && key.owner().equals(unit.role());
      if (holdsKey) {
        working.add(0, unit);
      } else if (reads(unit) || isSwept(unit, instruments) || closes(unit)) {
        working.add(unit);
      }
    }
    if (working.isEmpty()) {
      working.add(loads.unit() == null ? instruments.units().get(0) : loads.unit());
    }
    return working;
  }

  /** Without the one that has only the key: unless its profile says how, it starts nothing. */
  List<Analyzer> starting(List<Analyzer> units, Instruments instruments) {
    List<Analyzer> starting = new ArrayList<>(units);
    starting.removeIf(
        unit ->
            units.size() > 1
                && !unit.actions().containsKey("start")
                && !reads(unit)
                && !isSwept(unit, instruments));
    return starting;
  }

  /** Whether it has the key by which a further outlet delivers. */
  private boolean closes(Analyzer unit) {
    for (Terminal key : PartnerSteps.keys(also)) {
      if (key.owner().equals(unit.role())) {
        return true;
      }
    }
    return false;
  }

  private boolean reads(Analyzer unit) {
    for (Accepts.Accepted one : asked.accepted()) {
      if (one.workedOut() == null && one.reader().role().equals(unit.role())) {
        return true;
      }
    }
    for (Accepts.Input one : asked.inputs()) {
      if (one.reader().role().equals(unit.role())) {
        return true;
      }
    }
    return false;
  }

  private boolean isSwept(Analyzer unit, Instruments instruments) {
    if (sweep == null || !sweep.what().equals("load")) {
      return false;
    }
    LoadBank bank =
        WiredLoads.bank(instruments, place.setup(), spec.mode(), place.outlet(), sweep.from().si());
    return bank != null && bank.from().owner().equals(unit.role());
  }
}
