package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.model.Named;
import passband.plan.Act;
import passband.plan.Figure;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Slot;
import passband.plan.Words;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.resolve.Names;
import passband.resolve.Profiles;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Turns the author's steps, and those that the profiles give, into final words. */
final class Steps {
  private final Device device;
  private final Analyzer analyzer;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Placeholders placeholders;
  private final Values values;
  private final Recorded recorded;

  Steps(Device device, Analyzer analyzer, Recorded recorded, Names names, Diagnostics diagnostics) {
    this.device = device;
    this.analyzer = analyzer;
    this.recorded = recorded;
    this.names = names;
    this.diagnostics = diagnostics;
    this.placeholders = new Placeholders(names, diagnostics);
    this.values = new Values(diagnostics);
  }

  /** The author's steps in final words. */
  List<PlanStep> of(List<Step> steps, TextPlace place) {
    List<PlanStep> made = new ArrayList<>();
    Maker maker = new Maker(place);
    for (Step step : steps) {
      PlanStep one = step.accept(maker);
      if (one != null) {
        made.add(one);
      }
    }
    return List.copyOf(made);
  }

  /** A text with the values of its place and the records filled in. */
  Words filled(Word text, TextPlace place) {
    if (text.text().indexOf('{') < 0) {
      return new Words(List.of(new Words.Said(text.text())));
    }
    Map<String, Placeholders.Value> all = new LinkedHashMap<>(place.values());
    recorded.seenFrom(place).forEach(all::putIfAbsent);
    return placeholders.filled(text, all);
  }

  /**
   * A step in the words of a profile's action of this name; where the profile has none, the sheet
   * has words of its own.
   */
  PlanStep action(Act act, String name, boolean ofDevice, TextPlace place, Span span) {
    Word text = (ofDevice ? device.actions() : analyzer.actions()).get(name);
    return new PlanStep(act, text == null ? null : filled(text, place), null, span);
  }

  /** Whether the analyzer holds a reading when output is off. */
  boolean holds() {
    return analyzer.actions().containsKey("hold");
  }

  /** The steps that put settings back which points of a run leave elsewhere. */
  List<PlanStep> putBack(List<RowSpec> specs, TextPlace place, Span span) {
    Map<String, RowSpec.Extra> last = new LinkedHashMap<>();
    specs.forEach(spec -> last.putAll(spec.extras()));
    List<PlanStep> back = new ArrayList<>();
    for (RowSpec.Extra extra : last.values()) {
      Word leave = extra.setting().leave();
      if (leave != null && !leave.text().equals(extra.text())) {
        back.add(set(extra.setting(), leave.text(), place, span));
      }
    }
    return back;
  }

  /** A step that sets a setting of the device or the analyzer. */
  PlanStep set(ExtraSetting setting, String value, TextPlace place, Span span) {
    Word name = setting.name();
    boolean ofDevice = Named.find(device.settings(), name.text()) != null;
    Map<String, Placeholders.Value> values = new LinkedHashMap<>(place.values());
    values.put(name.text(), new Placeholders.Value(Slot.EXTRA, value, name, 1));
    Act act = new Act.Set(ofDevice ? "device" : "analyzer", name.text(), value);
    TextPlace at = new TextPlace(place.test(), place.atPoint(), values);
    return action(act, name.text(), ofDevice, at, span);
  }

  private final class Maker implements Step.Visitor<PlanStep> {
    private final TextPlace place;

    Maker(TextPlace place) {
      this.place = place;
    }

    private PlanStep step(Act act, @Nullable Word text, Step step) {
      return new PlanStep(act, text == null ? null : filled(text, place), null, step.span());
    }

    @Override
    public PlanStep act(Step.Do step) {
      return step(new Act.Plain(Kind.DO), step.text(), step);
    }

    @Override
    public PlanStep confirm(Step.Confirm step) {
      String name = step.name() == null ? null : step.name().text();
      return step(new Act.Confirm(name), step.text(), step);
    }

