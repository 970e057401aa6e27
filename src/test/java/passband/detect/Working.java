package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.detect.GeneratorModel.Delivery;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.syntax.TerminalKind;

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

  /** What one delivery makes of a load. */
  private record Flow(Delivery delivery, double ohms, double relative, int index, boolean shared) {}

  private final Plan plan;
  private final Map<Point, List<SheetLine>> lines = new IdentityHashMap<>();
  private final Trouble trouble;
  private final Ratings ratings;
  private final boolean learns;
  private final BenchModel bench;
  private final GeneratorModel generator;
  private final Map<String, Double> alarms;
  private final List<Spread> spreads = new ArrayList<>();
  private final Map<String, Integer> indexes = new HashMap<>();
  private final List<Item> items = new ArrayList<>();
  private final Map<String, Item> lastOf = new HashMap<>();
  private final Map<String, List<Delivery>> held = new HashMap<>();
  private List<Delivery> delivered = List.of();
  private int activations;

  private Working(
      SheetLines lines,
      Ratings ratings,
      Map<String, Double> alarms,
      Trouble trouble,
      boolean learns) {
    this.plan = lines.plan();
    for (SheetLine line : lines.all()) {
      this.lines.computeIfAbsent(line.point(), p -> new ArrayList<>()).add(line);
    }
    this.trouble = trouble;
    this.ratings = ratings;
    this.alarms = alarms;
    this.learns = learns;
    this.bench = new BenchModel(plan);
    this.generator = new GeneratorModel(plan.device(), ratings, trouble, alarms);
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
          alarms.put(line.run().outlet().name().text(), middle(line.limit().exact()));
        }
      }
      Ratings ratings = new Ratings();
      for (SheetLine line : lines.of(SheetLine.Kind.TRIP)) {
        if (line.run().outlet() != null && line.limit().exact().upper() != null) {
          double upper = line.limit().exact().upper().doubleValue();
          ratings.learn("alarm " + line.run().outlet().name().text(), upper, upper);
        }
      }
      new Working(lines, ratings, alarms, new Trouble(), true);
      return new Good(lines, ratings, alarms);
    }

    Working with(Trouble trouble) {
      return new Working(lines, ratings, alarms, trouble, false);
    }
  }

  /** In the middle of two limits; well within a single one. */
  private static double middle(Bounds bounds) {
    double lower = bounds.lower() == null ? Double.NaN : bounds.lower().doubleValue();
    double upper = bounds.upper() == null ? Double.NaN : bounds.upper().doubleValue();
    return Double.isNaN(lower) ? upper / 10 : Double.isNaN(upper) ? 2 * lower : (lower + upper) / 2;
  }

  // ---- the steps ----

  private void run(Stage.Run run) {
    run.moves().forEach(move -> trouble.move(bench, run, move));
    run.before().forEach(step -> act(step, step.act(), run, null));
    for (Point point : run.points()) {
      List<PlanStep> steps = point.stepsWithRest();
      for (int i = 0; i < steps.size(); i++) {
        PlanStep step = steps.get(i);
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

  private void activate(Act.Activate activate, Point point) {
    activations += activate.beside() ? 0 : 1;
    bench.press(activate);
    Rational on = point.onTime();
    Rational allowed = point.on().allowed();
    double share = on == null || allowed == null ? 0 : Math.min(1, on.over(allowed).doubleValue());
    delivered = generator.delivers(bench, bench.closed(plan.device()), true, share);
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
    List<Delivery> seen = delivered;
    if (trouble.runsAlone()) {
      seen = generator.delivers(bench, bench.closed(plan.device()), false, 0);
    }
    if (unit != null && held.containsKey(unit.role())) {
      seen = held.get(unit.role());
    }
    Physical truth =
        trip && read != null && sweep != null
            ? swept(sweep, plan.instruments().in(read.by().role()))
            : truth(line, unit, seen);
    Limit limit = line.limit();
    Analyzer.Range own = limit.range();
    Analyzer.Range range = own == null ? null : trouble.range(own, plan.measure(limit));
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
    return index(
        role + " " + limit.quantity() + " " + range.from() + " to " + range.to(),
        error == null ? Spread.RECTANGULAR : Spread.of(error.distribution()));
  }

  private int index(String key, Spread spread) {
    return indexes.computeIfAbsent(
        key,
        k -> {
          spreads.add(spread);
          return spreads.size() - 1;
        });
  }

  private Physical truth(SheetLine line, @Nullable Analyzer unit, List<Delivery> seen) {
    String quantity = line.limit().quantity();
    if (SheetLines.RMS.contains(quantity)) {
      return rms(line, unit, seen);
    }
    if (quantity.equals("time")) {
      return time(line);
    }
    if (quantity.startsWith("peak-")) {
      return peak(line, unit, seen);
    }
    return leakage(line, unit, seen);
  }

  /** What goes through the loads of an instrument; of the generator's display through any. */
  private List<Flow> flows(@Nullable Analyzer unit, List<Delivery> seen) {
    List<Flow> flows = new ArrayList<>();
    for (Delivery one : seen) {
      flow(flows, unit, one, trouble.comesOut(one.outlet()), false);
      for (Outlet other : plan.device().outlets()) {
        boolean beside = one.outlet() != null && one.mode().isOn(other);
        if (trouble.elsewhere() > 0 && beside && !other.equals(one.outlet())) {
          flow(flows, unit, one, other, true);
        }
      }
    }
    return flows;
  }

  private void flow(
      List<Flow> flows,
      @Nullable Analyzer unit,
      Delivery one,
      @Nullable Outlet at,
      boolean shared) {
    if (at == null) {
      return;
    }
    Outlet through = one.mode().through();
    List<Terminal> back = through == null ? at.poles() : through.poles();
    for (Analyzer any : unit == null ? plan.instruments().units() : List.of(unit)) {
      LoadBank bank = bench.between(any, at.poles(), back);
      if (bank != null) {
        double ohms = bench.dial(any.role());
        Accuracy error = bank.error();
        boolean none = error == null || Double.isInfinite(ohms) || ohms == 0;
        double half =
            none ? 0 : error.relative().doubleValue() + error.absolute().doubleValue() / ohms;
        String key = "load " + any.role() + " " + bank.from().id() + " " + ohms;
        int index = index(key, none ? Spread.RECTANGULAR : Spread.of(error.distribution()));
        flows.add(new Flow(one, ohms, half, index, shared));
      }
    }
  }

  private Physical rms(SheetLine line, @Nullable Analyzer unit, List<Delivery> seen) {
    List<Flow> flows = flows(unit, seen);
    if (learns && line.kind() == SheetLine.Kind.OUTPUT && line.hasNominal()) {
      learn(line, flows);
    }
    if (flows.isEmpty()) {
      return visit -> 0;
    }
    Flow flow = flows.get(0);
    Delivery one = flow.delivery();
    double power = generator.power(one, flow.ohms()) * (flow.shared() ? trouble.elsewhere() : 1);
    if (unit == null) {
      double shown = power * trouble.displayed(one);
      return visit -> shown;
    }
    String quantity = line.limit().quantity();
    // What the rule is about is what the generator keeps, whatever the load is off by.
    String kept =
        line.limit().rule().quantity() == null ? "" : line.limit().rule().quantity().text();
    if (Double.isInfinite(flow.ohms()) || flow.ohms() == 0) {
      boolean unknown = quantity.equals(flow.ohms() == 0 ? "current" : "voltage");
      return visit -> unknown ? Double.NaN : 0;
    }
    double value = of(power, flow.ohms(), kept.isEmpty() ? quantity : kept);
    double relative = quantity.equals(kept) ? 0 : flow.relative();
    return visit ->
        convert(
            value,
            kept.isEmpty() ? quantity : kept,
            quantity,
            flow.ohms() * (1 + (relative == 0 ? 0 : relative * visit.error(flow.index()))));
  }

  private static double of(double power, double ohms, String quantity) {
    return switch (quantity) {
      case "current" -> Math.sqrt(power / ohms);
      case "voltage" -> Math.sqrt(power * ohms);
      default -> power;
    };
  }

  private static double convert(double value, String from, String to, double ohms) {
    double power =
        switch (from) {
          case "current" -> value * value * ohms;
          case "voltage" -> value * value / ohms;
          default -> value;
        };
    return from.equals(to) ? value : of(power, ohms, to);
  }

  private void learn(SheetLine line, List<Flow> flows) {
    if (line.nominal() <= 0) {
      return;
    }
    if (flows.isEmpty()) {
      throw new AssertionError("nothing flows at " + line.point().id());
    }
    Flow flow = flows.get(0);
    Delivery one = flow.delivery();
    boolean asked =
        one.mode().equals(line.point().mode())
            && (Double.isNaN(line.setting()) || line.setting() == one.setting())
            && (line.ohms() == null || line.ohms().doubleValue() == flow.ohms());
    if (!asked) {
      throw new AssertionError("the steps do not bring about " + line.point().id() + ": " + flow);
    }
    double power = convert(line.nominal(), line.limit().quantity(), "power", flow.ohms());
    ratings.learn(one.outlet(), one.mode(), new Ratings.Known(one.setting(), flow.ohms(), power));
  }

  private Physical peak(SheetLine line, @Nullable Analyzer unit, List<Delivery> seen) {
    List<Flow> flows = flows(unit, seen);
    if (flows.isEmpty()) {
      return visit -> 0;
    }
    Flow flow = flows.get(0);
    Delivery one = flow.delivery();
    String quantity = line.limit().quantity();
    String state = quantity + " " + one.place() + " " + one.setting() + " " + flow.ohms();
    learn(state, line);
    learn(quantity + " of " + one.modeName(), line);
    double good = ratings.power(one.outlet(), one.mode(), one.setting(), flow.ohms());
    double share = good == 0 ? 1 : generator.power(one, flow.ohms()) / good;
    double value =
        Math.sqrt(share)
            * trouble.peak(
                one,
                quantity,
                trouble.other(one.place(), quantity, ratings.good(state), ratings.limit(state)),
                ratings);
    return visit -> value;
  }

  private void learn(String state, SheetLine line) {
    if (learns) {
      Bounds exact = line.limit().exact();
      double upper = exact.upper() == null ? 0 : exact.upper().doubleValue();
      ratings.learn(state, middle(exact), upper);
    }
  }

  /** Of what a time is a sheet does not say: it is read of the mode that the panel shows. */
  private Physical time(SheetLine line) {
    String place = generator.place();
    String state = "time " + place;
    learn(state, line);
    double value = trouble.stops(place, ratings.good(state), ratings.limit(state));
    return visit -> value;
  }

  /** By what of the generator an instrument's leads touch, and how that is set. */
  private Physical leakage(SheetLine line, @Nullable Analyzer unit, List<Delivery> seen) {
    Analyzer.Measure measure = plan.measure(line.limit());
    if (unit == null || measure == null) {
      return visit -> Double.NaN;
    }
    List<Terminal> jacks = measure.from() == null ? unit.terminals() : List.of(measure.from());
    TreeSet<String> touched = new TreeSet<>();
    String owner = "-";
    boolean back = measure.to() == null;
    for (Outlet outlet : plan.device().outlets()) {
      for (Terminal terminal : outlet.terminals()) {
        boolean carries = terminal.kind().carriesOutput();
        if (carries && jacks.stream().anyMatch(jack -> bench.joined(jack, terminal))) {
          touched.add(terminal.id());
          owner = outlet.name().text();
        }
        back |=
            terminal.kind() == TerminalKind.EARTH
                && measure.to() != null
                && bench.joined(measure.to(), terminal);
      }
    }
    boolean high = line.limit().quantity().equals("hf-leakage");
    if (!back || touched.isEmpty() || (high && seen.isEmpty())) {
      // Nothing leaks where nothing is connected; a resistance that is open has no number.
      boolean open = line.limit().quantity().equals("resistance");
      return visit -> open ? Double.NaN : 0;
    }
    String place = high ? seen.get(0).place() : owner;
    String how = high ? place + " " + seen.get(0).setting() : bench.settings();
    String quantity = line.limit().quantity();
    String state = quantity + " " + touched + " " + how;
    learn(state, line);
    double value = trouble.other(place, quantity, ratings.good(state), ratings.limit(state));
    return visit -> value;
  }

  /** The dial at which the alarm sounds; NaN where the end comes first. */
  private Physical swept(Stage.Swept sweep, Analyzer unit) {
    double from = sweep.from().si().doubleValue();
    double to = sweep.to().si().doubleValue();
    double step = sweep.step().si().doubleValue();
    for (Outlet plate : plan.device().outlets()) {
      if (!alarms.containsKey(plate.name().text())) {
        continue;
      }
      List<Terminal> poles = plate.poles();
      LoadBank bank =
          poles.size() < 2
              ? null
              : bench.between(unit, poles.subList(0, 1), poles.subList(1, poles.size()));
      if (bank == null) {
        double ohms = poles.size() < 2 ? 0 : bench.ohms(poles.get(0), poles.get(1));
        double at = generator.alarm(plate, ohms) ? from : Double.NaN;
        return visit -> at;
      }
      Accuracy error = bank.error();
      int index = index("swept " + unit.role(), Spread.RECTANGULAR);
      double sounds = generator.sounds(plate);
      double relative = error == null ? 0 : error.relative().doubleValue();
      double absolute = error == null ? 0 : error.absolute().doubleValue();
      return visit -> {
        double off = visit.error(index);
        for (double ohms = from; ohms <= to + step / 2; ohms += step) {
          if (ohms + off * (relative * ohms + absolute) >= sounds) {
            return ohms;
          }
        }
        return Double.NaN;
      };
    }
    return visit -> Double.NaN;
  }

  // ---- visits ----

  List<Item> items() {
    return items;
  }

  /** One visit: each error once, and each activation for itself. */
  final class Visit {
    private final SplittableRandom random;
    private final double[] errors = new double[spreads.size()];
    private final boolean[] failed = new boolean[activations + 1];

    Visit(SplittableRandom random) {
      this.random = random;
      for (int i = 0; i < errors.length; i++) {
        errors[i] = spreads.get(i).draw(random);
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

    boolean passes(Item item) {
      double written = trouble.written(item, shown(item), this) * item.range().step();
      double slack = 1e-6 * item.range().step();
      return written >= item.lower() - slack && written <= item.upper() + slack;
    }

    boolean fails() {
      for (Item item : items) {
        if (!passes(item)) {
          return true;
        }
      }
      return false;
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
