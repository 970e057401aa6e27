package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.bench.BenchState;
import passband.bench.Moment;
import passband.bench.Variable;
import passband.bench.Walk;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Series;
import passband.model.Terminal;
import passband.model.Termination;
import passband.plan.Act;
import passband.plan.Contacts;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Rational;
import passband.syntax.Tree;

/** Slips on the bench: a load, a setting, a mode or the instrument is not what the row asks for. */
final class BenchEffects {
  private final SheetLines lines;

  BenchEffects(SheetLines lines) {
    this.lines = lines;
  }

  /** The instances of a size; null for an effect that is none of these. */
  @Nullable List<Instance> of(Fault fault, Fault.Size size) {
    return switch (fault.effect()) {
      case "load-step" -> loadStep(fault, size);
      case "load-before" -> loadBefore(fault, size);
      case "setting-before" -> settingBefore(fault, size);
      case "mode-before" -> modeBefore(fault, size);
      case "error-edge" -> errorEdge(fault, size);
      case "error-scale" -> errorScale(fault, size);
      case "wider-range" -> widerRange(fault, size);
      default -> null;
    };
  }

  /**
   * Into another load there is another current or voltage: of the power that the sheet has there at
   * the same setting, else of the power that the row itself has.
   */
  private double intoOther(SheetLine line, Rational set, Rational other) {
    double ratio = other.over(set).doubleValue();
    double power = powerInto(line, other) / line.power();
    return switch (line.limit().quantity()) {
      case "current" -> line.nominal() * Math.sqrt(power / ratio);
      case "voltage" -> line.nominal() * Math.sqrt(power * ratio);
      default -> line.nominal() * power;
    };
  }

  /** Of a mode that is set in power in proportion, where no row has the very setting. */
  private double powerInto(SheetLine line, Rational load) {
    SheetLine nearest = null;
    for (SheetLine other : lines.output()) {
      boolean there = Place.of(other).equals(Place.of(line)) && Objects.equals(load, other.ohms());
      if (there && other.setting() == line.setting()) {
        return other.power();
      }
      if (there && (nearest == null || isNearer(other, nearest, line))) {
        nearest = other;
      }
    }
    return nearest == null || !OutputEffects.setsPower(line.mode())
        ? line.power()
        : nearest.power() * line.setting() / nearest.setting();
  }

  private static boolean isNearer(SheetLine one, SheetLine other, SheetLine to) {
    return Math.abs(one.setting() - to.setting()) < Math.abs(other.setting() - to.setting());
  }

  /**
   * A reading with the load that another point has. No power reaches an open or a short circuit;
   * null for the voltage of the one and the current of the other, which nobody knows.
   */
  private @Nullable Double withLoadOf(SheetLine line, Rational set, Point other) {
    if (other.load() != null) {
      return intoOther(line, set, other.load().si());
    }
    String unknown = other.termination() == Termination.OPEN ? "voltage" : "current";
    return line.limit().quantity().equals(unknown) ? null : 0.0;
  }

  private List<Instance> loadStep(Fault fault, Fault.Size size) {
    Map<String, List<Instance.Change>> loads = new LinkedHashMap<>();
    for (SheetLine line : lines.moved()) {
      Rational set = line.ohms();
      Rational other = set == null ? null : beside(line, set, size.value() > 0);
      if (set != null && other != null) {
        loads
            .computeIfAbsent(line.placeAndLoad(), l -> new ArrayList<>())
            .add(Instance.Change.to(line, intoOther(line, set, other)));
        asked(line.point(), Slot.LOAD, loads, line.placeAndLoad());
      }
    }
    return Instance.each(fault, size, loads);
  }

  /** A choice or a tick at a point that names what is set is not answered as it should be. */
  private void asked(
      Point point, Slot slot, Map<String, List<Instance.Change>> groups, String group) {
    List<Instance.Change> changes = groups.computeIfAbsent(group, g -> new ArrayList<>());
    for (Unjudged.Asked asked : lines.asked()) {
      SheetLine line = asked.line();
      boolean counted = changes.stream().anyMatch(change -> change.line() == line);
      if (line.point() == point && asked.names(slot) && !counted) {
        changes.add(asked.wrong());
      }
    }
  }

  /** The load's next value up or down; null where there is none. */
  private @Nullable Rational beside(SheetLine line, Rational set, boolean up) {
    Stage.Run run = line.run();
    LoadBank bank =
        WiredLoads.bank(
            lines.plan().instruments(), run.setup(), line.point().mode(), line.outlet(), set);
    return bank == null ? null : beside(bank.values(), set, up);
  }

