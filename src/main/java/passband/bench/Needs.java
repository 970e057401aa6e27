package passband.bench;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.ExtraSetting;
import passband.model.Series;
import passband.plan.Act;
import passband.plan.Delivery;
import passband.plan.Figure;
import passband.plan.OnTime;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.plan.Words;
import passband.quantity.Rational;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Word;

/**
 * What steps and readings need of the bench; {@link Diagnostics} says each fault once, however
 * often it comes.
 */
final class Needs {
  private final Plan plan;
  private final Diagnostics diagnostics;
  private final Set<String> answered = new HashSet<>();

  /** The settings that some test does not set, with the first such test. */
  private final Map<String, Span> notSet = new HashMap<>();

  private @Nullable PlanStep instead;

  Needs(Plan plan, Diagnostics diagnostics) {
    this.plan = plan;
    this.diagnostics = diagnostics;
  }

  // ---- steps ----

  /** A text that names a record or a choice needs it answered. */
  void words(PlanStep step) {
    for (Words.Part part : step.words() == null ? List.<Words.Part>of() : step.words().parts()) {
      if (part instanceof Words.Filled filled
          && filled.slot() == Slot.RECORD
          && !answered.contains(filled.name())) {
        diagnostics.say(
            Code.ASKED_LATER,
            step.span(),
            "this text names '%s', which is not asked for before: ask for it in a step above",
            filled.name());
      }
    }
    if (step.act() instanceof Act.Noted noted) {
      answered.add(noted.name());
    } else if (step.act() instanceof Act.Choose choose) {
      answered.add(choose.name());
    }
  }

  /** Free text and actions that do not stop need output off. */
  void step(PlanStep step, BenchState state) {
    boolean free =
        step.kind() == PlanStep.Kind.DO
            || step.act() instanceof Act.Perform perform && !perform.stops();
    Known output = state.get(Variable.OUTPUT);
    if (free && output != null && !state.isOff() && !"activate".equals(step.insteadOf())) {
      diagnostics
          .say(Code.ACTS_WHILE_ON, step.span(), "this is done while output is on")
          .note(output.since(), "output comes on here")
          .hint(
              "use 'wait', 'confirm' or 'record'; where it has to be done with output on, say why"
                  + " in the test: allow acts-while-on because \"…\"");
    }
  }

  /**
   * Before a lead is moved, and at the end, nothing is held, nothing runs and output is off.
   *
   * @param doing what the sheet goes on with
   */
  void quiet(BenchState state, Span at, String doing) {
    boolean on = state.get(Variable.OUTPUT) != null && !state.isOff();
    Variable what = on ? Variable.OUTPUT : state.held() != null ? state.held() : state.running();
    if (what == null) {
      return;
    }
    Known left = Objects.requireNonNull(state.get(what), "it has that value");
    diagnostics
        .say(Code.ACTS_WHILE_ON, at, "%s: %s is left %s", doing, what.words(), left.value())
        .note(left.since(), "it comes from here")
        .hint("stop it before: perform an action that stops it");
  }

  /** What an instrument holds is read while output is on. */
  void hold(Stage.Run run, PlanStep step, Point point, BenchState state) {
    boolean holds = step.act() instanceof Act.Run own && own.kind() == PlanStep.Kind.HOLD;
    if (holds && run.output().activates() && state.isOff()) {
      sayOff(run, point);
    }
  }

  // ---- readings ----

  /**
   * At a reading everything is the point's own and known.
   *
   * @param instead the step that stands in the place of the reading; null where it is read
   */
  void reading(Stage.Run run, Point point, BenchState state, @Nullable PlanStep instead) {
    this.instead = instead != null && instead.act() instanceof Act.Perform ? instead : null;
    if (run.output().activates()) {
      outputOn(run, point, state);
      settled(run, point);
      setting(point);
      load(run, point, state);
    }
    if (run.output() == Delivery.INHIBITED) {
      refused(run, point);
    }
    own(point, Variable.MODE, point.mode() == null ? null : point.mode().title(), state);
    own(point, Variable.SETTING, text(point.setting()), state);
    point.also().forEach(other -> beside(other, state));
    loads(point).forEach((role, load) -> own(point, Variable.load(role), load, state));
    otherSettings(run, point, state);
  }

