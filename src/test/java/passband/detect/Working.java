package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import passband.detect.GeneratorModel.Delivered;
import passband.limit.Limit;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Delivery;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.quantity.Rational;

/**
 * A sheet that is worked, step by step, on the model of a generator and of a bench. What is read
 * follows from what is connected, dialled, shown on the panel and held; the row is only asked what
 * it is to be called and which limits it has. Of an instrument that changes its range by itself the
 * range is the one that the limits are in.
 */
final class Working {
  /** A reading that is written down: its true value goes with the errors of the visit. */
  record Item(
      SheetLine line,
      Physical truth,
      Range range,
      double lower,
      double upper,
      int activation,
      @Nullable Item above) {}

  /** What the instrument shows: its error, in which of the visit's errors that is, its steps. */
  record Range(double relative, double absolute, int index, double step) {}

  /** A true value in SI; NaN for none. */
  interface Physical {
    double at(Visit visit);
  }

  private final Plan plan;
  private final Map<Point, List<SheetLine>> lines = new IdentityHashMap<>();
  private final Map<PlanStep, Unjudged.Asked> asked = new IdentityHashMap<>();
  private final Trouble trouble;
  private final BenchModel bench;
  private final GeneratorModel generator;
  private final Meters meters;
  private final List<Item> items = new ArrayList<>();
  private final Set<WorkedOut> workedOut = new LinkedHashSet<>();
  private final Map<String, Item> lastOf = new HashMap<>();
  private final Map<String, List<Delivered>> held = new HashMap<>();
  private List<Delivered> delivered = List.of();
  private List<Delivered> lastDelivered = List.of();
  private int activations;
  private boolean alarmed;

  private Working(SheetLines lines, Good good, Trouble trouble, boolean learns) {
    this.plan = lines.plan();
    for (List<SheetLine> some : List.of(lines.all(), lines.unjudged())) {
      for (SheetLine line : some) {
        this.lines.computeIfAbsent(line.point(), p -> new ArrayList<>()).add(line);
      }
    }
    lines.asked().forEach(one -> asked.put(one.step(), one));
    this.trouble = trouble;
    this.bench = new BenchModel(plan);
    this.generator = new GeneratorModel(plan.device(), good.ratings(), trouble, good.alarms());
    this.meters = new Meters(lines, good, bench, generator, trouble, learns);
    for (Stage stage : plan.stages()) {
      if (stage instanceof Stage.Run run && lines.runs().contains(run)) {
        run(run);
      } else if (stage instanceof Stage.Clear clear && isWorked(clear.when())) {
        clear.moves().forEach(bench::move);
      }
    }
  }

  private boolean isWorked(Stage.When when) {
    return when.adjusted().isEmpty()
        && (when.phase() == null || when.phase().equals(plan.phases().get(0)));
  }

  /** What a good generator gives, and its alarms. */
  record Good(SheetLines lines, Ratings ratings, Map<String, Double> alarms) {
    static Good of(SheetLines lines) {
      Map<String, Double> alarms = new LinkedHashMap<>();
      for (SheetLine line : lines.of(SheetLine.Kind.TRIP)) {
        if (line.run().outlet() != null) {
          alarms.put(line.run().outlet().name().text(), Meters.middle(line.limit().exact()));
        }
      }
      Ratings ratings = new Ratings();
      for (SheetLine line : lines.of(SheetLine.Kind.TRIP)) {
        if (line.run().outlet() != null && line.limit().exact().upper() != null) {
          double upper = line.limit().exact().upper().doubleValue();
          ratings.learn("alarm " + line.run().outlet().name().text(), upper, upper);
        }
      }
      Good good = new Good(lines, ratings, alarms);
      new Working(lines, good, new Trouble(), true);
      return good;
    }

    Working with(Trouble trouble) {
      return new Working(lines, this, trouble, false);
    }
  }

  // ---- the steps ----

