package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.plan.Stage;
import passband.plan.Wire;

/**
 * What is done with the leads from stage to stage. A run takes over what stays of the wiring before
 * it, and one without a setup leaves the wiring as it is. All leads come off before an adjustment,
 * whose text may have anything rewired; where runs that are done only after an adjustment begin or
 * end, so that no lead is on whichever way was taken; and after the last run.
 */
final class Rewiring implements Stage.Visitor<Void> {
  private final List<Stage> stages = new ArrayList<>();
  private List<Wire> wiring = List.of();
  private Stage.When when = new Stage.When(null, Stage.Condition.NONE);

  /** What is wired where the condition of the last run began. */
  private List<Wire> otherwise = List.of();

  private final List<Stage> all;

  private Rewiring(List<Stage> all) {
    this.all = all;
  }

  /** The stages in their order, with the moves of the leads. */
  static List<Stage> of(List<Stage> stages) {
    Rewiring rewiring = new Rewiring(stages);
    stages.forEach(stage -> stage.accept(rewiring));
    return List.copyOf(rewiring.stages);
  }

  private void takeOff(@Nullable String before) {
    if (!wiring.isEmpty()) {
      stages.add(new Stage.Clear(wiredWhen(), before, Moves.between(wiring, List.of())));
      wiring = List.of();
    }
  }

  /** When the leads are as they are: after an option that moved none they are so either way. */
  private Stage.When wiredWhen() {
    return when.condition().option() != null && wiring.equals(otherwise)
        ? new Stage.When(when.phase(), Stage.Condition.after(when.adjusted()))
        : when;
  }

  private Void keep(Stage stage) {
    stages.add(stage);
    return null;
  }

  @Override
  public Void start(Stage.Start start) {
    return keep(start);
  }

  @Override
  public Void section(Stage.Section section) {
    return keep(section);
  }

  @Override
  public Void gate(Stage.Gate gate) {
    return keep(gate);
  }

  @Override
  public Void adjust(Stage.Adjust adjust) {
    takeOff(adjust.name().text());
    return keep(adjust);
  }

  @Override
  public Void run(Stage.Run run) {
    if (!run.when().condition().equals(when.condition())) {
      if (!staysWired(run)) {
        takeOff(run.id());
      }
      otherwise = wiring;
    }
    List<Wire> now = wires(run);
    Stage.Run wired = run.withMoves(Moves.between(wiring, now));
    wiring = now;
    when = run.when();
    return keep(wired);
  }

  /**
   * Whether no lead has to come off where an option begins or ends, since none is moved whichever
   * way is taken.
   */
  private boolean staysWired(Stage.Run run) {
    if (!run.when().adjusted().equals(when.adjusted())) {
      return false;
    }
    if (when.condition().option() != null && !wiring.equals(otherwise)) {
      return false;
    }
    return run.when().condition().option() == null || keepWiring(run);
  }

  /** Whether no run of the condition that begins here moves a lead. */
  private boolean keepWiring(Stage.Run run) {
    boolean from = false;
    for (Stage one : all) {
      from |= one == run;
      if (from && one instanceof Stage.Run next) {
        if (!next.when().condition().equals(run.when().condition())) {
          break;
        }
        if (!wires(next).equals(wiring)) {
          return false;
        }
      }
    }
    return true;
  }

  /** A run without a setup leaves the leads as they are. */
  private List<Wire> wires(Stage.Run run) {
    return run.setup() == null ? wiring : run.setup().wires();
  }

  /** Nothing is printed where nothing stays. */
  @Override
  public Void end(Stage.End end) {
    takeOff(null);
    return end.stays().isEmpty() ? null : keep(end);
  }

  /** Only made here. */
  @Override
  public Void clear(Stage.Clear clear) {
    return keep(clear);
  }
}
