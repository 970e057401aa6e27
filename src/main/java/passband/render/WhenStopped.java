package passband.render;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import passband.model.Analyzer;
import passband.model.ExtraSetting;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;

/** What is to be done when the sheet is broken off: the generator is left safe, in this order. */
final class WhenStopped {
  private WhenStopped() {}

  /** Output off, states left, settings back at rest, and only then the leads. */
  static String text(Plan plan) {
    List<String> does = new ArrayList<>();
    Set<String> states = new LinkedHashSet<>();
    for (Stage.Run run : plan.runs()) {
      if (run.state() != null) {
        states.add(run.state().title());
      }
    }
    if (!states.isEmpty()) {
      does.add("leave " + String.join(" or ", states) + " as the end of its part describes");
    }
    List<String> rests = rests(plan);
    if (!rests.isEmpty()) {
      does.add("set " + String.join(", ", rests));
    }
    does.add("disconnect the leads, at the generator first");
    String last = does.remove(does.size() - 1);
    String first = does.isEmpty() ? "" : ", " + String.join(", ", does);
    return "Turn the output off"
        + first
        + (does.isEmpty() ? " and " : ", and then ")
        + last
        + ". Tick \u201cnot done\u201d on every remaining line: a line without a reading is not a"
        + " pass.";
  }

  /** Of what some line sets to anything else, where it rests. */
  private static List<String> rests(Plan plan) {
    List<String> rests = new ArrayList<>();
    for (ExtraSetting setting : plan.device().settings()) {
      add(plan, "device." + setting.name().text(), setting, rests);
    }
    for (Analyzer unit : plan.instruments().units()) {
      for (ExtraSetting setting : unit.settings()) {
        add(plan, unit.role() + "." + setting.name().text(), setting, rests);
      }
    }
    return rests;
  }

  private static void add(Plan plan, String id, ExtraSetting setting, List<String> rests) {
    if (setting.leave() == null) {
      return;
    }
    String rest = setting.leave().text();
    for (Point point : plan.points()) {
      for (PlanStep step : point.steps()) {
        if (step.act() instanceof Act.Set set && set.id().equals(id) && !set.value().equals(rest)) {
          rests.add(setting.title() + " to " + rest);
          return;
        }
      }
    }
  }
}
