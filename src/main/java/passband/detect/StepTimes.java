package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.bench.BenchState;
import passband.bench.Moment;
import passband.bench.Variable;
import passband.bench.Walk;
import passband.diagnostic.Diagnostics;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Table;

/**
 * How long a sheet takes on the bench, from the walk through it: what a step changes takes its
 * time, and what stands there already takes none. In seconds.
 */
final class StepTimes {
  private static final class Seconds {
    private static final Map<String, Integer> ALL = read();

    private static Map<String, Integer> read() {
      Map<String, Integer> all = new HashMap<>();
      for (String[] cells : Table.read(StepTimes.class, "seconds.tsv")) {
        all.put(cells[0], Integer.parseInt(cells[1]));
      }
      return all;
    }
  }

  private final Plan plan;
  private final List<Moment> moments;
  private final Map<String, List<Moment>> byPoint = new HashMap<>();

  StepTimes(Plan plan) {
    this.plan = plan;
    this.moments = Walk.of(plan, new Diagnostics());
    for (Moment moment : moments) {
      byPoint.computeIfAbsent(String.valueOf(moment.point()), p -> new ArrayList<>()).add(moment);
    }
  }

  /** Of a step of {@code seconds.tsv}. */
  static double of(String step) {
    return Objects.requireNonNull(Seconds.ALL.get(step), step);
  }

  /** The whole sheet. */
  double total() {
    double seconds = 0;
    for (Moment moment : moments) {
      seconds += changed(moment);
    }
    for (Stage.Run run : plan.runs()) {
      seconds += run.state() == null ? 0 : 2 * of("state");
      for (Point point : run.points()) {
        seconds += read(point, run.output().activates());
      }
    }
    return seconds;
  }

  private static double changed(Moment moment) {
    double seconds = 0;
    List<BenchState.Change> changes = moment.before().changes(moment.after());
    boolean selected = false;
    for (BenchState.Change change : changes) {
      Variable.Kind kind = change.what().kind();
      boolean known = change.now() != null;
      selected |= known && (kind == Variable.Kind.MODE || kind == Variable.Kind.OUTLET);
      seconds +=
          switch (kind) {
            case LEAD -> isMove(moment) ? of("lead") : 0;
            case LOAD -> known ? of("load") : 0;
            case SET -> known ? of("set") : 0;
            case SETTING -> known && moment.kind().equals("adjust") ? of("adjust") : 0;
            default -> 0;
          };
    }
    seconds += selected && moment.kind().equals("select") ? of("select") : 0;
    boolean answers = List.of("confirm", "choose", "record").contains(moment.kind());
    return seconds + (answers ? of("answer") : 0);
  }

  private static boolean isMove(Moment moment) {
    return List.of("connect", "move", "remove").contains(moment.kind());
  }

  /** Output, readings, rest and waits of a point. */
  private static double read(Point point, boolean activates) {
    long read = point.limits().stream().filter(one -> one.read().by() != null).count();
    double seconds = of("read") * (read + point.readings().size());
    return seconds + (activates ? on(point) : 0) + rested(point);
  }

  /** How long output is on. */
  static double on(Point point) {
    Rational on = point.onTime();
    return on == null ? of("output") : on.doubleValue();
  }

  private static double rested(Point point) {
    double seconds = point.rest() == null ? 0 : point.rest().ceilingTo(Rational.ONE).doubleValue();
    for (PlanStep step : point.steps()) {
      if (step.act() instanceof Act.Wait pause) {
        seconds += pause.time().si().doubleValue();
      }
    }
    return seconds;
  }

  // ---- one row more ----

  /**
   * A test of one row after the tests of its block on the same outlet and setup, in every phase: no
   * adjustment affects it, so that it is done once where there is one.
   *
   * @param like a run on that outlet and setup
   * @param row as it would stand there
   */
  double more(Stage.Run like, Point row) {
    if (plan.stages().stream().anyMatch(Stage.Adjust.class::isInstance)) {
      return once(like, row);
    }
    double seconds = 0;
    for (Stage.Run run : plan.runs()) {
      if (run.tree() == like.tree() && run.outlet() == like.outlet()) {
        seconds += once(run, row);
      }
    }
    return seconds;
  }

  private double once(Stage.Run like, Point row) {
    double seconds = read(row, like.output().activates()) + of("adjust");
    boolean inside = like.state() != null;
    List<Stage.Run> runs = plan.runs();
    int last = last(like);
    Point before = lastPoint(runs.get(last));
    Point after = last + 1 < runs.size() ? firstPoint(runs.get(last + 1)) : null;
    String mode = row.mode() == null ? null : row.mode().title();
    seconds +=
        inside
            ? 2 * (of("state") + left() * of("set")) + of("select")
            : inserted(before, after, "select", Variable.MODE, mode);
    Variable load = Variable.load(String.valueOf(row.loadAt()));
    return seconds + inserted(before, after, "set-load", load, row.loadText());
  }

  /** How many settings are set again after a state is entered or left. */
  private long left() {
    return plan.device().settings().stream().filter(one -> one.leave() != null).count();
  }

  private int last(Stage.Run like) {
    List<Stage.Run> runs = plan.runs();
    int last = runs.indexOf(like);
    for (int i = last + 1; i < runs.size(); i++) {
      Stage.Run run = runs.get(i);
      boolean same =
          Objects.equals(run.phase(), like.phase())
              && run.outlet() == like.outlet()
              && Objects.equals(name(run), name(like))
              && Blocks.same(plan, run.tree().span(), like.tree().span());
      if (!same) {
        return last;
      }
      last = i;
    }
    return last;
  }

  private static @Nullable String name(Stage.Run run) {
    return run.setup() == null ? null : run.setup().name().text();
  }

  private static @Nullable Point lastPoint(Stage.Run run) {
    return run.points().isEmpty() ? null : run.points().get(run.points().size() - 1);
  }

  private static @Nullable Point firstPoint(Stage.Run run) {
    return run.points().isEmpty() ? null : run.points().get(0);
  }

  /**
   * What a setting costs at the row, and more or less at the point after it; the same there where
   * between the two nobody knows it any more.
   */
  private double inserted(
      @Nullable Point before,
      @Nullable Point after,
      String step,
      Variable what,
      @Nullable String value) {
    boolean select = step.equals("select");
    Moment last = moment(before, step);
    Moment next = moment(after, step);
    String stands = last == null ? null : last.after().value(what);
    int times = value != null && !value.equals(stands) ? 1 : 0;
    boolean lost = next != null && stands != null && next.before().value(what) == null;
    if (next != null && !lost) {
      boolean other = select && changes(next, Variable.OUTLET);
      boolean was = other || changes(next, what);
      boolean isNow = other || !Objects.equals(value, next.after().value(what));
      times += (isNow ? 1 : 0) - (was ? 1 : 0);
    }
    return times * of(select ? "select" : "load");
  }

  private @Nullable Moment moment(@Nullable Point point, String step) {
    Moment found = null;
    for (Moment one : point == null ? List.<Moment>of() : of(point)) {
      found = one.kind().equals(step) ? one : found;
    }
    return found;
  }

  private List<Moment> of(Point point) {
    return byPoint.getOrDefault(point.id(), List.of());
  }

  private static boolean changes(Moment moment, Variable what) {
    String now = moment.after().value(what);
    return now != null && !now.equals(moment.before().value(what));
  }
}
