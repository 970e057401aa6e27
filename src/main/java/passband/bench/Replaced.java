package passband.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Point;
import passband.source.Span;

/** The step of a point in whose place a block stands. */
final class Replaced {
  private Replaced() {}

  /** The step; null for {@code stop}, which has to stop by itself. */
  static @Nullable PlanStep step(String name, Point point, Span at) {
    Act act = act(name, point);
    return act == null ? null : new PlanStep(act, null, null, at);
  }

  private static @Nullable Act act(String name, Point point) {
    switch (name) {
      case "select":
        return point.mode() == null ? null : new Act.Select(point.outlet(), point.mode());
      case "adjust":
        return point.setting() == null ? null : new Act.Adjust(point.setting());
      case "set-load":
        return point.loadText() == null ? null : new Act.SetLoad(point.load(), point.termination());
      case "start":
        return new Act.Plain(Kind.START);
      case "activate":
        return point.mode() == null ? null : new Act.Activate(null, null);
      case "read":
        return new Act.Read(List.of(), null);
      default:
        return null;
    }
  }
}
