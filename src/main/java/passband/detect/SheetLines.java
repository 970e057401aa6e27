package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.limit.Uncertainty;
import passband.model.Analyzer;
import passband.model.Reader;
import passband.plan.Delivery;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * The readings of a sheet as a fault finds them: of the first phase alone, since an adjustment
 * changes the generator.
 */
final class SheetLines {
  static final List<String> RMS = List.of("power", "current", "voltage", "energy");
  private static final List<String> PEAKS = List.of("peak-voltage", "peak-current");
  static final List<String> MAINS = List.of("earth-leakage", "touch-current", "patient-leakage");

  private final Plan plan;
  private final List<Stage.Run> runs = new ArrayList<>();
  private final List<SheetLine> all = new ArrayList<>();
  private final List<SheetLine> unjudged = new ArrayList<>();
  private final List<Unjudged.Asked> asked = new ArrayList<>();
  private int workedOut;
  private int unknownErrors;

  private SheetLines(Plan plan) {
    this.plan = plan;
  }

  static SheetLines of(Plan plan) {
    SheetLines lines = new SheetLines(plan);
    String phase = plan.phases().isEmpty() ? null : plan.phases().get(0);
    for (Stage.Run run : plan.runs()) {
      boolean first = run.phase() == null || run.phase().equals(phase);
      if (first && run.when().adjusted().isEmpty()) {
        lines.runs.add(run);
        run.points().forEach(point -> lines.add(run, point));
        lines.asked.addAll(Unjudged.asked(run));
      }
    }
    lines.workOut();
    return lines;
  }

