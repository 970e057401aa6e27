package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Owner;
import passband.plan.PlanStep;
import passband.plan.Slot;
import passband.syntax.Tree;

/**
 * The steps for what further outlets deliver at the same time as a point's own. Each is selected
 * and adjusted before the point's own; because selecting for one outlet may change what another one
 * shows, a step before the activation looks whether it is still there.
 */
final class PartnerSteps {
  private final Steps steps;
  private final Tree.Test test;
  private final List<Simultaneous.Partner> partners;

  PartnerSteps(Steps steps, Tree.Test test, List<Simultaneous.Partner> partners) {
    this.steps = steps;
    this.test = test;
    this.partners = partners;
  }

  /** Select and adjust. */
  List<PlanStep> prepared() {
    List<PlanStep> all = new ArrayList<>();
    for (Simultaneous.Partner one : partners) {
      RowSpec spec = one.spec();
      TextPlace place = place(one);
      if (spec.mode() != null) {
        Act act = new Act.Select(one.outlet(), spec.mode());
        all.add(steps.action(act, "select", Owner.GENERATOR, place, spec.span()));
      }
      if (spec.setting() != null) {
        Act act = new Act.Adjust(spec.setting());
        all.add(steps.action(act, "adjust", Owner.GENERATOR, place, spec.span()));
      }
    }
    return all;
  }

  /** The point's own loads, and those that it does not set by itself. */
  List<PlanStep> loads(List<PlanStep> set, PointLoads own) {
    List<PlanStep> all = new ArrayList<>(set);
    for (Simultaneous.Partner one : partners) {
      PointLoads loads = one.loads();
      String role = loads.role();
      if (loads.unit() != null
          && role != null
          && !role.equals(own.role())
          && !own.others().containsKey(role)) {
        Owner owner = steps.owner(loads.unit());
        Act.SetLoad act = new Act.SetLoad(owner, loads.main(), loads.termination());
        all.add(steps.action(act, "set-load", owner, place(one), one.spec().span()));
      }
    }
    return all;
  }

  /** What has been set first is still there. */
  List<PlanStep> shown() {
    List<PlanStep> all = new ArrayList<>();
    for (Simultaneous.Partner one : partners) {
      if (one.spec().mode() != null) {
        Act act = new Act.Shown(one.outlet(), one.spec().mode(), one.spec().setting());
        all.add(new PlanStep(act, null, null, one.spec().span()));
      }
    }
    return all;
  }

  /**
   * The point's own activation, and each contact that another key closes than its own does.
   *
   * @param words whose words an activation has: those of the instrument with the key, or of the
   *     generator
   */
  List<PlanStep> activated(PlanStep on, Act.Activate own, Function<Act.Activate, Owner> words) {
    List<PlanStep> all = new ArrayList<>(List.of(on));
    for (Simultaneous.Partner one : partners) {
      Act.Activate act = one.activate();
      if (own.key() != null && act.key() != null && own.key().same(act.key())) {
        continue; // one key closes both
      }
      Map<String, Placeholders.Value> values = Activations.values(place(one).values(), act);
      TextPlace place = new TextPlace(test, true, values);
      all.add(steps.action(act, "activate", words.apply(act), place, one.spec().span()));
    }
    return all;
  }

  /** The keys that close their contacts. */
  static List<Terminal> keys(List<Simultaneous.Partner> partners) {
    List<Terminal> keys = new ArrayList<>();
    for (Simultaneous.Partner one : partners) {
      Terminal key = one.activate().key();
      if (key != null) {
        keys.add(key);
      }
    }
    return keys;
  }

  /**
   * Its own values. They stand in its words as they are: the columns of the sheet are of the
   * point's own.
   */
  private TextPlace place(Simultaneous.Partner one) {
    Map<String, Placeholders.Value> own = new LinkedHashMap<>();
    PointSteps.values(one.spec(), one.loads(), one.outlet())
        .forEach((name, value) -> own.put(name, fixed(value)));
    return new TextPlace(test, true, own);
  }

  private static Placeholders.Value fixed(Placeholders.Value value) {
    boolean onTheLine = value.slot() == Slot.SETTING || value.slot() == Slot.LOAD;
    return onTheLine ? Placeholders.Value.given(Slot.PARTNER, value.text()) : value;
  }
}
