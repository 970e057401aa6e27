package passband.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Move;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.source.Span;

/**
 * Works through a sheet step by step, from a bench of which nothing is known. What a step needs and
 * the bench has not is said where the source breaks it. After what is done only if an adjustment
 * was made or an outcome chosen, only that is known which both ways have in common.
 */
public final class Walk implements Stage.Visitor<Void> {
  private final Plan plan;
  private final Needs needs;
  private final Times times;
  private final List<Lead> leads;
  private final List<Moment> moments = new ArrayList<>();
  private BenchState state = BenchState.UNKNOWN;

  /** What has to have been met for what is gone through. */
  private Stage.Condition condition = Stage.Condition.NONE;

  /** The bench where the condition began. */
  private BenchState otherwise = BenchState.UNKNOWN;

  /** The bench where an option began. */
  private BenchState unchosen = BenchState.UNKNOWN;

  private String place = "";
  private @Nullable String point;

  private Walk(Plan plan, Diagnostics diagnostics) {
    this.plan = plan;
    this.needs = new Needs(plan, diagnostics);
    this.times = new Times(plan, diagnostics);
    this.leads = plan.usedLeads();
  }

  /** The walk through a plan; faults go to the diagnostics. */
  public static List<Moment> of(Plan plan, Diagnostics diagnostics) {
    Walk walk = new Walk(plan, diagnostics);
    plan.stages().forEach(stage -> stage.accept(walk));
    return walk.moments;
  }

  /** Where the condition changes, it may or may not have been met until here. */
  private void onlyIf(Stage.Condition next) {
    if (next.equals(condition)) {
      return;
    }
    if (condition.option() != null) {
      state = state.join(unchosen);
    }
    if (!next.adjusted().equals(condition.adjusted())) {
      state = condition.adjusted().isEmpty() ? state : state.join(otherwise);
      otherwise = state;
    }
    if (next.option() != null) {
      unchosen = state;
    }
    condition = next;
  }

  private BenchState after(BenchState before, PlanStep step) {
    return Transition.after(before, step, leads);
  }

  private void moment(String kind, Moment.Said said, BenchState after) {
    moments.add(new Moment(place, point, kind, said, state, after));
    state = after;
  }

  @Override
  public Void start(Stage.Start start) {
    place = "Before you start";
    steps(List.of(start.ready()));
    return null;
  }

  @Override
  public Void section(Stage.Section section) {
    onlyIf(section.condition());
    place = section.title();
    steps(section.steps());
    return null;
  }

  /** It looks back at what was written down, and changes nothing on the bench. */
  @Override
  public Void gate(Stage.Gate gate) {
    onlyIf(gate.when().condition());
    place = "Gate";
    moment("gate", gate::text, state);
    return null;
  }

  /** Free text may have rewired anything: nothing is known until the last step makes sure. */
  @Override
  public Void adjust(Stage.Adjust adjust) {
    onlyIf(Stage.Condition.after(List.of(adjust.name().text())));
    place = adjust.title();
    List<PlanStep> steps = adjust.steps();
    steps(steps.subList(0, steps.size() - 1));
    state = state.forgotten();
    steps(steps.subList(steps.size() - 1, steps.size()));
    return null;
  }

  @Override
  public Void clear(Stage.Clear clear) {
    onlyIf(clear.when().condition());
    place = "Remove the leads";
    clear.moves().forEach(move -> move(move, null, plan.name().span()));
    return null;
  }

  @Override
  public Void end(Stage.End end) {
    onlyIf(Stage.Condition.NONE);
    place = "At the end";
    needs.quiet(state, plan.name().span(), "the sheet ends");
    steps(end.stays());
    return null;
  }

  @Override
  public Void run(Stage.Run run) {
    onlyIf(run.when().condition());
    String on = run.outlet() == null ? "" : ", " + run.outlet().title();
    place = run.title() + on + (run.phase() == null ? "" : " (" + run.phase() + ")");
    Span at = run.test().span();
    run.moves().forEach(move -> move(move, run.setup(), at));
    if (run.state() != null) {
      BenchState inside = state.withoutPanel();
      String title = run.state().title();
      moment("enter", run.state()::enter, inside.with(Variable.INSIDE, title, at));
    }
    steps(run.before());
    for (Point one : run.points()) {
      point = one.id();
      points(run, one);
      point = null;
    }
    if (run.state() != null) {
      BenchState outside = state.withoutPanel();
      moment("leave", run.state()::leave, outside.with(Variable.INSIDE, BenchState.NONE, at));
    }
    steps(run.after());
    return null;
  }

  private void move(Move move, @Nullable Setup setup, Span at) {
    needs.quiet(state, at, "leads are moved");
    Variable lead = Variable.lead(move.lead().name().text());
    moment(move.kind().word(), move::text, state.with(lead, ends(move, setup), at));
  }

  /** Where a lead's ends, or all that an accessory touches, are after a move. */
  private static String ends(Move move, @Nullable Setup setup) {
    if (move.kind() == Move.Kind.REMOVE || setup == null) {
      return BenchState.OFF;
    }
    if (!move.at().isEmpty()) {
      List<String> ids = move.at().stream().map(Terminal::id).toList();
      String others = String.join(", ", ids.subList(1, ids.size()));
      return ids.get(0) + (others.isEmpty() ? "" : " to " + others);
    }
    for (Wire wire : setup.wires()) {
      if (wire.lead().name().text().equals(move.lead().name().text())) {
        return wire.from().id() + " to " + wire.to().id();
      }
    }
    return BenchState.OFF;
  }

  private void steps(List<PlanStep> steps) {
    for (PlanStep step : steps) {
      needs.words(step);
      needs.step(step, state);
      moment(step.kind().word(), step::text, times.after(step, state, after(state, step)));
    }
  }

  /** A block in a step's place has that step's effect when it is through; only stop is its own. */
  private void points(Stage.Run run, Point one) {
    List<PlanStep> steps = one.stepsWithRest();
    for (int i = 0; i < steps.size(); i++) {
      PlanStep step = steps.get(i);
      String instead = step.insteadOf();
      needs.words(step);
      boolean last = i + 1 == steps.size() || !same(instead, steps.get(i + 1).insteadOf());
      if (step.act() instanceof Act.Read) {
        needs.reading(run, one, state, null);
      } else {
        needs.step(step, state);
        needs.hold(run, step, one, state);
      }
      BenchState after = own(step);
      if (instead != null && last) {
        if (instead.equals("read")) {
          needs.reading(run, one, stops(step) ? state : after, step);
        }
        boolean undone = instead.equals("activate") && stops(step);
        for (PlanStep stood :
            undone ? List.<PlanStep>of() : Replaced.steps(instead, one, plan, step.span())) {
          after = after(after, stood);
        }
      }
      moment(step.kind().word(), step::text, times.after(step, state, after, run, one));
    }
  }

  /**
   * What a step does by itself: in the place of another, nothing but what an action does. The
   * action of the same name does what the step does, and nothing else.
   */
  private BenchState own(PlanStep step) {
    boolean acts =
        step.act() instanceof Act.Perform perform
            && (perform.activates() || !perform.action().equals(step.insteadOf()));
    return step.insteadOf() != null && !acts && !stops(step) ? state : after(state, step);
  }

  private static boolean stops(PlanStep step) {
    return step.act() instanceof Act.Perform perform && perform.stops();
  }

  private static boolean same(@Nullable String a, @Nullable String b) {
    return a != null && a.equals(b);
  }
}
