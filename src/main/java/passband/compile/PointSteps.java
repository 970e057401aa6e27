package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Figure;
import passband.plan.Owner;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Slot;
import passband.quantity.Rational;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The steps of a point: select the mode, adjust the setting, set the load, start, activate, read,
 * stop; each of them may be replaced, and what is to be done at each point besides comes last, when
 * the output is off.
 */
final class PointSteps {
  /** What a block in the place of a step has to name. */
  private static final Map<String, Slot> SLOTS =
      Map.of("select", Slot.MODE, "adjust", Slot.SETTING, "set-load", Slot.LOAD);

  private final Steps steps;
  private final Diagnostics diagnostics;
  private final StopSteps stops;

  PointSteps(Steps steps, Diagnostics diagnostics) {
    this.steps = steps;
    this.diagnostics = diagnostics;
    this.stops = new StopSteps(steps, diagnostics);
  }

  /**
   * The steps of one point.
   *
   * @param reads what is read, by what shows it
   * @param seconds how long output rests after it was on; null where nothing says
   */
  List<PlanStep> of(
      Tree.Test test, PointWork work, List<Act.Read> reads, @Nullable Rational seconds) {
    RowSpec spec = work.spec();
    Outlet outlet = work.place().outlet();
    Map<String, Placeholders.Value> values = values(spec, work.loads(), outlet);
    values.putAll(Activations.held(work.activate()));
    TextPlace point = new TextPlace(test, true, values);
    Span row = spec.span();
    Map<String, List<PlanStep>> own = new LinkedHashMap<>();
    PartnerSteps partners = new PartnerSteps(steps, test, work.also());
    own.put("prepare partners", partners.prepared());
    if (spec.mode() != null) {
      Act act = new Act.Select(outlet, spec.mode());
      own.put("select", List.of(steps.action(act, "select", Owner.GENERATOR, point, row)));
    }
    if (spec.setting() != null) {
      Act act = new Act.Adjust(spec.setting());
      own.put("adjust", List.of(steps.action(act, "adjust", Owner.GENERATOR, point, row)));
    }
    spec.extras()
        .forEach(
            (name, extra) ->
                own.put("set " + name, List.of(steps.set(extra.of(), extra.text(), point, row))));
    own.put("set-load", partners.loads(loads(work.loads(), point, row), work.loads()));
    own.put("look at partners", partners.shown());
    Act.Activate activate = work.activate();
    List<Analyzer> units = work.units(steps.instruments(), activate.key());
    own.put(
        "start", each(Kind.START, "start", work.starting(units, steps.instruments()), point, row));
    if (spec.mode() != null) {
      TextPlace place = new TextPlace(test, true, Activations.values(values, activate));
      PlanStep on = steps.action(activate, "activate", hand(activate), place, row);
      own.put("activate", partners.activated(on, activate, this::hand));
    }
    Taken taken = taken(work, reads, point);
    List<PlanStep> stop = stops.of(work, units, own.getOrDefault("start", List.of()), point);
    addReading(own, work, taken, stop, point);
    own.values().removeIf(List::isEmpty);
    Map<String, List<PlanStep>> byName = replaced(test, own, work, point);
    List<PlanStep> all = inOrder(byName, further(taken, test), rest(seconds, row));
    List<PlanStep> each = steps.of(Steps.when(test, Tree.Steps.When.EACH), point);
    requireOff(each);
    all.addAll(each);
    return List.copyOf(all);
  }

  /** Whose words the activation has: of the instrument with the key, where it has any. */
  private Owner hand(Act.Activate activate) {
    Terminal key = activate.key();
    for (Analyzer unit : steps.instruments().units()) {
      boolean holdsKey = key != null && key.owner().equals(unit.role());
      if (holdsKey && unit.actions().containsKey("activate")) {
        return steps.owner(unit);
      }
    }
    return Owner.GENERATOR;
  }

  private static List<PlanStep> rest(@Nullable Rational seconds, Span row) {
    return seconds == null
        ? List.of()
        : List.of(new PlanStep(Act.Rest.of(seconds), null, null, row));
  }

  /** What is watched besides the first, each an activation of its own; a block says by itself. */
  private static List<PlanStep> further(Taken taken, Tree.Test test) {
    for (Tree.Steps block : test.steps()) {
      if (block.replacing() != null && block.replacing().text().equals("read")) {
        return List.of();
      }
    }
    List<PlanStep> watched = taken.watched();
    return watched.isEmpty() || !taken.apart() ? List.of() : watched.subList(1, watched.size());
  }