    @Override
    public PlanStep record(Step.Record step) {
      Unit unit = step.unit() == null ? Unit.ONE : values.unit(step.unit());
      String printed = unit == null || step.unit() == null ? null : unit.printed();
      return step(new Act.Noted(step.name().text(), printed), step.text(), step);
    }

    @Override
    public @Nullable PlanStep pause(Step.Wait step) {
      Rational seconds = values.positive(step.time(), Dimension.TIME, "a wait");
      if (seconds == null) {
        return null;
      }
      Unit unit =
          Objects.requireNonNull(values.unitOf(step.time()), "a time with a value has a unit");
      return step(new Act.Wait(new Figure(seconds, unit)), step.text(), step);
    }

    @Override
    public PlanStep caution(Step.Caution step) {
      return step(new Act.Caution(step.name().text()), step.text(), step);
    }

    @Override
    public @Nullable PlanStep perform(Step.Perform step) {
      return performed(step, place);
    }

    @Override
    public PlanStep choose(Step.Choose step) {
      List<String> outcomes = new ArrayList<>();
      step.outcomes().forEach(outcome -> outcomes.add(outcome.text()));
      if (step.pass() != null && !outcomes.contains(step.pass().text())) {
        Scope.unknown(diagnostics, step.pass(), "outcome", outcomes);
      }
      if (outcomes.size() == 1) {
        diagnostics.say(
            Code.MISSING_ITEM,
            step.outcomes().get(0).span(),
            "a choice has at least two outcomes, but this is the only one");
      }
      Scope.distinct(diagnostics, "outcome", step.outcomes(), outcome -> outcome);
      String pass = step.pass() == null ? null : step.pass().text();
      return step(new Act.Choose(step.name().text(), outcomes, pass), step.text(), step);
    }
  }

  /** The action that a step names; null, with the fault said, when there is none. */
  private @Nullable PlanStep performed(Step.Perform step, TextPlace place) {
    List<Word> parts = step.action();
    Word name = parts.get(parts.size() - 1);
    String owner = parts.size() == 1 ? "" : parts.get(0).text();
    if (parts.size() == 1 || (parts.size() == 2 && owner.equals("device"))) {
      Tree.Action found = found(device.tree().actions(), name);
      if (found != null) {
        return performed("device", found, step, place);
      }
    }
    if (parts.size() == 1 || (parts.size() == 2 && owner.equals("analyzer"))) {
      Tree.Action found = found(analyzer.tree().actions(), name);
      if (found != null) {
        return performed("analyzer", found, step, place);
      }
    }
    List<Word> known = new ArrayList<>();
    device.tree().actions().forEach(action -> known.add(action.name()));
    analyzer.tree().actions().forEach(action -> known.add(action.name()));
    Scope.unknownAmong(diagnostics, name, "action of the device or the analyzer", "", known);
    return null;
  }

  private Tree.@Nullable Action found(List<Tree.Action> among, Word name) {
    for (Tree.Action action : among) {
      if (action.name().text().equals(name.text())) {
        names.use(name, action.name());
        return action;
      }
    }
    return null;
  }

  private PlanStep performed(String owner, Tree.Action action, Step.Perform step, TextPlace place) {
    boolean own = owner.equals("analyzer") && action.name().text().equals("stop");
    Act act = new Act.Perform(owner, action.name().text(), own || Profiles.stops(action));
    return new PlanStep(act, filled(action.text(), place), null, step.span());
  }

  /** The blocks of one time, in the order written. */
  static List<Step> when(Tree.Test test, Tree.Steps.When when) {
    List<Step> steps = new ArrayList<>();
    for (Tree.Steps block : test.steps()) {
      if (block.when() == when && block.replacing() == null) {
        steps.addAll(block.steps());
      }
    }
    return steps;
  }
}
