package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.model.Instruments;
import passband.plan.Act;
import passband.plan.Figure;
import passband.plan.Owner;
import passband.plan.PlanStep;
import passband.plan.RecordLimit;
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
  private final Instruments instruments;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Placeholders placeholders;
  private final Values values;
  private final Recorded recorded;
  private final RecordLimits recordLimits;

  Steps(
      Device device,
      Instruments instruments,
      Recorded recorded,
      Names names,
      Diagnostics diagnostics) {
    this.device = device;
    this.instruments = instruments;
    this.recorded = recorded;
    this.names = names;
    this.diagnostics = diagnostics;
    this.placeholders = new Placeholders(names, diagnostics);
    this.values = new Values(diagnostics);
    this.recordLimits = new RecordLimits(names, diagnostics);
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
  PlanStep action(Act act, String name, Owner owner, TextPlace place, Span span) {
    Word text =
        (owner.isDevice() ? device.actions() : instruments.in(owner.role()).actions()).get(name);
    return new PlanStep(act, text == null ? null : filled(text, place), null, span);
  }

  /** The instruments of the bench. */
  Device device() {
    return device;
  }

  Instruments instruments() {
    return instruments;
  }

  /** Whose the steps of a role are. */
  Owner owner(String role) {
    return role.equals(Instruments.DEVICE) ? Owner.GENERATOR : owner(instruments.in(role));
  }

  /** Whose an instrument's steps are. */
  Owner owner(Analyzer unit) {
    return Owners.of(unit, instruments);
  }

  /** The settings of the generator and the instruments by identities, {@code device.supply}. */
  SortedMap<String, OwnSetting> settings() {
    SortedMap<String, OwnSetting> all = new TreeMap<>();
    for (ExtraSetting one : device.settings()) {
      all.put("device." + one.name().text(), new OwnSetting(Owner.GENERATOR, one));
    }
    for (Analyzer unit : instruments.units()) {
      for (ExtraSetting one : unit.settings()) {
        all.put(unit.role() + "." + one.name().text(), new OwnSetting(owner(unit), one));
      }
    }
    return all;
  }

  /** A step that sets a setting of the generator or an instrument. */
  PlanStep set(OwnSetting own, String value, TextPlace place, Span span) {
    Word name = own.setting().name();
    Map<String, Placeholders.Value> values = new LinkedHashMap<>(place.values());
    values.put(name.text(), new Placeholders.Value(Slot.EXTRA, value, name, 1));
    Act act = new Act.Set(own.owner(), name.text(), value);
    TextPlace at = new TextPlace(place.test(), place.atPoint(), values);
    return action(act, name.text(), own.owner(), at, span);
  }

  private final class Maker implements Step.Visitor<PlanStep> {
    private final TextPlace place;

    Maker(TextPlace place) {
      this.place = place;
    }

    private PlanStep step(Act act, @Nullable Word text, Step step) {
      if (text != null) {
        Profiles.requireText(text, diagnostics);
      }
      return new PlanStep(act, text == null ? null : filled(text, place), null, step.span());
    }

    @Override
    public PlanStep act(Step.Do step) {
      return step(new Act.Free(), step.text(), step);
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
      RecordLimit limit = unit == null ? null : recordLimits.of(step, unit);
      return step(new Act.Noted(step.name().text(), printed, limit), step.text(), step);
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
      step.outcomes().forEach(outcome -> Profiles.requireText(outcome, diagnostics));
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

  /** The action that a step names; null, with the fault said, when there is none or several. */
  private @Nullable PlanStep performed(Step.Perform step, TextPlace place) {
    List<Word> parts = step.action();
    Word name = parts.get(parts.size() - 1);
    Word owner = parts.size() == 1 ? null : parts.get(0);
    List<OwnAction> among = parts.size() > 2 ? List.of() : actions(owner);
    List<OwnAction> found = new ArrayList<>(among);
    found.removeIf(one -> !one.tree().name().text().equals(name.text()));
    if (found.size() == 1 || (found.size() > 1 && found.get(0).owner().isDevice())) {
      return performed(found.get(0), step, place);
    }
    if (found.isEmpty()) {
      List<Word> known = new ArrayList<>();
      actions(null).forEach(one -> known.add(one.tree().name()));
      Scope.unknownAmong(diagnostics, name, "action of the device or the analyzer", "", known);
    } else {
      sayAmbiguous(name, found);
    }
    return null;
  }

  /** The actions of one owner, or of all; the generator's come first. */
  private List<OwnAction> actions(@Nullable Word owner) {
    List<OwnAction> all = new ArrayList<>();
    if (owner == null || owner.text().equals(Instruments.DEVICE)) {
      device.tree().actions().forEach(a -> all.add(new OwnAction(Owner.GENERATOR, a)));
    }
    Instruments.Taken taken = owner == null ? null : instruments.find(owner.text());
    names.use(owner, taken == null ? null : taken.role());
    for (Analyzer unit : instruments.units()) {
      if (owner == null || (taken != null && taken.unit() == unit)) {
        unit.tree().actions().forEach(a -> all.add(new OwnAction(owner(unit), a)));
      }
    }
    return all;
  }

  private void sayAmbiguous(Word name, List<OwnAction> found) {
    List<String> instead = new ArrayList<>();
    found.forEach(one -> instead.add(one.owner().role() + "." + name.text()));
    DiagnosticBuilder said =
        diagnostics
            .say(Code.AMBIGUOUS_NAME, name.span(), "several have an action '%s'", name.text())
            .hint("write %s", String.join(" or ", instead));
    found.forEach(one -> said.note(one.tree().name().span(), "one is here"));
    instead.forEach(one -> said.fix(Fix.replace(name.span(), one)));
  }

  /** An action and whose it is. */
  private record OwnAction(Owner owner, Tree.Action tree) {}

  /** An action that turns output on stands only in the place of the test's own such step. */
  static void sayActivates(Diagnostics diagnostics, Span at) {
    diagnostics
        .say(Code.WRONG_KIND, at, "this turns output on outside the test's own step 'activate'")
        .hint("a test turns output on by itself; write a block 'each replacing activate' instead");
  }

  private @Nullable PlanStep performed(OwnAction own, Step.Perform step, TextPlace place) {
    Word written = step.action().get(step.action().size() - 1);
    Tree.Action action = own.tree();
    names.use(written, action.name());
    if (action.name().text().equals("activate") && !place.atPoint()) {
      sayActivates(diagnostics, step.span());
      return null;
    }
    boolean stop = !own.owner().isDevice() && action.name().text().equals("stop");
    Act act = new Act.Perform(own.owner(), action.name().text(), stop || Profiles.stops(action));
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
