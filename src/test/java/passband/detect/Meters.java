package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.detect.GeneratorModel.Delivered;
import passband.detect.Working.Physical;
import passband.limit.Bounds;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.syntax.TerminalKind;

/**
 * What is true at an instrument: of what flows from the generator through the leads and the loads
 * as they are. While a good generator is learnt, what a row asks for is what it gives in that
 * state.
 */
final class Meters {
  /** What one delivery makes of a load. */
  private record Flow(
      Delivered delivery, double ohms, double relative, int index, boolean shared) {}

  private final Plan plan;
  private final SheetLines lines;
  private final Trouble trouble;
  private final Ratings ratings;
  private final boolean learns;
  private final BenchModel bench;
  private final GeneratorModel generator;
  private final Map<String, Double> alarms;
  private final List<Spread> spreads = new ArrayList<>();
  private final Map<String, Integer> indexes = new HashMap<>();

  Meters(
      SheetLines lines,
      Working.Good good,
      BenchModel bench,
      GeneratorModel generator,
      Trouble trouble,
      boolean learns) {
    this.plan = lines.plan();
    this.lines = lines;
    this.bench = bench;
    this.generator = generator;
    this.trouble = trouble;
    this.ratings = good.ratings();
    this.alarms = good.alarms();
    this.learns = learns;
  }

  /** How each of the visit's errors is spread. */
  List<Spread> spreads() {
    return spreads;
  }

  /** In the middle of two limits; well within a single one. */
  static double middle(Bounds bounds) {
    double lower = bounds.lower() == null ? Double.NaN : bounds.lower().doubleValue();
    double upper = bounds.upper() == null ? Double.NaN : bounds.upper().doubleValue();
    return Double.isNaN(lower) ? upper / 10 : Double.isNaN(upper) ? 2 * lower : (lower + upper) / 2;
  }

  /** Which of the visit's errors it is. */
  int index(String key, Spread spread) {
    return indexes.computeIfAbsent(
        key,
        k -> {
          spreads.add(spread);
          return spreads.size() - 1;
        });
  }

  /** What is true of a reading, given what is delivered. */
  Physical truth(SheetLine line, @Nullable Analyzer unit, List<Delivered> seen) {
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
  private List<Flow> flows(@Nullable Analyzer unit, List<Delivered> seen) {
    List<Flow> flows = new ArrayList<>();
    for (Delivered one : seen) {
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
      Delivered one,
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

  private Physical rms(SheetLine line, @Nullable Analyzer unit, List<Delivered> seen) {
    List<Flow> flows = flows(unit, seen);
    if (learns && line.kind() == SheetLine.Kind.OUTPUT && line.hasNominal()) {
      learn(line, flows);
    }
    if (flows.isEmpty()) {
      return visit -> 0;
    }
    Flow flow = flows.get(0);
    Delivered one = flow.delivery();
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
    double value = of(power, flow.ohms(), kept);
    double relative = quantity.equals(kept) ? 0 : flow.relative();
    return visit ->
        convert(
            value,
            kept,
            quantity,
            flow.ohms() * (1 + (relative == 0 ? 0 : relative * visit.error(flow.index()))));
  }

  /** What the rule of a reading, or of what is read beside it, is about; else the power. */
  private String kept(SheetLine line) {
    List<SheetLine> all = new ArrayList<>(List.of(line));
    all.addAll(lines.read());
    for (SheetLine one : all) {
      if (one.point() == line.point()
          && one.kind() == line.kind()
          && one.limit().rule().quantity() != null) {
        return one.limit().rule().quantity().text();
      }
    }
    return "power";
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
    Delivered one = flow.delivery();
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

  private Physical peak(SheetLine line, @Nullable Analyzer unit, List<Delivered> seen) {
    List<Flow> flows = flows(unit, seen);
    if (flows.isEmpty()) {
      return visit -> 0;
    }
    Flow flow = flows.get(0);
    Delivered one = flow.delivery();
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
      double good = exact.lower() == null && exact.upper() == null ? 0 : middle(exact);
      for (WorkedOut value : line.uses()) {
        good = value.nominals().get(value.parts().indexOf(line));
      }
      ratings.learn(state, good, upper);
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
  private Physical leakage(SheetLine line, @Nullable Analyzer unit, List<Delivered> seen) {
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
          // What leaks through case and mains inlet at once is read for the one that the row names.
          boolean named = line.run().outlet() != null && owner.equals(name(line.run().outlet()));
          owner = named ? owner : name(outlet);
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

  private static String name(Outlet outlet) {
    return outlet.name().text();
  }

  /** The dial at which the alarm sounds; NaN where the end comes first. */
  Physical swept(Stage.Swept sweep, Analyzer unit) {
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
}