  /**
   * Everything by the names of the steps, and then once more from the start on for each further
   * reading that is watched.
   */
  private static List<PlanStep> inOrder(
      Map<String, List<PlanStep>> byName, List<PlanStep> further, List<PlanStep> rest) {
    List<PlanStep> all = new ArrayList<>();
    byName.values().forEach(all::addAll);
    for (PlanStep read : further) {
      all.addAll(rest);
      for (String name : List.of("start", "activate")) {
        all.addAll(byName.getOrDefault(name, List.of()));
      }
      all.add(read);
      all.addAll(byName.getOrDefault("stop", List.of()));
    }
    return all;
  }

  private List<PlanStep> loads(PointLoads loads, TextPlace point, Span row) {
    List<PlanStep> set = new ArrayList<>();
    if (loads.unit() != null) {
      Owner owner = steps.owner(loads.unit());
      set.add(load(new Act.SetLoad(owner, loads.main(), loads.termination()), point, row));
    }
    loads
        .others()
        .forEach(
            (role, load) ->
                set.add(load(new Act.SetLoad(steps.owner(role), load, null), point, row)));
    return set;
  }

  /** The load is the instrument's own, whichever of the row's the placeholder would stand for. */
  private PlanStep load(Act.SetLoad act, TextPlace point, Span row) {
    Map<String, Placeholders.Value> values = new LinkedHashMap<>(point.values());
    values.put("load", Placeholders.Value.given(Slot.LOAD, act.text()));
    TextPlace place = new TextPlace(point.test(), true, values);
    return steps.action(act, "set-load", act.unit(), place, row);
  }

  /** The step at each instrument; one that measures nothing starts and stops nothing by itself. */
  private List<PlanStep> each(
      Kind kind, String action, List<Analyzer> units, TextPlace point, Span row) {
    List<PlanStep> each = new ArrayList<>();
    for (Analyzer unit : units) {
      boolean does = !unit.measures().isEmpty() || unit.actions().containsKey(action);
      if (does || steps.instruments().units().size() == 1) {
        Owner owner = steps.owner(unit);
        each.add(steps.action(new Act.Run(kind, owner), action, owner, point, row));
      }
    }
    return each;
  }

  /**
   * How the readings of a point are taken.
   *
   * @param holding the instruments that hold theirs
   * @param held what is written down when output is off again
   * @param watched what is read while output is on
   * @param apart whether each of these is an activation of its own
   */
  private record Taken(
      List<Analyzer> holding, List<PlanStep> held, List<PlanStep> watched, boolean apart) {}

  /**
   * Where an instrument holds a reading, output goes off before anything is written; else it is
   * read while output is on, one quantity an activation. A sweep says by itself what is read.
   */
  private Taken taken(PointWork work, List<Act.Read> reads, TextPlace point) {
    RowSpec spec = work.spec();
    List<PlanStep> held = new ArrayList<>();
    List<Act.Read> shown = new ArrayList<>();
    List<Analyzer> holding = new ArrayList<>();
    for (Act.Read read : reads) {
      Analyzer unit = read.by().isDevice() ? null : steps.instruments().in(read.by().role());
      boolean holds = unit != null && unit.actions().containsKey("hold");
      if (holds && spec.mode() != null && read.sweep() == null) {
        holding.add(unit);
        held.add(write(read, point, spec.span()));
      } else {
        shown.add(read);
      }
    }
    List<Act.Read> single = spec.mode() == null ? shown : apart(shown);
    List<PlanStep> watched = new ArrayList<>();
    single.forEach(read -> watched.add(write(read, point, spec.span())));
    return new Taken(holding, held, watched, spec.mode() != null);
  }

  /** One for each quantity. */
  private static List<Act.Read> apart(List<Act.Read> reads) {
    List<Act.Read> apart = new ArrayList<>();
    for (Act.Read read : reads) {
      if (read.sweep() != null || read.what().isEmpty()) {
        apart.add(read);
        continue;
      }
      for (String what : new LinkedHashSet<>(read.what())) {
        apart.add(new Act.Read(read.by(), List.of(what), null, true));
      }
    }
    return apart.size() > 1 ? apart : reads;
  }

  private void addReading(
      Map<String, List<PlanStep>> own,
      PointWork work,
      Taken taken,
      List<PlanStep> stop,
      TextPlace point) {
    List<PlanStep> watched = taken.watched();
    own.put("hold", each(Kind.HOLD, "hold", taken.holding(), point, work.spec().span()));
    if (watched.isEmpty()) {
      own.put("stop", stop);
      own.put("read", taken.held());
    } else {
      own.put("read", taken.apart() ? watched.subList(0, 1) : watched);
      own.put("stop", stop);
      own.put("read held", taken.held());
    }
  }

  private PlanStep write(Act.Read read, TextPlace point, Span row) {
    return read.sweep() != null || read.by().isDevice()
        ? new PlanStep(read, null, null, row)
        : steps.action(read, "read", read.by(), point, row);
  }

