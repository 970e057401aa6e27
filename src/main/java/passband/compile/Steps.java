package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device;
import passband.plan.Figure;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.syntax.Amount;
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
  String filled(Word text, TextPlace place) {
    if (text.text().indexOf('{') < 0) {
      return text.text();
    }
    Map<String, Placeholders.Value> all = new LinkedHashMap<>(place.values());
    recorded.seenFrom(place).forEach(all::putIfAbsent);
    return placeholders.filled(text, all);
  }

  /** A profile's action by name, or a plain sentence where the profile has none. */
  PlanStep action(Kind kind, String name, boolean ofDevice, String plain, TextPlace place) {
    Word text = (ofDevice ? device.actions() : analyzer.actions()).get(name);
    return PlanStep.of(kind, text == null ? plain : filled(text, place));
  }

  private final class Maker implements Step.Visitor<PlanStep> {
    private final TextPlace place;

    Maker(TextPlace place) {
      this.place = place;
    }

    @Override
    public PlanStep act(Step.Do step) {
      return PlanStep.of(Kind.DO, filled(step.text(), place));
    }

    @Override
    public PlanStep confirm(Step.Confirm step) {
      return new PlanStep(
          Kind.CONFIRM,
          step.name() == null ? null : step.name().text(),
          filled(step.text(), place),
          null,
          List.of(),
          null,
          null);
    }

    @Override
    public PlanStep record(Step.Record step) {
      Unit unit = step.unit() == null ? Unit.ONE : values.unit(step.unit());
      String printed = unit == null || step.unit() == null ? null : unit.printed();
      return new PlanStep(
          Kind.RECORD,
          step.name().text(),
          filled(step.text(), place),
          printed,
          List.of(),
          null,
          null);
    }

    @Override
    public @Nullable PlanStep pause(Step.Wait step) {
      Rational seconds = values.positive(step.time(), Dimension.TIME, "a wait");
      if (seconds == null) {
        return null;
      }
      String time = figure(seconds, step.time());
      String text =
          step.text() == null
              ? "Wait " + time + "."
              : "Wait " + time + ": " + filled(step.text(), place);
      return new PlanStep(Kind.WAIT, null, text, null, List.of(), null, seconds.toPlain());
    }

    private String figure(Rational seconds, Amount time) {
      Unit unit = Objects.requireNonNull(values.unitOf(time), "a time with a value has a unit");
      return new Figure(seconds, unit).text();
    }

    @Override
    public PlanStep caution(Step.Caution step) {
      return new PlanStep(
          Kind.CAUTION,
          step.name().text(),
          filled(step.text(), place),
          null,
          List.of(),
          null,
          null);
    }

    @Override
    public @Nullable PlanStep perform(Step.Perform step) {
      Word text = performed(step);
      return text == null ? null : PlanStep.of(Kind.DO, filled(text, place));
    }

    @Override
    public PlanStep choose(Step.Choose step) {
      List<String> outcomes = new ArrayList<>();
      step.outcomes().forEach(outcome -> outcomes.add(outcome.text()));
      if (step.pass() != null && !outcomes.contains(step.pass().text())) {
        Scope.unknown(diagnostics, step.pass(), "outcome", outcomes);
      }
      String pass = step.pass() == null ? null : step.pass().text();
      return new PlanStep(
          Kind.CHOOSE, step.name().text(), filled(step.text(), place), null, outcomes, pass, null);
    }
  }

  /** The text of the action that a step names; null, with the fault said, when there is none. */
  private @Nullable Word performed(Step.Perform step) {
    List<Word> parts = step.action();
    Word name = parts.get(parts.size() - 1);
    String owner = parts.size() == 1 ? "" : parts.get(0).text();
    List<Tree.Action> among = new ArrayList<>();
    if (parts.size() == 1 || (parts.size() == 2 && owner.equals("device"))) {
      among.addAll(device.tree().actions());
    }
    if (parts.size() == 1 || (parts.size() == 2 && owner.equals("analyzer"))) {
      among.addAll(analyzer.tree().actions());
    }
    for (Tree.Action action : among) {
      if (action.name().text().equals(name.text())) {
        names.use(name, action.name());
        return action.text();
      }
    }
    List<String> known = new ArrayList<>(device.actions().keySet());
    known.addAll(analyzer.actions().keySet());
    Scope.unknown(diagnostics, name, "action of the device or the analyzer", known);
    return null;
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
