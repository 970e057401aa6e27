package passband.plan;

import java.util.ArrayList;
import java.util.List;
import passband.model.Analyzer;
import passband.model.ExtraSetting;
import passband.model.Instruments;

/**
 * Settings that a sheet puts back where they rest when somebody stops: those that some line sets to
 * anything else, in the order of the profiles.
 */
public final class Rests {
  private Rests() {}

  /**
   * One of them.
   *
   * @param id {@code device.supply}
   */
  public record Rest(String id, ExtraSetting setting) {}

  /** All of a procedure. */
  public static List<Rest> of(Plan plan) {
    List<Rest> rests = new ArrayList<>();
    plan.device().settings().forEach(one -> add(plan, Instruments.DEVICE, one, rests));
    for (Analyzer unit : plan.instruments().units()) {
      unit.settings().forEach(one -> add(plan, unit.role(), one, rests));
    }
    return rests;
  }

  private static void add(Plan plan, String owner, ExtraSetting setting, List<Rest> rests) {
    String id = owner + "." + setting.name().text();
    if (setting.leave() != null && isSetOff(plan, id, setting.leave().text())) {
      rests.add(new Rest(id, setting));
    }
  }

  private static boolean isSetOff(Plan plan, String id, String rest) {
    for (Point point : plan.points()) {
      for (PlanStep step : point.steps()) {
        if (step.act() instanceof Act.Set set && set.id().equals(id) && !set.value().equals(rest)) {
          return true;
        }
      }
    }
    return false;
  }
}
