package passband.printed;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Move;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Words;
import passband.testing.RecordTree;

/**
 * Plans with one thing wrong: a step dropped, two in the wrong order, a wrong value, a wrong jack.
 */
final class PlanMutations {
  private static final Set<Kind> NEEDED =
      Set.of(
          Kind.SELECT,
          Kind.SHOWN,
          Kind.ADJUST,
          Kind.SET_LOAD,
          Kind.START,
          Kind.ACTIVATE,
          Kind.READ,
          Kind.STOP,
          Kind.REST);

  private static final List<List<Kind>> IN_ORDER =
      List.of(
          List.of(Kind.SELECT, Kind.ADJUST),
          List.of(Kind.START, Kind.ACTIVATE),
          List.of(Kind.ACTIVATE, Kind.READ),
          List.of(Kind.ADJUST, Kind.ACTIVATE),
          List.of(Kind.SET_LOAD, Kind.ACTIVATE),
          List.of(Kind.ADJUST, Kind.SHOWN));

  private static final Set<Kind> WITH_VALUES = Set.of(Kind.SELECT, Kind.ADJUST, Kind.SET_LOAD);

  /** A wrong plan and what is wrong with it. */
  record Mutation(String what, Supplier<Plan> plan) {}

  private final Plan plan;
  private final List<Mutation> mutations = new ArrayList<>();

  private PlanMutations(Plan plan) {
    this.plan = plan;
  }

  /** Every mutation of a plan, in a mutable list. */
  static List<Mutation> of(Plan plan) {
    PlanMutations all = new PlanMutations(plan);
    for (Stage stage : plan.stages()) {
      if (stage instanceof Stage.Run run) {
        run.points().forEach(all::addDropped);
        run.points().forEach(all::addSwapped);
        run.points().forEach(all::addWrongValues);
        all.addWiring(run);
      }
    }
    return all.mutations;
  }

  /** What makes sure of the leads left out, or one lead left on. */
  static List<Mutation> ofLeads(Plan plan) {
    PlanMutations all = new PlanMutations(plan);
    plan.stages().forEach(all::addStage);
    return all.mutations;
  }

  /** Without the steps by which one key or button is let go of, or one instrument stops. */
  static List<Mutation> ofStops(Plan plan) {
    PlanMutations all = new PlanMutations(plan);
    plan.points().forEach(all::addStopped);
    return all.mutations;
  }

  private void addStopped(Point point) {
    Set<String> stopped = new TreeSet<>();
    point.steps().forEach(step -> stopped.addAll(stopped(step)));
    for (String one : stopped) {
      List<PlanStep> fewer = new ArrayList<>(point.steps());
      fewer.removeIf(step -> step.kind() == Kind.STOP && stopped(step).contains(one));
      add(point.id() + " without what stops " + one, point, "steps", fewer);
    }
  }

  /** Whose key, button or measurement a step is about. */
  private static Set<String> stopped(PlanStep step) {
    Set<String> of = new TreeSet<>();
    if (step.act() instanceof Act.Run run && step.kind() == Kind.STOP) {
      if (run.released() != null) {
        of.add(run.released().contact().owner());
      }
      if (!run.unit().isDevice()) {
        of.add(run.unit().role());
      }
    }
    return of;
  }

  private void addStage(Stage stage) {
    if (stage instanceof Stage.Start || stage instanceof Stage.Clear) {
      List<Stage> fewer = new ArrayList<>(plan.stages());
      fewer.remove(stage);
      add("no " + stage.getClass().getSimpleName(), plan, "stages", fewer);
    }
    if (stage instanceof Stage.Clear clear) {
      for (Move move : clear.moves()) {
        List<Move> fewer = new ArrayList<>(clear.moves());
        fewer.remove(move);
        add(move.lead().title() + " left on", clear, "moves", fewer);
      }
    } else if (stage instanceof Stage.Adjust adjust) {
      List<PlanStep> fewer = adjust.steps().subList(0, adjust.steps().size() - 1);
      add(adjust.title() + " without its last step", adjust, "steps", fewer);
    }
  }

  private void addDropped(Point point) {
    for (PlanStep step : point.steps()) {
      if (NEEDED.contains(step.kind())) {
        List<PlanStep> fewer = new ArrayList<>(point.steps());
        fewer.remove(step);
        add(point.id() + " without " + step.kind(), point, "steps", fewer);
      }
    }
  }

  private void addSwapped(Point point) {
    for (List<Kind> pair : IN_ORDER) {
      int first = index(point.steps(), pair.get(0));
      int second = index(point.steps(), pair.get(1));
      if (first >= 0 && second > first) {
        List<PlanStep> swapped = new ArrayList<>(point.steps());
        swapped.add(second, swapped.remove(first));
        add(point.id() + ": " + pair.get(0) + " after " + pair.get(1), point, "steps", swapped);
      }
    }
  }

  private static int index(List<PlanStep> steps, Kind kind) {
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).kind() == kind) {
        return i;
      }
    }
    return -1;
  }

  private void addWrongValues(Point point) {
    for (PlanStep step : point.steps()) {
      if (WITH_VALUES.contains(step.kind()) && step.words() != null) {
        List<PlanStep> wrong = new ArrayList<>(point.steps());
        wrong.set(wrong.indexOf(step), withWrongValue(step));
        add(point.id() + ": wrong value in " + step.kind(), point, "steps", wrong);
      }
    }
  }

  private static PlanStep withWrongValue(PlanStep step) {
    List<Words.Part> parts = new ArrayList<>();
    for (Words.Part part : step.words().parts()) {
      parts.add(
          part instanceof Words.Filled filled
              ? new Words.Filled(filled.slot(), filled.name(), "7 of another")
              : part);
    }
    return new PlanStep(step.act(), new Words(parts), step.insteadOf(), step.span());
  }

  private void addWiring(Stage.Run run) {
    for (Move move : run.moves()) {
      List<Move> fewer = new ArrayList<>(run.moves());
      fewer.remove(move);
      add(run.title() + " without a move of " + move.lead().title(), run, fewer);
      Terminal other = otherJack(move);
      if (other != null) {
        List<Move> wrong = new ArrayList<>(run.moves());
        wrong.set(wrong.indexOf(move), new Move(move.kind(), move.lead(), move.from(), other));
        add(run.title() + ": " + move.lead().title() + " to " + other.title(), run, wrong);
      }
    }
  }

  /** Another jack of the analyzer; null where the lead does not end at one. */
  private Terminal otherJack(Move move) {
    if (move.to() == null || !move.to().onAnalyzer()) {
      return null;
    }
    for (Terminal terminal : plan.instruments().terminals()) {
      if (!terminal.id().equals(move.to().id())) {
        return terminal;
      }
    }
    return null;
  }

  private void add(String what, Stage.Run run, List<Move> moves) {
    Stage.Wiring wiring = new Stage.Wiring(run.setup(), moves);
    add(what, run, "wiring", wiring);
  }

  private void add(String what, Record record, String component, Object value) {
    RecordComponent place =
        Arrays.stream(record.getClass().getRecordComponents())
            .filter(c -> c.getName().equals(component))
            .findFirst()
            .orElseThrow();
    place.getAccessor().setAccessible(true);
    RecordTree.Spot spot = new RecordTree.Spot("", record, place);
    mutations.add(
        new Mutation(
            what, () -> RecordTree.with(plan, spot, value, PlanMutations::isOfPlan, Map.of())));
  }

  private static boolean isOfPlan(RecordComponent component) {
    return Set.of("stages", "course", "points").contains(component.getName());
  }
}