  /**
   * A reading that only output gives, accepted from a lower limit on, passes only where it comes.
   */
  private void refused(Stage.Run run, Point point) {
    for (Limit limit : point.limits()) {
      Rational lower = limit.accept().lower();
      if (lower != null && lower.signum() > 0 && plan.measure(limit) != null) {
        Word output = run.tree().output();
        DiagnosticBuilder said =
            diagnostics.say(
                Code.WRONG_KIND,
                limit.rule().span(),
                "output that is inhibited must not come, but only a %s above zero passes: write 'at most'",
                limit.title().toLowerCase(Locale.ROOT));
        if (output != null) {
          said.note(output.span(), "the test says so here");
        }
      }
    }
  }

  /** What the point's loads are set to, by the role of the instrument. */
  private static Map<String, String> loads(Point point) {
    Map<String, String> loads = new LinkedHashMap<>();
    point.otherLoads().forEach((role, load) -> loads.put(role, load.text()));
    if (point.loadAt() != null && point.loadText() != null) {
      loads.put(point.loadAt(), point.loadText());
    }
    return loads;
  }

  private static @Nullable String text(@Nullable Figure figure) {
    return figure == null ? null : figure.text();
  }

  /** What the row gives is what the bench has; {@code value} is null where the row gives none. */
  private void own(Point point, Variable what, @Nullable String value, BenchState state) {
    if (value != null && !value.equals(state.value(what))) {
      say(point.span(), "no step sets the " + what.words() + " for this reading to " + value)
          .hint("a block in the place of its step is empty, or a free step comes after it");
    }
  }

  /** What another outlet delivers at the same time is still there. */
  private void beside(Point other, BenchState state) {
    Variable what = Variable.also(other);
    if (other.mode() != null && other.mode().setting() != null && other.setting() == null) {
      String mode = other.mode().name().text();
      say(other.span(), "'" + mode + "' delivers at the same time at no setting of its own")
          .hint("add the outlet's 'setting' column to the table");
    }
    if (other.mode() != null && state.get(what) == null) {
      say(other.span(), "nothing is known of " + what.words() + " at this reading")
          .hint("a free step comes after it was looked at");
    }
  }

  private void outputOn(Stage.Run run, Point point, BenchState state) {
    if (state.isOff() && !state.holds()) {
      sayOff(run, point);
    }
  }

  private void sayOff(Stage.Run run, Point point) {
    diagnostics
        .say(
            Code.NOT_SET_AT_READING,
            run.test().span(),
            "output is off when the test '%s' is read",
            run.test().text())
        .note(point.span(), "at this point")
        .hint("leave the steps 'activate' and 'stop' in their order, or write 'output off'");
  }

  /** The on-time covers what the instruments need to settle and to be read. */
  private void settled(Stage.Run run, Point point) {
    Amount written = run.tree().onTime();
    for (OnTime.Need need : written == null ? List.<OnTime.Need>of() : point.on().notCovered()) {
      Amount settle = need.unit().tree().timing().settle();
      Amount reads = need.unit().tree().timing().reads();
      boolean read = reads != null && need.reading().signum() > 0;
      String reading = need.reading().toPlain() + " s to be read";
      String needs =
          need.settle() == null
              ? reading
              : need.settle().toPlain() + " s to settle" + (read ? " and " + reading : "");
      String least = need.least().toPlain();
      DiagnosticBuilder said =
          diagnostics.say(
              Code.ON_TIME_SHORT,
              Objects.requireNonNull(written).span(),
              "output is on for %s s, but the analyzer needs %s",
              Objects.requireNonNull(point.onTime(), "it is written").toPlain(),
              needs);
      if (settle != null) {
        said.note(settle.span(), "the settling time is here");
      }
      if (reads != null && read) {
        said.note(reads.span(), "the time to read is here");
      }
      said.hint("leave output on for at least %s s", least)
          .fix(Fix.replace(Objects.requireNonNull(written).span(), least + " s"));
    }
  }