  private void run(Stage.Run run) {
    run.moves().forEach(move -> trouble.move(bench, run, move));
    for (PlanStep step : run.before()) {
      ask(step, run, run.points().get(0));
      act(step, step.act(), run, null);
    }
    for (Point point : run.points()) {
      List<PlanStep> steps = point.stepsWithRest();
      for (int i = 0; i < steps.size(); i++) {
        PlanStep step = steps.get(i);
        ask(step, run, point);
        Act act = trouble.act(point, step.act());
        if (act != null) {
          act(step, act, run, point);
        }
        boolean last = i + 1 == steps.size() || !"read".equals(steps.get(i + 1).insteadOf());
        if ("read".equals(step.insteadOf()) && last) {
          lines.getOrDefault(point, List.of()).forEach(line -> read(line, null, null));
        }
      }
    }
    run.after().forEach(step -> act(step, step.act(), run, null));
  }

  private void act(PlanStep step, Act act, Stage.Run run, @Nullable Point point) {
    boolean here = step.words() != null && step.words().has(Slot.OUTLET);
    if (act instanceof Act.Select select) {
      generator.select(select.outlet(), select.mode(), here);
    } else if (act instanceof Act.Adjust adjust) {
      generator.adjust(adjust.setting(), here);
    } else if (act instanceof Act.SetLoad load) {
      bench.turn(load);
    } else if (act instanceof Act.Set set) {
      bench.set(set);
    } else if (act instanceof Act.Activate activate && point != null) {
      activate(activate, point);
    } else if (act instanceof Act.Run own) {
      run(own);
    } else if (act instanceof Act.Perform perform && perform.stops()) {
      stop(null);
    } else if (act instanceof Act.Read read && point != null) {
      lines.getOrDefault(point, List.of()).forEach(line -> read(line, read, run.sweep()));
    }
  }

  /**
   * A choice or a tick, answered by what is there: by somebody who looks at what its words name.
   */
  private void ask(PlanStep step, Stage.Run run, Point point) {
    Unjudged.Asked one = asked.get(step);
    if (one == null) {
      return;
    }
    boolean right =
        (!one.names(Slot.LOAD) || bench.isAt(point))
            && (!one.names(Slot.SETTING) || generator.shows(point.setting()))
            && (!one.names(Slot.MODE) || generator.shows(point.mode()))
            && !(one.isCalled("range") && trouble.turnsRange(run))
            && !(one.isCalled("wiring") && run.setup() != null && !bench.isWired(run.setup()));
    if (run.output() == Delivery.INHIBITED && one.isChoice()) {
      right &= alarmed && delivered.isEmpty() && lastDelivered.isEmpty();
    }
    double answer = right ? 1 : Double.NaN;
    Range none = new Range(0, 0, -1, 1);
    items.add(
        new Item(
            one.line(),
            visit -> answer,
            none,
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            0,
            null));
  }

  private void activate(Act.Activate activate, Point point) {
    activations += activate.beside() ? 0 : 1;
    bench.press(activate);
    Rational on = point.onTime();
    Rational allowed = point.on().allowed();
    double share = on == null || allowed == null ? 0 : Math.min(1, on.over(allowed).doubleValue());
    List<Terminal> closed = bench.closed(plan.device());
    delivered = generator.delivers(bench, closed, true, share);
    lastDelivered = delivered;
    alarmed = generator.alarms(bench, closed);
  }

  private void run(Act.Run own) {
    switch (own.kind()) {
      case HOLD -> held.put(own.unit().role(), delivered);
      case STOP -> stop(own.released() == null ? null : own.released().contact());
      default -> held.remove(own.unit().role());
    }
  }

  private void stop(@Nullable Terminal released) {
    bench.release(released);
    delivered = List.of();
  }

  // ---- what is read ----

  private void read(SheetLine line, Act.@Nullable Read read, Stage.@Nullable Swept sweep) {
    String by = line.limit().read().by();
    boolean trip = line.kind() == SheetLine.Kind.TRIP;
    boolean here =
        read == null || trip || (isBy(read, by) && read.what().contains(line.limit().title()));
    if (!here) {
      return;
    }
    Analyzer unit = by == null || by.equals(Instruments.DEVICE) ? null : plan.instruments().in(by);
    List<Delivered> seen = delivered;
    if (trouble.runsAlone()) {
      seen = generator.delivers(bench, bench.closed(plan.device()), false, 0);
    }
    if (unit != null && held.containsKey(unit.role())) {
      seen = held.get(unit.role());
    }
    Physical truth =
        trip && read != null && sweep != null
            ? meters.swept(sweep, plan.instruments().in(read.by().role()))
            : meters.truth(line, unit, seen);
    Limit limit = line.limit();
    Analyzer.Range own = limit.range();
    Analyzer.Range range = own == null ? null : trouble.range(line.run(), own, plan.measure(limit));
    Range shows =
        range == null
            ? new Range(0, 0, -1, limit.resolution().doubleValue())
            : range(range, index(by, limit, range));
    String column = line.run().id() + " " + limit.quantity();
    Limit.Rounded accept = limit.accept();
    Item item =
        new Item(
            line,
            truth,
            shows,
            accept.lower() == null ? Double.NEGATIVE_INFINITY : accept.lower().doubleValue(),
            accept.upper() == null ? Double.POSITIVE_INFINITY : accept.upper().doubleValue(),
            seen.isEmpty() ? 0 : activations,
            lastOf.get(column));
    lastOf.put(column, item);
    workedOut.addAll(line.uses());
    items.add(item);
  }

