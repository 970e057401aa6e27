package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Named;
import passband.model.Terminal;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.resolve.Scope;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The steps of a point: select the mode, adjust the setting, set the load, start, activate, read,
 * stop; each of them may be replaced, and what is to be done at each point besides comes last, when
 * the output is off.
 */
final class PointSteps {
  private final Steps steps;
  private final Device device;
  private final Diagnostics diagnostics;

  PointSteps(Steps steps, Device device, Diagnostics diagnostics) {
    this.steps = steps;
    this.device = device;
    this.diagnostics = diagnostics;
  }

  /**
   * The steps of one point; {@code read} names what is read, for where the profile has no words of
   * its own.
   */
  List<PlanStep> of(
      Tree.Test test,
      RowSpec spec,
      @Nullable Outlet outlet,
      @Nullable Setup setup,
      Stage.@Nullable Swept sweep,
      String read) {
    TextPlace point = new TextPlace(test, true, values(spec, outlet));
    Map<String, List<PlanStep>> byName = new LinkedHashMap<>();
    if (spec.mode() != null) {
      byName.put(
          "select",
          one(
              steps.action(
                  Kind.SELECT,
                  "select",
                  true,
                  "Select the mode " + spec.mode().title() + ".",
                  point)));
    }
    if (spec.setting() != null) {
      byName.put(
          "adjust",
          one(
              steps.action(
                  Kind.ADJUST, "adjust", true, "Set " + spec.setting().text() + ".", point)));
    }
    spec.extras().forEach((name, extra) -> byName.put("set " + name, one(set(name, extra, point))));
    if (spec.load() != null) {
      byName.put(
          "set-load",
          one(
              steps.action(
                  Kind.SET_LOAD,
                  "set-load",
                  false,
                  "Set the load to " + spec.load().text() + ".",
                  point)));
    }
    byName.put(
        "start", one(steps.action(Kind.START, "start", false, "Start the measurement.", point)));
    if (spec.mode() != null) {
      byName.put(
          "activate",
          one(
              steps.action(
                  Kind.ACTIVATE, "activate", true, activate(spec.mode(), outlet, setup), point)));
    }
    byName.put("read", read(sweep, read, point));
    byName.put(
        "stop",
        one(steps.action(Kind.STOP, "stop", false, "Stop the output and the measurement.", point)));
    return joined(test, byName, point);
  }

  private static List<PlanStep> one(PlanStep step) {
    return List.of(step);
  }

  private List<PlanStep> read(Stage.@Nullable Swept sweep, String read, TextPlace point) {
    if (sweep == null) {
      return one(
          steps.action(Kind.READ, "read", false, "Read and write down the " + read + ".", point));
    }
    String text =
        "Change the "
            + sweep.what()
            + (sweep.up() ? " up" : " down")
            + " from "
            + sweep.from().text()
            + " in steps of "
            + sweep.step().text()
            + ", to "
            + sweep.to().text()
            + " at most, until "
            + sweep.until()
            + ". Write down the "
            + sweep.what()
            + " at which it did.";
    return one(PlanStep.of(Kind.READ, text));
  }

  private PlanStep set(String name, RowSpec.Extra extra, TextPlace point) {
    boolean ofDevice = Named.find(device.settings(), name) != null;
    return steps.action(
        Kind.SET, name, ofDevice, "Set " + name + " to " + extra.text() + ".", point);
  }

  /** Values of a point's placeholders. */
  static Map<String, Placeholders.Value> values(RowSpec spec, @Nullable Outlet outlet) {
    Map<String, Placeholders.Value> point = new LinkedHashMap<>();
    put(point, "outlet", outlet == null ? null : outlet.title());
    put(point, "mode", spec.mode() == null ? null : spec.mode().title());
    put(point, "setting", spec.setting() == null ? null : spec.setting().text());
    put(point, "load", spec.load() == null ? null : spec.load().text());
    put(point, "target", spec.target() == null ? null : spec.target().text());
    for (RowSpec.Extra extra : spec.extras().values()) {
      Word name = extra.setting().name();
      point.put(name.text(), new Placeholders.Value(extra.text(), name, 1));
    }
    return point;
  }

  private static void put(
      Map<String, Placeholders.Value> point, String name, @Nullable String value) {
    if (value != null) {
      point.put(name, Placeholders.Value.given(value));
    }
  }

  private static String activate(Mode mode, @Nullable Outlet outlet, @Nullable Setup setup) {
    for (Tree.Ref ref : mode.activateBy()) {
      String id = contactId(ref, outlet);
      for (Wire wire : setup == null ? List.<Wire>of() : setup.wires()) {
        Terminal far =
            wire.from().id().equals(id)
                ? wire.to()
                : wire.to().id().equals(id) ? wire.from() : null;
        if (far != null && far.onAnalyzer()) {
          return "Activate the output with the analyzer's key “" + far.title() + "”.";
        }
      }
    }
    return "Activate the output.";
  }

  /** The identity of the contact that an {@code activate by} names on an outlet. */
  static String contactId(Tree.Ref ref, @Nullable Outlet outlet) {
    int parts = ref.parts().size();
    String name = ref.parts().get(parts - 1).text();
    return parts > 1
        ? ref.parts().get(parts - 2).text() + "." + name
        : (outlet == null ? "" : outlet.name().text()) + "." + name;
  }

  private List<PlanStep> joined(
      Tree.Test test, Map<String, List<PlanStep>> byName, TextPlace point) {
    for (Tree.Steps block : test.steps()) {
      if (block.replacing() == null) {
        continue;
      }
      String name = block.replacing().text();
      if (!PlanStep.REPLACEABLE.contains(name)) {
        Scope.unknown(diagnostics, block.replacing(), "step to replace", PlanStep.REPLACEABLE);
      } else if (name.equals("stop") && acts(block.steps()) == 0) {
        diagnostics
            .say(Code.STOP_EMPTIED, block.span(), "this leaves no step that stops the output")
            .hint("put a step that stops the output into the block");
      } else if (byName.containsKey(name)) {
        byName.put(name, steps.of(block.steps(), point));
      }
    }
    List<PlanStep> all = new ArrayList<>();
    byName.values().forEach(all::addAll);
    all.addAll(steps.of(Steps.when(test, Tree.Steps.When.EACH), point));
    return List.copyOf(all);
  }

  /** How many steps of a block do something, as opposed to asking or warning. */
  private static long acts(List<Step> steps) {
    long acts = 0;
    for (Step step : steps) {
      acts += step instanceof Step.Do || step instanceof Step.Perform ? 1 : 0;
    }
    return acts;
  }
}
