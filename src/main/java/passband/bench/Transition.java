package passband.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Instruments;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Owner;
import passband.plan.PlanStep;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.source.Span;

/** What each step does to the bench. */
final class Transition implements Act.Visitor<BenchState> {
  /**
   * What free text may have changed: everything but the leads, and output, which stays as it is.
   */
  static final List<Variable.Kind> FREE =
      List.of(
          Variable.Kind.OUTLET,
          Variable.Kind.MODE,
          Variable.Kind.SETTING,
          Variable.Kind.ALSO,
          Variable.Kind.SET,
          Variable.Kind.LOAD);

  private final BenchState before;
  private final Span at;
  private final List<Lead> leads;

  /** Whether the step's words name what is let go of. */
  private final boolean named;

  private Transition(BenchState before, PlanStep step, List<Lead> leads) {
    this.before = before;
    this.at = step.span();
    this.leads = leads;
    this.named = step.words() != null && step.words().has(Slot.HELD);
  }

  /**
   * The bench after a step.
   *
   * @param leads all that the sheet uses
   */
  static BenchState after(BenchState before, PlanStep step, List<Lead> leads) {
    return step.act().accept(new Transition(before, step, leads));
  }

  private BenchState free() {
    return before.withoutKinds(FREE);
  }

  /** What another outlet shows is unknown after something was set. */
  private BenchState panel() {
    return before.withoutKinds(List.of(Variable.Kind.ALSO));
  }

  /** What somebody has looked at. */
  @Override
  public BenchState shown(Act.Shown shown) {
    String setting = shown.setting() == null ? "shown" : shown.setting().text();
    return before.with(Variable.also(shown.outlet().title(), shown.mode().title()), setting, at);
  }

  @Override
  public BenchState select(Act.Select select) {
    BenchState panel = panel().without(Variable.OUTLET, Variable.SETTING);
    if (select.outlet() != null) {
      panel = panel.with(Variable.OUTLET, select.outlet().title(), at);
    }
    return panel.with(Variable.MODE, select.mode().title(), at);
  }

  @Override
  public BenchState adjust(Act.Adjust adjust) {
    return panel().with(Variable.SETTING, adjust.setting().text(), at);
  }

  @Override
  public BenchState set(Act.Set set) {
    return before.with(Variable.set(set.id()), set.value(), at);
  }

  @Override
  public BenchState setLoad(Act.SetLoad setLoad) {
    return before.with(Variable.load(setLoad.unit().role()), setLoad.text(), at);
  }

  @Override
  public BenchState free(Act.Free free) {
    return free();
  }

  @Override
  public BenchState run(Act.Run run) {
    Variable unit = Variable.unit(run.unit().role());
    return switch (run.kind()) {
      case START -> before.with(unit, BenchState.RUNNING, at);
      case HOLD -> before.with(unit, BenchState.HOLDING, at);
      default -> stopped(run.unit().role(), run.released());
    };
  }

  private static String beside(Terminal held) {
    return " and " + held.id();
  }

  /** By what output stays on when one of several is let go of; null where it is not the last. */
  private @Nullable String others(Terminal opened) {
    String on = before.value(Variable.OUTPUT);
    String last = beside(opened);
    return on != null && on.endsWith(last) ? on.substring(0, on.length() - last.length()) : null;
  }

  /**
   * An instrument stops, and its keys are let go of; one that holds its reading goes on holding it.
   * Output goes off when nothing is held any more. Without an instrument it is the generator that
   * stops its output, unless something is let go of.
   */
  private BenchState stopped(String role, Act.@Nullable Pressed released) {
    BenchState now = before;
    if (released != null) {
      now = now.with(Variable.held(released.contact()), BenchState.FREE, at);
    }
    boolean device = role.equals(Instruments.DEVICE);
    for (Variable what : before.known().keySet()) {
      boolean own = !device && what.isHeldAt(role);
      if (own || (named && BenchState.HELD.equals(before.value(what)))) {
        now = now.with(what, BenchState.FREE, at);
      }
    }
    if (!device && !BenchState.HOLDING.equals(before.value(Variable.unit(role)))) {
      now = now.with(Variable.unit(role), "idle", at);
    }
    boolean stays = now.held() != null;
    boolean byGenerator = device && released == null;
    if (!stays || byGenerator) {
      return now.with(Variable.OUTPUT, BenchState.OFF, at);
    }
    String others = released == null ? null : others(released.contact());
    return others == null ? now : now.with(Variable.OUTPUT, others, at);
  }

  @Override
  public BenchState activate(Act.Activate activate) {
    Terminal contact = activate.contact();
    Terminal held = activate.key() == null ? contact : activate.key();
    String how = activate.beside() ? BenchState.HELD_BESIDES : BenchState.HELD;
    BenchState now = held == null ? before : before.with(Variable.held(held), how, at);
    String on = before.value(Variable.OUTPUT);
    if (activate.beside() && held != null && on != null && !before.isOff()) {
      return now.with(Variable.OUTPUT, on + beside(held), at);
    }
    return now.with(Variable.OUTPUT, contact == null ? "on" : "on by " + contact.title(), at);
  }

  /** A sweep leaves what it changes wherever the event came. */
  @Override
  public BenchState read(Act.Read read) {
    Stage.Swept sweep = read.sweep();
    BenchState swept = sweep == null ? before : without(sweep.what(), read.by().role());
    Variable unit = Variable.unit(read.by().role());
    return BenchState.HOLDING.equals(before.value(unit)) ? swept.with(unit, "idle", at) : swept;
  }

  private BenchState without(String what, String role) {
    return what.equals("load")
        ? before.without(Variable.load(role))
        : before.without(Variable.set("device." + what), Variable.set(role + "." + what));
  }

  @Override
  public BenchState perform(Act.Perform perform) {
    Owner owner = perform.owner();
    if (perform.startsInstrument()) {
      return before.with(Variable.unit(owner.role()), BenchState.RUNNING, at);
    }
    if (perform.activates()) {
      return before.with(Variable.OUTPUT, "on", at);
    }
    return perform.stops() ? stopped(owner.role(), null) : free();
  }

  @Override
  public BenchState pause(Act.Wait wait) {
    return before;
  }

  @Override
  public BenchState rest(Act.Rest rest) {
    return before;
  }

  @Override
  public BenchState confirm(Act.Confirm confirm) {
    return before;
  }

  @Override
  public BenchState noted(Act.Noted noted) {
    return before;
  }

  @Override
  public BenchState caution(Act.Caution caution) {
    return before;
  }

  @Override
  public BenchState choose(Act.Choose choose) {
    return before;
  }

  @Override
  public BenchState ready(Act.Ready ready) {
    BenchState bare = before.with(Variable.OUTPUT, BenchState.OFF, at);
    for (Lead lead : leads) {
      bare = bare.with(Variable.lead(lead.name().text()), BenchState.OFF, at);
    }
    return bare.with(Variable.INSIDE, BenchState.NONE, at);
  }

  @Override
  public BenchState stays(Act.Stays stays) {
    return before;
  }
}