  /** Values of a point's placeholders. */
  static Map<String, Placeholders.Value> values(
      RowSpec spec, PointLoads loads, @Nullable Outlet outlet) {
    Map<String, Placeholders.Value> point = new LinkedHashMap<>();
    put(point, "outlet", Slot.OUTLET, outlet == null ? null : outlet.title());
    put(point, "mode", Slot.MODE, spec.mode() == null ? null : spec.mode().title());
    put(point, "setting", Slot.SETTING, text(spec.setting()));
    put(point, "load", Slot.LOAD, loads.text());
    put(point, "target", Slot.TARGET, text(spec.target()));
    for (RowSpec.Extra extra : spec.extras().values()) {
      Word name = extra.setting().name();
      point.put(name.text(), new Placeholders.Value(Slot.EXTRA, extra.text(), name, 1));
    }
    return point;
  }

  private static @Nullable String text(@Nullable Figure figure) {
    return figure == null ? null : figure.text();
  }

  private static void put(
      Map<String, Placeholders.Value> point, String name, Slot slot, @Nullable String value) {
    if (value != null) {
      point.put(name, Placeholders.Value.given(slot, value));
    }
  }

  private Map<String, List<PlanStep>> replaced(
      Tree.Test test, Map<String, List<PlanStep>> own, PointWork work, TextPlace point) {
    Map<String, List<PlanStep>> byName = new LinkedHashMap<>(own);
    for (Tree.Steps block : test.steps()) {
      if (block.replacing() == null) {
        continue;
      }
      String name = block.replacing().text();
      if (!PlanStep.REPLACEABLE.contains(name)) {
        Scope.unknown(diagnostics, block.replacing(), "step to replace", PlanStep.REPLACEABLE);
      } else if (block.steps().isEmpty() && needed(name, byName.getOrDefault(name, List.of()))) {
        sayEmpty(name, block);
      } else if (byName.containsKey(name)) {
        List<PlanStep> byOwn = own.getOrDefault(name, List.of());
        List<PlanStep> instead = new ArrayList<>();
        steps.of(block.steps(), point).forEach(step -> instead.add(step.insteadOf(name)));
        byName.put(name, instead);
        requirePlaceholder(name, block, instead);
        if (name.equals("stop")) {
          stops.replace(block, instead, byOwn, work.activate());
        }
        if (!name.equals("activate")) {
          requireOff(instead);
        } else {
          PlanStep start = onlyStart(instead);
          if (start != null) {
            sayStarts(start);
            byName.put(name, own.getOrDefault(name, List.of()));
          }
        }
      }
    }
    return byName;
  }

  /**
   * Whether a step may not simply be left out. Only the start of an instrument may of whose profile
   * says nothing about one; {@code stop} has words of its own for it.
   */
  private static boolean needed(String name, List<PlanStep> own) {
    boolean made = own.stream().allMatch(step -> step.words() == null);
    return !own.isEmpty() && !name.equals("stop") && !(name.equals("start") && made);
  }

  /** A block without steps takes a step away; its own steps are then looked at as they were. */
  private void sayEmpty(String name, Tree.Steps block) {
    diagnostics
        .say(Code.MISSING_ITEM, block.span(), "nothing is done in the place of '%s'", name)
        .hint("write what is done there, or remove the block");
  }

  /** Output goes on where the test says so, and nowhere else. */
  private void requireOff(List<PlanStep> steps) {
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Perform perform && perform.activates()) {
        Steps.sayActivates(diagnostics, step.span());
      }
    }
  }

  /** The step that starts an instrument, where nothing else in the block could turn output on. */
  private static @Nullable PlanStep onlyStart(List<PlanStep> instead) {
    PlanStep start = null;
    for (PlanStep step : instead) {
      if (step.act() instanceof Act.Perform one && one.startsInstrument()) {
        start = step;
      } else if (step.kind() == Kind.DO || step.kind() == Kind.PERFORM) {
        return null;
      }
    }
    return start;
  }

  private void sayStarts(PlanStep step) {
    diagnostics
        .say(
            Code.WRONG_KIND,
            step.span(),
            "an instrument's 'start' lets it measure; in the place of 'activate' it turns no output on")
        .hint("write how output is turned on, 'do \"…\"', or remove the block");
  }

  /** What is done in the place of a step that brings something about says what it is. */
  private void requirePlaceholder(String name, Tree.Steps block, List<PlanStep> instead) {
    Slot slot = SLOTS.get(name);
    if (slot == null || instead.isEmpty() || instead.size() < block.steps().size()) {
      return;
    }
    if (Placeholders.named(instead, slot)) {
      return;
    }
    diagnostics
        .say(
            Code.PLACEHOLDER_MISSING,
            block.span(),
            "what is done in the place of '%s' does not name {%s}",
            name,
            slot.name().toLowerCase(Locale.ROOT))
        .hint("write {%s} where its value belongs", slot.name().toLowerCase(Locale.ROOT));
  }
}
