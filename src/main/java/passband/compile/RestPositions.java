package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.model.ExtraSetting;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.source.Span;
import passband.syntax.Word;

/**
 * Steps by difference for the settings of the device and the analyzer. One that has a rest position
 * is brought to it before points that do not set it, and after those that do, wherever it is not
 * known to be there: at first, after free text, after a state of the generator, after an
 * adjustment. One without stays as it is set last, and the end of the sheet says so.
 */
final class RestPositions implements Stage.Visitor<Stage> {
  private static final Set<String> PANEL = Set.of("select", "adjust");

  private final Steps steps;
  private Map<String, String> known = new TreeMap<>();
  private final Set<String> touched = new TreeSet<>();

  /** The condition of what is gone through, and what was known where it began. */
  private Stage.Condition condition = Stage.Condition.NONE;

  private Map<String, String> otherwise = Map.of();

  /** What was known where an option began. */
  private Map<String, String> unchosen = Map.of();

  private RestPositions(Steps steps) {
    this.steps = steps;
  }

  /** The stages with these steps. */
  static List<Stage> of(List<Stage> stages, Steps steps) {
    RestPositions positions = new RestPositions(steps);
    List<Stage> all = new ArrayList<>();
    stages.forEach(stage -> all.add(stage.accept(positions)));
    return all;
  }

  // ---- what is known ----

  /** Where the condition changes, both ways come together. */
  private void onlyIf(Stage.Condition next) {
    if (next.equals(condition)) {
      return;
    }
    if (condition.option() != null) {
      join(unchosen);
    }
    if (!next.adjusted().equals(condition.adjusted())) {
      if (!condition.adjusted().isEmpty()) {
        join(otherwise);
      }
      otherwise = new TreeMap<>(known);
    }
    if (next.option() != null) {
      unchosen = new TreeMap<>(known);
    }
    condition = next;
  }

  private void join(Map<String, String> other) {
    known.entrySet().removeIf(one -> !one.getValue().equals(other.get(one.getKey())));
  }

  private void go(List<PlanStep> done) {
    for (PlanStep step : done) {
      if (isFree(step)) {
        known.clear();
      } else if (step.act() instanceof Act.Set set) {
        known.put(set.id(), set.value());
        touched.add(set.id());
      } else if (step.act() instanceof Act.Read read && read.sweep() != null) {
        sweep(read.sweep().what());
      }
    }
  }

  /** A sweep leaves what it changes wherever the event came. */
  private void sweep(String what) {
    swept(what).forEach(known::remove);
    touched.addAll(swept(what));
  }

  private Set<String> swept(String what) {
    Set<String> ids = new TreeSet<>();
    steps
        .settings()
        .forEach(
            (id, own) -> {
              if (own.setting().name().text().equals(what)) {
                ids.add(id);
              }
            });
    return ids;
  }

  /** Whether nobody knows what it does; in the place of another step it does what that one does. */
  private static boolean isFree(PlanStep step) {
    boolean free =
        step.kind() == Kind.DO || step.act() instanceof Act.Perform perform && !perform.stops();
    return free && step.insteadOf() == null;
  }

  // ---- stages ----

  @Override
  public Stage start(Stage.Start start) {
    return start;
  }

  @Override
  public Stage section(Stage.Section section) {
    onlyIf(section.condition());
    go(section.steps());
    return section;
  }

  @Override
  public Stage gate(Stage.Gate gate) {
    onlyIf(gate.when().condition());
    return gate;
  }

  @Override
  public Stage adjust(Stage.Adjust adjust) {
    onlyIf(Stage.Condition.after(List.of(adjust.name().text())));
    known.clear();
    return adjust;
  }

  @Override
  public Stage clear(Stage.Clear clear) {
    return clear;
  }

  @Override
  public Stage end(Stage.End end) {
    onlyIf(Stage.Condition.NONE);
    List<PlanStep> stays = new ArrayList<>();
    for (Map.Entry<String, OwnSetting> one : steps.settings().entrySet()) {
      ExtraSetting setting = one.getValue().setting();
      if (setting.leave() == null && touched.contains(one.getKey())) {
        String value = known.get(one.getKey());
        Act act = new Act.Stays(one.getKey(), setting.title(), value);
        stays.add(new PlanStep(act, null, null, setting.name().span()));
      }
    }
    return new Stage.End(List.copyOf(stays));
  }