  private void workOut() {
    Map<String, SheetLine> byId = new HashMap<>();
    all.forEach(line -> byId.put(line.limit().id(), line));
    unjudged.forEach(line -> byId.put(line.limit().id(), line));
    WorkedOuts worked = new WorkedOuts(plan, byId);
    for (Stage.Run run : runs) {
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          if (isWorkedOut(limit, kind(run, point, limit.quantity(), null))) {
            worked.add(run, point, limit);
          }
        }
      }
    }
    workedOut = worked.notCounted();
  }

  private static boolean isWorkedOut(Limit limit, SheetLine.Kind kind) {
    return limit.read().by() == null && kind != SheetLine.Kind.TRIP;
  }

  Plan plan() {
    return plan;
  }

  List<Stage.Run> runs() {
    return List.copyOf(runs);
  }

  List<SheetLine> all() {
    return List.copyOf(all);
  }

  /** What is read for a calculation and has no limits of its own. */
  List<SheetLine> unjudged() {
    return List.copyOf(unjudged);
  }

  /** All that is read. */
  List<SheetLine> read() {
    List<SheetLine> some = new ArrayList<>(all);
    some.addAll(unjudged);
    return some;
  }

  /** The choices with a right answer and the ticks at points. */
  List<Unjudged.Asked> asked() {
    return List.copyOf(asked);
  }

  /** How many limits of derived values are left out: they can only raise what is caught. */
  int workedOut() {
    return workedOut;
  }

  /** How many readings have an error that nobody knows. */
  int unknownErrors() {
    return unknownErrors;
  }

  List<SheetLine> of(SheetLine.Kind kind) {
    List<SheetLine> some = new ArrayList<>(all);
    some.removeIf(line -> line.kind() != kind);
    return some;
  }

  /** The readings of output with limits and a nominal value: what a gain error moves. */
  List<SheetLine> output() {
    List<SheetLine> some = of(SheetLine.Kind.OUTPUT);
    some.removeIf(line -> !line.hasNominal() || line.nominal() <= 0);
    return some;
  }

  /** The same with those that values are worked out from, without limits of their own. */
  List<SheetLine> moved() {
    List<SheetLine> some = output();
    for (SheetLine line : unjudged) {
      if (line.kind() == SheetLine.Kind.OUTPUT && line.nominal() > 0 && !line.uses().isEmpty()) {
        some.add(line);
      }
    }
    return some;
  }

  /** Every reading of a peak. */
  List<SheetLine> peaks() {
    List<SheetLine> some = of(SheetLine.Kind.PEAK);
    unjudged.stream().filter(line -> line.kind() == SheetLine.Kind.PEAK).forEach(some::add);
    return some;
  }

  /** Every reading of output, whether it has a nominal value or not. */
  List<SheetLine> delivered() {
    List<SheetLine> some = of(SheetLine.Kind.OUTPUT);
    for (SheetLine line : unjudged) {
      if (line.kind() == SheetLine.Kind.OUTPUT && !line.uses().isEmpty()) {
        some.add(line);
      }
    }
    return some;
  }

  /** The same by mode and outlet, in the order of the sheet. */
  Map<Place, List<SheetLine>> places() {
    Map<Place, List<SheetLine>> places = new LinkedHashMap<>();
    for (SheetLine line : output()) {
      Place place = Place.of(line);
      places.computeIfAbsent(place, p -> new ArrayList<>()).add(line);
    }
    return places;
  }

  /** Some readings of output by mode, outlet and load. */
  static Map<String, List<SheetLine>> byLoad(List<SheetLine> some) {
    Map<String, List<SheetLine>> groups = new LinkedHashMap<>();
    for (SheetLine line : some) {
      groups.computeIfAbsent(line.placeAndLoad(), k -> new ArrayList<>()).add(line);
    }
    return groups;
  }

  private void add(Stage.Run run, Point point) {
    List<SheetLine> own = new ArrayList<>();
    for (Limit limit : point.limits()) {
      SheetLine.Kind kind = kind(run, point, limit.quantity(), limit.read().by());
      if (!isWorkedOut(limit, kind)) {
        own.add(line(run, point, limit, kind));
      }
    }
    all.addAll(own);
    Unjudged maker = new Unjudged(plan);
    for (Point.Reading reading : point.readings()) {
      SheetLine.Kind kind = kind(run, point, reading.quantity(), reading.by());
      SheetLine line = maker.reading(run, point, reading, kind, own);
      unjudged.add(line);
      own.add(line);
    }
  }

  /** A reading, on the sheet or proposed for it. */
  SheetLine line(Stage.Run run, Point point, Limit limit, SheetLine.Kind kind) {
    return new SheetLine(
        run, point, limit, kind, nominal(limit), errors(run, point, limit), new ArrayList<>());
  }

  private static SheetLine.Kind kind(
      Stage.Run run, Point point, String quantity, @Nullable String by) {
    if (run.sweep() != null && by == null && run.sweep().as().equals(quantity)) {
      return SheetLine.Kind.TRIP;
    }
    if (run.output() == Delivery.INHIBITED) {
      return SheetLine.Kind.INHIBITED;
    }
    if (MAINS.contains(quantity)) {
      return SheetLine.Kind.MAINS_LEAKAGE;
    }
    if (run.output() != Delivery.ON || point.mode() == null) {
      return SheetLine.Kind.OTHER;
    }
    return quantity.equals("hf-leakage")
        ? SheetLine.Kind.HF_LEAKAGE
        : quantity.equals("time")
            ? SheetLine.Kind.TIME
            : PEAKS.contains(quantity)
                ? SheetLine.Kind.PEAK
                : RMS.contains(quantity) ? SheetLine.Kind.OUTPUT : SheetLine.Kind.OTHER;
  }

  private static double nominal(Limit limit) {
    Bounds exact = limit.exact();
    Real nominal = exact.nominal();
    if (nominal != null) {
      return nominal.doubleValue();
    }
    return exact.lower() == null || exact.upper() == null
        ? Double.NaN
        : (exact.lower().doubleValue() + exact.upper().doubleValue()) / 2;
  }

  private SheetLine.Errors errors(Stage.Run run, Point point, Limit limit) {
    Uncertainty uncertainty = limit.uncertainty();
    if (uncertainty == null) {
      unknownErrors += limit.range() == null ? 0 : 1;
      return SheetLine.NO_ERRORS;
    }
    return new SheetLine.Errors(
        uncertainty.error(),
        ownKey(limit, limit.range()),
        uncertainty.load().doubleValue() * direction(limit),
        loadKey(plan, run, point),
        Spread.of(uncertainty.loadSpread()));
  }

  /** Which error of a range it is: one for each unit, quantity and range. */
  String ownKey(Limit limit, Analyzer.@Nullable Range range) {
    return ownKey(plan, limit.quantity(), limit.read().by(), range);
  }

  static String ownKey(
      Plan plan, String quantity, @Nullable String role, Analyzer.@Nullable Range range) {
    if (role == null) {
      return quantity;
    }
    Reader reader = role.equals(plan.device().role()) ? plan.device() : plan.instruments().in(role);
    String to = range == null ? "" : range.from() + ".." + range.to();
    return reader.role() + " " + quantity + " " + to;
  }

  /** One error for each load of an instrument and each value that it is set to. */
  static String loadKey(Plan plan, Stage.Run run, Point point) {
    Rational ohms = point.load() == null ? null : point.load().si();
    if (ohms == null) {
      return "";
    }
    Analyzer.LoadBank bank =
        WiredLoads.bank(plan.instruments(), run.setup(), point.mode(), point.outlet(), ohms);
    return (bank == null ? "" : bank.from().id() + " " + bank.to().id() + " ") + ohms;
  }

  /** A greater load makes less current of a power, and more voltage. */
  private static int direction(Limit limit) {
    String from = limit.rule().quantity() == null ? "" : limit.rule().quantity().text();
    return switch (limit.quantity()) {
      case "current" -> -1;
      case "power" -> from.equals("voltage") ? -1 : 1;
      default -> 1;
    };
  }
}
