package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Owner;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Slot;
import passband.resolve.Placeholder;
import passband.resolve.Profiles;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * How a point comes to rest: whatever its steps hold or press is let go of, and whatever they start
 * stops, also at an instrument that measures nothing and whose profile says nothing of it.
 */
final class StopSteps {
  private final Steps steps;
  private final Diagnostics diagnostics;

  StopSteps(Steps steps, Diagnostics diagnostics) {
    this.steps = steps;
    this.diagnostics = diagnostics;
  }

  /**
   * The steps, in order.
   *
   * @param units the instruments that work at the point
   * @param started the steps that start some of them
   */
  List<PlanStep> of(PointWork work, List<Analyzer> units, List<PlanStep> started, TextPlace point) {
    Span row = work.spec().span();
    List<PlanStep> stops = new ArrayList<>();
    List<Analyzer> telling = new ArrayList<>();
    for (Analyzer unit : units) {
      boolean tells = tells(unit);
      if (tells || starts(started, unit)) {
        Owner owner = steps.owner(unit);
        stops.add(
            steps.action(new Act.Run(Kind.STOP, owner), action(unit, point), owner, point, row));
      }
      if (tells) {
        telling.add(unit);
      }
    }
    if (work.spec().mode() == null) {
      return stops;
    }
    List<PlanStep> all = new ArrayList<>();
    for (Simultaneous.Partner one : work.also()) {
      Terminal key = one.activate().key();
      boolean same =
          key != null && work.activate().key() != null && key.same(work.activate().key());
      Act.Pressed held = same ? null : held(one.activate(), telling);
      if (held != null) {
        all.add(let(held, one.spec().span()));
      }
    }
    all.addAll(released(stops, work, telling));
    return all;
  }

  /**
   * Which of an instrument's actions brings it to rest: where nothing is held and {@code stop} says
   * to let go, another one {@code as stop} that does not, if there is one.
   */
  private static String action(Analyzer unit, TextPlace point) {
    if (!point.values().containsKey(Placeholders.HELD) && letsGo(unit.actions().get("stop"))) {
      for (Tree.Action one : unit.tree().actions()) {
        if (Profiles.stops(one) && !letsGo(one.text())) {
          return one.name().text();
        }
      }
    }
    return "stop";
  }

  private static boolean letsGo(@Nullable Word text) {
    return text != null && Placeholder.stands(text, Placeholders.HELD);
  }

  /** Whether an instrument's own step says how what its key brought about is stopped. */
  private boolean tells(Analyzer unit) {
    return !unit.measures().isEmpty()
        || unit.actions().containsKey("stop")
        || steps.instruments().units().size() == 1;
  }

  private static boolean starts(List<PlanStep> started, Analyzer unit) {
    for (PlanStep step : started) {
      if (step.act() instanceof Act.Run run && run.unit().role().equals(unit.role())) {
        return true;
      }
    }
    return false;
  }

  /**
   * What a hand holds: a button or pedal, or the key of an instrument none of whose steps says how
   * it is let go of; null for neither.
   */
  private static Act.@Nullable Pressed held(Act.Activate activate, List<Analyzer> telling) {
    Terminal key = activate.key();
    if (key == null) {
      return activate.pressed();
    }
    for (Analyzer unit : telling) {
      if (unit.role().equals(key.owner())) {
        return null;
      }
    }
    return new Act.Pressed(key, null);
  }

  /**
   * The hand lets go first, even where no instrument has to stop. An instrument's own words say how
   * output goes off; where there are none, the sheet says that it does.
   */
  private static List<PlanStep> released(
      List<PlanStep> stops, PointWork work, List<Analyzer> telling) {
    Act.Activate activate = work.activate();
    Act.Pressed held = held(activate, telling);
    Span row = work.spec().span();
    List<PlanStep> all = new ArrayList<>(stops);
    if (held != null && all.isEmpty()) {
      all.add(let(held, row));
    } else if (held != null) {
      PlanStep first = all.get(0);
      Act let = new Act.Run(Kind.STOP, ((Act.Run) first.act()).unit(), held);
      all.set(0, new PlanStep(let, first.words(), null, first.span()));
    } else if (all.isEmpty()) {
      all.add(new PlanStep(new Act.Run(Kind.STOP, Owner.GENERATOR), null, null, row));
    }
    return all;
  }

  private static PlanStep let(Act.Pressed pressed, Span at) {
    return new PlanStep(new Act.Run(Kind.STOP, Owner.GENERATOR, pressed), null, null, at);
  }

  // ---- a block in the place of stop ----

  /**
   * A block in the place of {@code stop} stops the output by an action of the generator, or of the
   * instrument that turned it on. What it does not let go of is let go of first, and what it leaves
   * running is stopped last.
   *
   * @param instead the block's steps, which are added to
   * @param own the steps in whose place they stand
   */
  void replace(
      Tree.Steps block, List<PlanStep> instead, List<PlanStep> own, Act.Activate activate) {
    if (instead.size() == block.steps().size() && !stops(instead, activate)) {
      DiagnosticBuilder said =
          diagnostics.say(
              Code.STOP_EMPTIED, block.span(), "this leaves no step that stops the output");
      if (activate.key() != null && stops(instead, Act.Activate.UNKNOWN)) {
        said.note(activate.key().name().span(), "the key that turned it on is here");
      }
      said.hint("perform an action that stops it: the analyzer's 'stop', or one 'as stop'");
      return;
    }
    List<PlanStep> first = new ArrayList<>();
    List<PlanStep> last = new ArrayList<>();
    for (PlanStep step : own) {
      Act.Run run = (Act.Run) step.act();
      Act.Pressed held = run.released();
      if (!run.unit().isDevice() && !stops(instead, run.unit().role())) {
        boolean named = held != null && step.words() != null && step.words().has(Slot.HELD);
        Act stop = new Act.Run(Kind.STOP, run.unit(), named ? held : null);
        last.add(new PlanStep(stop, step.words(), null, block.span()));
        held = named ? null : held;
      }
      if (held != null && !lets(instead, held, activate)) {
        first.add(let(held, block.span()));
      }
    }
    instead.addAll(0, first);
    instead.addAll(last);
  }

  /** Whether a block lets go of something by itself: it names it, or stops what has the key. */
  private static boolean lets(List<PlanStep> steps, Act.Pressed held, Act.Activate activate) {
    Terminal own = activate.key() == null ? activate.contact() : activate.key();
    Terminal contact = held.contact();
    boolean named = own != null && own.same(contact) && Placeholders.named(steps, Slot.HELD);
    return named || (contact.onAnalyzer() && stops(steps, contact.owner()));
  }

  /**
   * Whether some step performs an action that stops the output; free text is none, nor what stops
   * another instrument than the one whose key turned it on.
   */
  private static boolean stops(List<PlanStep> steps, Act.Activate activate) {
    Terminal key = activate.key();
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Perform perform
          && perform.stops()
          && (key == null
              || perform.owner().isDevice()
              || perform.owner().role().equals(key.owner()))) {
        return true;
      }
    }
    return false;
  }

  /** Whether some step performs an action of this instrument that stops. */
  private static boolean stops(List<PlanStep> steps, String role) {
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Perform perform
          && perform.stops()
          && perform.owner().role().equals(role)) {
        return true;
      }
    }
    return false;
  }
}