  @Override
  public Stage run(Stage.Run run) {
    onlyIf(run.when().condition());
    enterOrLeave(run);
    List<PlanStep> before = new ArrayList<>(run.before());
    go(run.before());
    if (!isFree(run)) {
      add(before, toRest(run, settingsHere(run)));
    }
    List<Point> points = points(run);
    enterOrLeave(run);
    movedIn(points).forEach(known::remove);
    List<PlanStep> after = new ArrayList<>();
    add(after, toRest(run, Set.of()));
    after.addAll(run.after());
    go(run.after());
    add(after, toRest(run, Set.of()));
    return run.with(
        new Stage.Course(run.output(), List.copyOf(before), points, List.copyOf(after)));
  }

  /** Another state of the generator may set it as it likes. */
  private void enterOrLeave(Stage.Run run) {
    if (run.state() != null) {
      known.keySet().removeIf(id -> id.startsWith("device."));
    }
  }

  private void add(List<PlanStep> to, List<PlanStep> done) {
    to.addAll(done);
    go(done);
  }

  /** What the points of a run set, or sweep, themselves. */
  private Set<String> ownSettings(Stage.Run run) {
    Set<String> own = new TreeSet<>();
    for (Point point : run.points()) {
      for (PlanStep step : point.steps()) {
        if (step.act() instanceof Act.Set set) {
          own.add(set.id());
        }
      }
    }
    if (run.sweep() != null) {
      own.addAll(swept(run.sweep().what()));
    }
    return own;
  }

  /**
   * What is not brought to rest in a run: what its points set themselves, and, in a state without
   * output, the generator's settings. A generator that is switched off has none.
   */
  private Set<String> settingsHere(Stage.Run run) {
    Set<String> here = ownSettings(run);
    for (String id : run.isStateAlone() ? steps.settings().keySet() : Set.<String>of()) {
      if (id.startsWith("device.")) {
        here.add(id);
      }
    }
    return here;
  }

  /**
   * What some point of a run sets to another value than another: a line that is done again leaves
   * it there, so that after the run nobody knows. What has no rest position stays.
   */
  private Set<String> movedIn(List<Point> points) {
    Map<String, String> first = new TreeMap<>();
    Set<String> moved = new TreeSet<>();
    for (Point point : points) {
      for (PlanStep step : point.steps()) {
        if (step.act() instanceof Act.Set set
            && !first.computeIfAbsent(set.id(), id -> set.value()).equals(set.value())) {
          moved.add(set.id());
        }
      }
    }
    moved.removeIf(
        id -> {
          OwnSetting own = steps.settings().get(id);
          return own == null || own.setting().leave() == null;
        });
    return moved;
  }

  /** The steps that bring to rest what is not known to be there. */
  private List<PlanStep> toRest(Stage.Run run, Set<String> but) {
    List<PlanStep> rest = new ArrayList<>();
    steps
        .settings()
        .forEach(
            (id, own) -> {
              Word leave = own.setting().leave();
              boolean other = leave != null && !leave.text().equals(known.get(id));
              if (leave != null && other && !but.contains(id)) {
                rest.add(set(run, own, leave.text()));
              }
            });
    return rest;
  }

  private PlanStep set(Stage.Run run, OwnSetting own, String value) {
    Map<String, Placeholders.Value> values = new LinkedHashMap<>();
    if (run.outlet() != null) {
      values.put("outlet", Placeholders.Value.given(Slot.OUTLET, run.outlet().title()));
    }
    Span span = run.test().span();
    return steps.set(own, value, new TextPlace(run.tree(), false, values), span);
  }

  /** Where a point does what nobody knows, every point brings to rest what it does not set. */
  private List<Point> points(Stage.Run run) {
    boolean free = isFree(run);
    List<Point> points = new ArrayList<>();
    for (Point point : run.points()) {
      List<PlanStep> all = new ArrayList<>(point.steps());
      if (free) {
        known.clear();
        all.addAll(afterPanel(point), toRest(run, settingsHere(run)));
      }
      go(all);
      points.add(point.withSteps(List.copyOf(all)));
    }
    return List.copyOf(points);
  }

  private static boolean isFree(Stage.Run run) {
    for (Point point : run.points()) {
      for (PlanStep step : point.steps()) {
        if (isFree(step)) {
          return true;
        }
      }
    }
    return false;
  }

  /** The place after mode, setting and what the row sets besides. */
  private static int afterPanel(Point point) {
    int at = 0;
    for (PlanStep step : point.steps()) {
      boolean panel =
          Set.of(Kind.SELECT, Kind.ADJUST, Kind.SET).contains(step.kind())
              || PANEL.contains(String.valueOf(step.insteadOf()));
      if (!panel) {
        break;
      }
      at++;
    }
    return at;
  }
}
