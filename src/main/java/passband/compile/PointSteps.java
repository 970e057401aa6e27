package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Outlet;
import passband.plan.Act;
import passband.plan.Figure;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Slot;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The steps of a point: select the mode, adjust the setting, set the load, start, activate, read,
 * stop; each of them may be replaced, and what is to be done at each point besides comes last, when
 * the output is off.
 */
final class PointSteps {
  private final Steps steps;
  private final Diagnostics diagnostics;

  PointSteps(Steps steps, Diagnostics diagnostics) {
    this.steps = steps;
    this.diagnostics = diagnostics;
  }

  /**
   * The steps of one point.
   *
   * @param setLoad null where no load is set
   * @param read what is read
   */
  List<PlanStep> of(
      Tree.Test test, RowSpec spec, Act.@Nullable SetLoad setLoad, Points.Place at, Act.Read read) {
    Outlet outlet = at.outlet();
    Map<String, Placeholders.Value> values = values(spec, outlet);
    TextPlace point = new TextPlace(test, true, values);
    Span row = spec.span();
    Map<String, PlanStep> own = new LinkedHashMap<>();
    if (spec.mode() != null) {
      Act act = new Act.Select(outlet, spec.mode());
      own.put("select", steps.action(act, "select", true, point, row));
    }
    if (spec.setting() != null) {
      Act act = new Act.Adjust(spec.setting());
      own.put("adjust", steps.action(act, "adjust", true, point, row));
    }
    spec.extras()
        .forEach(
            (name, extra) ->
                own.put("set " + name, steps.set(extra.setting(), extra.text(), point, row)));
    if (setLoad != null) {
      own.put("set-load", steps.action(setLoad, "set-load", false, point, row));
    }
    own.put("start", steps.action(new Act.Plain(Kind.START), "start", false, point, row));
    if (spec.mode() != null) {
      Act.Activate act = Activations.by(spec.mode(), outlet, at.setup());
      TextPlace place = new TextPlace(test, true, Activations.values(values, act));
      own.put("activate", steps.action(act, "activate", true, place, row));
    }
    addReading(own, spec, read, point);
    return joined(test, own, point);
  }

  /**
   * Where the instrument holds a reading, output goes off before anything is written; else it is
   * read while output is on. A sweep says by itself what is read.
   */
  private void addReading(Map<String, PlanStep> own, RowSpec spec, Act.Read read, TextPlace point) {
    PlanStep write =
        read.sweep() == null
            ? steps.action(read, "read", false, point, spec.span())
            : new PlanStep(read, null, null, spec.span());
    PlanStep stop = steps.action(new Act.Plain(Kind.STOP), "stop", false, point, spec.span());
    boolean holds = steps.holds() && spec.mode() != null && read.sweep() == null;
    if (holds) {
      own.put("hold", steps.action(new Act.Plain(Kind.HOLD), "hold", false, point, spec.span()));
      own.put("stop", stop);
    }
    own.put("read", write);
    own.putIfAbsent("stop", stop);
  }

  /** Values of a point's placeholders. */
  static Map<String, Placeholders.Value> values(RowSpec spec, @Nullable Outlet outlet) {
    Map<String, Placeholders.Value> point = new LinkedHashMap<>();
    put(point, "outlet", Slot.OUTLET, outlet == null ? null : outlet.title());
    put(point, "mode", Slot.MODE, spec.mode() == null ? null : spec.mode().title());
    put(point, "setting", Slot.SETTING, text(spec.setting()));
    put(point, "load", Slot.LOAD, spec.loadText());
    put(point, "target", Slot.TARGET, text(spec.target()));
    for (RowSpec.Extra extra : spec.extras().values()) {
      Word name = extra.setting().name();
      point.put(name.text(), new Placeholders.Value(Slot.EXTRA, extra.text(), name, 1));
    }
    return point;
  }

  private static @Nullable String text(@Nullable Figure figure) {
    return figure == null ? null : figure.text();
  }

  private static void put(
      Map<String, Placeholders.Value> point, String name, Slot slot, @Nullable String value) {
    if (value != null) {
      point.put(name, Placeholders.Value.given(slot, value));
    }
  }

  private List<PlanStep> joined(Tree.Test test, Map<String, PlanStep> own, TextPlace point) {
    Map<String, List<PlanStep>> byName = new LinkedHashMap<>();
    own.forEach((name, step) -> byName.put(name, List.of(step)));
    for (Tree.Steps block : test.steps()) {
      if (block.replacing() == null) {
        continue;
      }
      String name = block.replacing().text();
      if (!PlanStep.REPLACEABLE.contains(name)) {
        Scope.unknown(diagnostics, block.replacing(), "step to replace", PlanStep.REPLACEABLE);
      } else if (byName.containsKey(name)) {
        List<PlanStep> instead = new ArrayList<>();
        steps.of(block.steps(), point).forEach(step -> instead.add(step.insteadOf(name)));
        byName.put(name, instead);
        if (name.equals("stop") && instead.size() == block.steps().size() && !stops(instead)) {
          diagnostics
              .say(Code.STOP_EMPTIED, block.span(), "this leaves no step that stops the output")
              .hint("perform an action that stops it: the analyzer's 'stop', or one 'as stop'");
        }
      }
    }
    List<PlanStep> all = new ArrayList<>();
    byName.values().forEach(all::addAll);
    all.addAll(steps.of(Steps.when(test, Tree.Steps.When.EACH), point));
    return List.copyOf(all);
  }

  /** Whether some step performs an action that stops the output; free text is none. */
  private static boolean stops(List<PlanStep> steps) {
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Perform perform && perform.stops()) {
        return true;
      }
    }
    return false;
  }
}