  private void setting(Point point) {
    if (point.mode() != null && point.mode().setting() != null && point.setting() == null) {
      say(point.span(), "'" + point.mode().name().text() + "' is read at no setting of its own")
          .hint("add a 'setting' column to the table");
    }
  }

  private void load(Stage.Run run, Point point, BenchState state) {
    if (point.loadText() != null || !reaches(point, run) || !hasLoadToSet(run, point)) {
      return; // a load that is set at another instrument is 'load-not-wired'
    }
    DiagnosticBuilder said =
        say(point.span(), "the load is not set for this reading, which is taken through it");
    for (Analyzer unit : plan.instruments().units()) {
      Known load = state.get(Variable.load(unit.role()));
      if (load != null) {
        said.note(load.since(), "it is still what this row sets: " + load.value());
      }
    }
    said.hint("add a 'load' column to the table");
  }

  private DiagnosticBuilder say(Span at, String message) {
    DiagnosticBuilder said = diagnostics.say(Code.NOT_SET_AT_READING, at, "%s", message);
    if (instead != null) {
      said.note(instead.span(), "nothing is known of it after this action");
    }
    return said;
  }

  /** Whether the point's output goes through a load that has to be set. */
  private boolean hasLoadToSet(Stage.Run run, Point point) {
    if (run.setup() == null) {
      return false;
    }
    for (LoadBank bank :
        WiredLoads.of(plan.instruments(), run.setup(), point.mode(), point.outlet())) {
      if (!single(bank.values())) {
        return true;
      }
    }
    return false;
  }

  /** Whether something is read that has no path of its own beside the load. */
  private boolean reaches(Point point, Stage.Run run) {
    boolean swept = run.sweep() != null && run.sweep().what().equals("load");
    for (var limit : swept ? List.<Limit>of() : point.limits()) {
      Analyzer.Measure measure = plan.measure(limit);
      if (measure != null && measure.from() == null) {
        return true;
      }
    }
    return false;
  }

  private static boolean single(Series values) {
    return values.segments().size() == 1
        && values.segments().get(0).from().equals(values.segments().get(0).to());
  }

  // ---- settings ----

  /** A setting that the row does not give is at its rest position, or where the state has it. */
  private void otherSettings(Stage.Run run, Point point, BenchState state) {
    if (!run.isStateAlone()) {
      plan.device().settings().forEach(s -> otherSetting("device", s, run, point, state));
    }
    for (Analyzer unit : plan.instruments().units()) {
      unit.settings().forEach(s -> otherSetting(unit.role(), s, run, point, state));
    }
  }

  private void otherSetting(
      String owner, ExtraSetting setting, Stage.Run run, Point point, BenchState state) {
    String name = setting.name().text();
    boolean own =
        point.extras().containsKey(name)
            || point.extras().containsKey(owner + "." + name)
            || (run.sweep() != null && run.sweep().what().equals(name));
    Known known = state.get(Variable.set(owner + "." + name));
    String at = known == null ? null : known.value();
    String rest = setting.leave() == null ? null : setting.leave().text();
    if (own || (rest != null && rest.equals(at))) {
      return;
    }
    String id = owner + "." + name;
    Span first = notSet.putIfAbsent(id, run.test().span());
    if (first != null) {
      return; // of a setting that nothing brings to rest the first test says it
    }
    String test = "the test '" + run.test().text() + "' is read";
    DiagnosticBuilder said =
        say(
            run.test().span(),
            known == null
                ? "nothing says where '" + name + "' is when " + test
                : test + " with '" + name + "' as another test left it");
    if (known == null) {
      said.note(setting.name().span(), "it is declared here").note(point.span(), "at this point");
    } else {
      said.note(known.since(), "it is set here: %s", known.value());
    }
    said.hint("add a '%s' column to the table, or 'leave …' to the setting", name);
  }
}
