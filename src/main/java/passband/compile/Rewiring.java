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
  private Stage.When when = new Stage.When(null, List.of());

  private Rewiring() {}

  /** The stages in their order, with the moves of the leads. */
  static List<Stage> of(List<Stage> stages) {
    Rewiring rewiring = new Rewiring();
    stages.forEach(stage -> stage.accept(rewiring));
    return List.copyOf(rewiring.stages);
  }

  private void takeOff(@Nullable String before) {
    if (!wiring.isEmpty()) {
      stages.add(new Stage.Clear(when, before, Moves.between(wiring, List.of())));
      wiring = List.of();
    }
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
  public Void adjust(Stage.Adjust adjust) {
    takeOff(adjust.name().text());
    return keep(adjust);
  }

  @Override
  public Void run(Stage.Run run) {
    if (!run.when().adjusted().equals(when.adjusted())) {
      takeOff(run.id());
    }
    List<Wire> now = run.setup() == null ? wiring : run.setup().wires();
    Stage.Run wired = run.withMoves(Moves.between(wiring, now));
    wiring = now;
    when = run.when();
    return keep(wired);
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
