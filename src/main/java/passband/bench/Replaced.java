package passband.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.plan.Act;
import passband.plan.Owner;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Point;
import passband.source.Span;

/** The steps of a point in whose place a block stands. */
final class Replaced {
  private Replaced() {}

  /** The steps; none for {@code stop}, which has to stop by itself. */
  static List<PlanStep> steps(String name, Point point, Plan plan, Span at) {
    List<PlanStep> steps = new ArrayList<>();
    acts(name, point, plan).forEach(act -> steps.add(new PlanStep(act, null, null, at)));
    return steps;
  }

  private static List<Act> acts(String name, Point point, Plan plan) {
    if (name.equals("set-load")) {
      return loads(point);
    }
    if (name.equals("start")) {
      List<Act> starts = new ArrayList<>();
      for (Analyzer unit : plan.instruments().units()) {
        starts.add(new Act.Run(Kind.START, new Owner(unit.role(), null)));
      }
      return starts;
    }
    Act act = act(name, point);
    return act == null ? List.of() : List.of(act);
  }

  private static List<Act> loads(Point point) {
    List<Act> loads = new ArrayList<>();
    if (point.loadAt() != null) {
      Owner unit = new Owner(point.loadAt(), null);
      loads.add(new Act.SetLoad(unit, point.load(), point.termination()));
    }
    point
        .otherLoads()
        .forEach((role, load) -> loads.add(new Act.SetLoad(new Owner(role, null), load, null)));
    return loads;
  }

  private static @Nullable Act act(String name, Point point) {
    switch (name) {
      case "select":
        return point.mode() == null ? null : new Act.Select(point.outlet(), point.mode());
      case "adjust":
        return point.setting() == null ? null : new Act.Adjust(point.setting());
      case "activate":
        return point.mode() == null ? null : Act.Activate.UNKNOWN;
      case "read":
        return new Act.Read(Owner.GENERATOR, List.of(), null);
      default:
        return null;
    }
  }
}