  static @Nullable Rational beside(Series values, Rational set, boolean up) {
    Rational nearest = null;
    for (Series.Segment segment : values.segments()) {
      List<Rational> some = new ArrayList<>(List.of(segment.from(), segment.to()));
      if (segment.step() != null && segment.contains(set)) {
        some.add(up ? set.plus(segment.step()) : set.minus(segment.step()));
      }
      for (Rational one : some) {
        int order = one.compareTo(set);
        boolean nearer =
            nearest == null || (up ? one.compareTo(nearest) < 0 : one.compareTo(nearest) > 0);
        if (values.contains(one) && (up ? order > 0 : order < 0) && nearer) {
          nearest = one;
        }
      }
    }
    return nearest;
  }

  /** The reading of the row before in the same run, of the same quantity; null for the first. */
  static @Nullable SheetLine before(SheetLine line, List<SheetLine> among) {
    SheetLine before = null;
    for (SheetLine other : among) {
      if (other == line) {
        return before;
      }
      if (other.run() == line.run() && other.limit().quantity().equals(line.limit().quantity())) {
        before = other;
      }
    }
    return null;
  }

  /** One row at a time: whoever forgets to turn a dial does so once. */
  private List<Instance> loadBefore(Fault fault, Fault.Size size) {
    Map<String, Point> left = left("set-load", Variable.Kind.LOAD);
    Map<String, List<Instance.Change>> rows = new LinkedHashMap<>();
    for (SheetLine line : lines.moved()) {
      Rational set = line.ohms();
      Point before = left.get(line.point().id());
      Double truth = set == null || before == null ? null : withLoadOf(line, set, before);
      if (truth != null) {
        rows.computeIfAbsent(line.point().id(), p -> new ArrayList<>())
            .add(Instance.Change.to(line, truth));
        asked(line.point(), Slot.LOAD, rows, line.point().id());
      }
    }
    return Instance.each(fault, size, rows);
  }

  /**
   * By point, what still stands on the bench when its step is left out: the point that brought it
   * about. Without those at which nothing changes, or nobody knows what stood before.
   */
  private Map<String, Point> left(String step, Variable.Kind kind) {
    Map<String, Point> points = new HashMap<>();
    lines.plan().runs().forEach(run -> run.points().forEach(p -> points.put(p.id(), p)));
    Map<BenchState.Change, @Nullable Point> brought = new HashMap<>();
    Map<String, Point> left = new HashMap<>();
    for (Moment moment : Walk.of(lines.plan(), new Diagnostics())) {
      Point at = points.get(moment.point());
      if (at == null || !moment.kind().equals(step)) {
        continue;
      }
      for (BenchState.Change change : moment.before().changes(moment.after())) {
        if (change.what().kind() == kind && change.now() != null) {
          Point before = brought.get(new BenchState.Change(change.what(), null, change.was()));
          BenchState.Change value = new BenchState.Change(change.what(), null, change.now());
          boolean own = kind != Variable.Kind.MODE || isOf(at, change.now());
          if (own && before != null) {
            left.put(at.id(), before);
          }
          brought.put(value, own ? at : null);
        }
      }
    }
    return left;
  }

  /** Whether a mode is selected for the point itself, not for what delivers beside it. */
  private static boolean isOf(Point point, String mode) {
    return point.mode() != null && point.mode().title().equals(mode);
  }

  private List<Instance> settingBefore(Fault fault, Fault.Size size) {
    Map<String, List<Instance.Change>> rows = new LinkedHashMap<>();
    List<SheetLine> output = lines.moved();
    for (SheetLine line : output) {
      SheetLine before = before(line, output);
      if (before != null
          && before.mode().equals(line.mode())
          && !Double.isNaN(line.setting())
          && before.setting() != line.setting()) {
        rows.computeIfAbsent(line.point().id(), p -> new ArrayList<>())
            .add(Instance.Change.to(line, line.scaled(before.power() / line.power())));
        asked(line.point(), Slot.SETTING, rows, line.point().id());
      }
    }
    return Instance.each(fault, size, rows);
  }