  private static Range range(Analyzer.Range own, int index) {
    Accuracy error = own.error();
    double step = own.resolution().doubleValue();
    return error == null
        ? new Range(0, 0, -1, step)
        : new Range(error.relative().doubleValue(), error.absolute().doubleValue(), index, step);
  }

  private boolean isBy(Act.Read read, @Nullable String by) {
    if (by == null || by.equals(Instruments.DEVICE)) {
      return by != null && read.by().isDevice();
    }
    return !read.by().isDevice()
        && plan.instruments().in(by) == plan.instruments().in(read.by().role());
  }

  private int index(@Nullable String by, Limit limit, Analyzer.Range range) {
    String role =
        by == null || by.equals(Instruments.DEVICE) ? "" : plan.instruments().in(by).role();
    Accuracy error = range.error();
    return meters.index(
        role + " " + limit.quantity() + " " + range.from() + " to " + range.to(),
        error == null ? Spread.RECTANGULAR : Spread.of(error.distribution()));
  }

  // ---- visits ----

  List<Item> items() {
    return items;
  }

  /** One visit: each error once, and each activation for itself. */
  final class Visit {
    private final SplittableRandom random;
    private final double[] errors = new double[meters.spreads().size()];
    private final boolean[] failed = new boolean[activations + 1];

    Visit(SplittableRandom random) {
      this.random = random;
      for (int i = 0; i < errors.length; i++) {
        errors[i] = meters.spreads().get(i).draw(random);
      }
      for (int i = 1; i < failed.length && trouble.failing() > 0; i++) {
        failed[i] = random.nextDouble() < trouble.failing();
      }
    }

    SplittableRandom random() {
      return random;
    }

    double error(int index) {
      return errors[index];
    }

    /** What stands on the display, in its steps; NaN for no number. */
    double shown(Item item) {
      double truth = item.truth().at(this);
      if (item.activation() > 0 && failed[item.activation()]) {
        truth = 0;
      }
      Range range = item.range();
      if (range.index() >= 0) {
        double half = range.relative() * Math.abs(truth) + range.absolute();
        double at = Double.isNaN(trouble.edge()) ? errors[range.index()] : trouble.edge();
        truth += half * (at + trouble.off());
      }
      return Double.isNaN(truth) ? truth : Math.floor(truth / range.step() + 0.5);
    }

    /** Whether something fails: a reading, or a value that is worked out from some. */
    boolean fails() {
      Map<SheetLine, Double> written = new IdentityHashMap<>();
      for (Item item : items) {
        double step = item.range().step();
        double value = trouble.written(item, shown(item), this) * step;
        double slack = 1e-6 * step;
        if (!(value >= item.lower() - slack && value <= item.upper() + slack)) {
          return true;
        }
        written.put(item.line(), value);
      }
      for (WorkedOut one : workedOut) {
        if (!one.criterion().passes(parts(one, written))) {
          return true;
        }
      }
      return false;
    }

    /** A dial stands in a formula as it is printed. */
    private double[] parts(WorkedOut one, Map<SheetLine, Double> written) {
      double[] parts = new double[one.parts().size()];
      for (int i = 0; i < parts.length; i++) {
        parts[i] = written.getOrDefault(one.parts().get(i), one.nominals().get(i));
      }
      return parts;
    }
  }

  /** In how many of so many visits something fails. */
  int failing(int visits, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int failing = 0;
    for (int i = 0; i < visits; i++) {
      failing += new Visit(random).fails() ? 1 : 0;
    }
    return failing;
  }
}