  /**
   * The mode before, with the setting of the row: where it can be set, the power is the same. What
   * the outlet is left in when it was another one's mode, nobody knows, and neither what a contact
   * brings that does not activate the mode before.
   */
  private List<Instance> modeBefore(Fault fault, Fault.Size size) {
    Map<String, Point> left = left("select", Variable.Kind.MODE);
    Map<String, List<Instance.Change>> rows = new LinkedHashMap<>();
    for (SheetLine line : lines.moved()) {
      Point point = left.get(line.point().id());
      Mode before = point == null ? null : point.mode();
      Outlet outlet = line.outlet();
      if (point == null
          || before == null
          || line.point().setting() == null
          || (outlet != null && (!before.isOn(outlet) || ofAnother(point, line.point())))
          || !activates(LimitEffects.contact(line.point()), before, outlet)) {
        continue;
      }
      Series scale = before.setting();
      boolean taken =
          scale != null
              && before.settingKind() == line.mode().settingKind()
              && scale.contains(line.point().setting().si());
      rows.computeIfAbsent(line.point().id(), p -> new ArrayList<>())
          .add(Instance.Change.to(line, taken ? line.nominal() : Double.NaN));
      asked(line.point(), Slot.MODE, rows, line.point().id());
    }
    return Instance.each(fault, size, rows);
  }

  /** Whether a mode was selected for another outlet alone: the words name it. */
  private static boolean ofAnother(Point before, Point point) {
    for (PlanStep step : point.steps()) {
      if (step.act() instanceof Act.Select) {
        boolean named = step.words() != null && step.words().has(Slot.OUTLET);
        return named && !Objects.equals(before.outlet(), point.outlet());
      }
    }
    return false;
  }

  private boolean activates(@Nullable Terminal contact, Mode mode, @Nullable Outlet outlet) {
    boolean any = contact == null;
    for (Tree.Ref ref : mode.activateBy()) {
      Terminal own = Contacts.named(lines.plan().device(), outlet, ref);
      any |= own != null && contact != null && own.same(contact);
    }
    return any;
  }

  /** The common error of every range at one end, of a good generator. */
  private List<Instance> errorEdge(Fault fault, Fault.Size size) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.moved()) {
      changes.add(Instance.Change.by(line, truth -> atTheEdge(line.at(truth), size.value())));
    }
    return List.of(new Instance(fault, size, "every range", changes));
  }

  /** The error is known, so it is not drawn once more. */
  private static Observation atTheEdge(Observation seen, double end) {
    double shown = seen.truth() + end * seen.own().half();
    return new Observation(shown, seen.window(), Observation.NO_ERROR, seen.load());
  }

  private List<Instance> errorScale(Fault fault, Fault.Size size) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.moved()) {
      changes.add(Instance.Change.by(line, truth -> off(line.at(truth), size.value())));
    }
    return List.of(new Instance(fault, size, "every range", changes));
  }

  private static Observation off(Observation seen, double times) {
    return seen.at(seen.truth() + times * seen.own().half());
  }

  /** In one test at a time: a tick called {@code range} in it shows that. */
  private List<Instance> widerRange(Fault fault, Fault.Size size) {
    Map<String, List<Instance.Change>> tests = new LinkedHashMap<>();
    for (SheetLine line : lines.moved()) {
      Analyzer.Range wider = wider(line);
      if (wider != null) {
        tests
            .computeIfAbsent(line.run().id(), r -> new ArrayList<>())
            .add(Instance.Change.by(line, truth -> inRange(line, wider, truth)));
      }
    }
    for (Unjudged.Asked asked : lines.asked()) {
      List<Instance.Change> changes = tests.get(asked.line().run().id());
      if (changes != null && asked.isCalled("range")) {
        changes.add(asked.wrong());
      }
    }
    return Instance.each(fault, size, tests);
  }

  /** The next range above that of a reading; null for the widest. */
  private Analyzer.@Nullable Range wider(SheetLine line) {
    Analyzer.Measure measure = lines.plan().measure(line.limit());
    Analyzer.Range own = line.limit().range();
    Analyzer.Range wider = null;
    for (Analyzer.Range range :
        measure == null || own == null ? List.<Analyzer.Range>of() : measure.ranges()) {
      boolean above = own != null && range.to().compareTo(own.to()) > 0;
      if (above && (wider == null || range.to().compareTo(wider.to()) < 0)) {
        wider = range;
      }
    }
    return wider;
  }

  private Observation inRange(SheetLine line, Analyzer.Range range, double truth) {
    SheetLine.Errors own = line.errors();
    SheetLine.Errors other =
        new SheetLine.Errors(
            range.error(),
            lines.ownKey(line.limit(), range),
            own.load(),
            own.loadKey(),
            own.loadSpread());
    SheetLine there =
        new SheetLine(
            line.run(),
            line.point(),
            line.limit(),
            line.kind(),
            line.nominal(),
            other,
            line.uses());
    return there.at(truth, range.resolution());
  }
}
