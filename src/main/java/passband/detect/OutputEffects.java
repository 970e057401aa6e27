package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import passband.model.Device.Mode;
import passband.model.Series;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;

/** Faults that change the power of the output: by a factor at each reading. */
final class OutputEffects {
  private final SheetLines lines;
  private final List<SheetLine> output;

  /** Those of them that a fault is worked out for. */
  private final List<SheetLine> moved;

  private final Map<Place, SheetLine> greatest = new LinkedHashMap<>();

  OutputEffects(SheetLines lines) {
    this.lines = lines;
    this.output = lines.output();
    this.moved = lines.moved();
    for (SheetLine line : output) {
      greatest.merge(Place.of(line), line, (a, b) -> rank(b) > rank(a) ? b : a);
    }
  }

  /** Of one row more on the same sheet: sizes are those of the sheet as it is. */
  OutputEffects(OutputEffects sheet, SheetLine more) {
    this.lines = sheet.lines;
    this.output = new ArrayList<>(sheet.output);
    this.output.add(more);
    this.moved = List.of(more);
    this.greatest.putAll(sheet.greatest);
  }

  /** Of the sheet with one row more: sizes are those of that sheet. */
  private OutputEffects(OutputEffects sheet, SheetLine more, Map<Place, SheetLine> greatest) {
    this.lines = sheet.lines;
    this.output = new ArrayList<>(sheet.output);
    this.output.add(more);
    this.moved = new ArrayList<>(sheet.moved);
    this.moved.add(more);
    this.greatest.putAll(greatest);
  }

  /**
   * Of the sheet with one row more, where that row is the one that sizes are multiples of; null
   * where it is not.
   */
  @Nullable OutputEffects resizedBy(SheetLine more) {
    SheetLine was = greatest.get(Place.of(more));
    if (was != null && rank(was) >= rank(more)) {
      return null;
    }
    Map<Place, SheetLine> resized = new LinkedHashMap<>(greatest);
    resized.put(Place.of(more), more);
    return new OutputEffects(this, more, resized);
  }

  /** Readings with both limits before others, a greater setting before a lesser one. */
  private static double rank(SheetLine line) {
    boolean both = line.limit().exact().lower() != null && line.limit().exact().upper() != null;
    double setting = Double.isNaN(line.setting()) ? 0 : line.setting();
    return (both ? 1e12 : 0) + setting;
  }

  /**
   * By which factor the power is off at a size, which may be a multiple of the mode's tolerance.
   */
  double factor(SheetLine line, Fault.Size size) {
    if (!size.ofTolerance()) {
      return 1 + size.value();
    }
    return 1
        + Math.abs(size.value()) * tolerance(line, size.value() > 0) * Math.signum(size.value());
  }

  /** The mode's tolerance of power above or below the nominal, at its greatest tested setting. */
  double tolerance(SheetLine line, boolean above) {
    SheetLine at = greatest.getOrDefault(Place.of(line), line);
    var end = above ? at.limit().exact().upper() : at.limit().exact().lower();
    var other = above ? at.limit().exact().lower() : at.limit().exact().upper();
    if (end != null) {
      return Math.abs(at.factor(end.doubleValue()) - 1);
    }
    return other == null ? 0 : Math.abs(at.factor(other.doubleValue()) - 1);
  }

  /** The instances of a size; null for an effect that is none of these. */
  @Nullable List<Instance> of(Fault fault, Fault.Size size) {
    return switch (fault.effect()) {
      case "gain" -> gain(fault, size);
      case "zero" -> each(fault, size, this::byMode, l -> 1 + size.value() * most(l) / l.power());
      case "bend" -> each(fault, size, this::byPlace, l -> bent(l, size));
      case "voltage-limit" -> limited(fault, size, true);
      case "current-limit" -> limited(fault, size, false);
      case "step-down" -> each(fault, size, this::byMode, this::stepDown);
      case "stuck-least" -> each(fault, size, this::byMode, l -> least(l) / l.power());
      case "stuck-greatest" -> each(fault, size, this::byMode, l -> most(l) / l.power());
      case "other-scale" -> otherScale(fault, size);
      case "fade" -> fade(fault, size);
      default -> null;
    };
  }

  private List<Instance> gain(Fault fault, Fault.Size size) {
    ToDoubleFunction<SheetLine> off = line -> factor(line, size);
    return switch (fault.over()) {
      case "all" -> each(fault, size, line -> "all modes", off);
      case "outlet" -> each(fault, size, SheetLine::outletName, off);
      case "mode" -> each(fault, size, this::byMode, off);
      case "half" ->
          each(
              fault,
              size,
              this::byPlace,
              line -> line.setting() > greatestSetting(line) / 2 ? factor(line, size) : 1);
      case "high-load" ->
          each(fault, size, this::byMode, line -> aboveRated(line) ? factor(line, size) : 1);
      default -> throw new IllegalArgumentException(fault.over());
    };
  }

  private String byMode(SheetLine line) {
    return line.mode().name().text();
  }

  private String byPlace(SheetLine line) {
    return Place.of(line).text();
  }

  /** One instance for each group; a reading whose power stays is not changed. */
  private List<Instance> each(
      Fault fault,
      Fault.Size size,
      Function<SheetLine, String> group,
      ToDoubleFunction<SheetLine> factor) {
    return each(moved, fault, size, group, factor);
  }

  private static List<Instance> each(
      List<SheetLine> some,
      Fault fault,
      Fault.Size size,
      Function<SheetLine, String> group,
      ToDoubleFunction<SheetLine> factor) {
    Map<String, List<Instance.Change>> groups = new LinkedHashMap<>();
    for (SheetLine line : some) {
      List<Instance.Change> changes =
          groups.computeIfAbsent(group.apply(line), g -> new ArrayList<>());
      double times = factor.applyAsDouble(line);
      if (times != 1 && Double.isFinite(times)) {
        changes.add(Instance.Change.to(line, line.scaled(times)));
      }
    }
    List<Instance> instances = Instance.each(fault, size, groups);
    return instances.isEmpty() ? List.of(Instance.notRead(fault, size, "output")) : instances;
  }

  // ---- what a mode can be set to, and what it then delivers ----

  /** Whether a mode is set in what it delivers, not in levels. */
  static boolean setsPower(Mode mode) {
    QuantityKind kind = mode.settingKind();
    return kind != null && (kind.name().equals("power") || kind.name().equals("energy"));
  }

  private static double greatestSetting(SheetLine line) {
    Series setting = line.mode().setting();
    return setting == null ? line.setting() : setting.highest().doubleValue();
  }

  /** The power at the greatest setting, by the mode's scale or else of what is tested. */
  double most(SheetLine line) {
    double most = 0;
    for (SheetLine other : output) {
      if (other.mode().equals(line.mode()) && sameLoad(other, line)) {
        most = Math.max(most, other.power());
      }
    }
    Series setting = line.mode().setting();
    boolean isSetting =
        setsPower(line.mode()) && Math.abs(line.power() / line.setting() - 1) < 1e-6;
    return setting != null && isSetting ? setting.highest().doubleValue() : most;
  }

  private double least(SheetLine line) {
    double least = Double.POSITIVE_INFINITY;
    for (SheetLine other : output) {
      if (other.mode().equals(line.mode()) && sameLoad(other, line)) {
        least = Math.min(least, other.power());
      }
    }
    return least;
  }

  private static boolean sameLoad(SheetLine one, SheetLine other) {
    return Objects.equals(one.ohms(), other.ohms());
  }

  private double bent(SheetLine line, Fault.Size size) {
    double share = line.setting() / greatestSetting(line);
    double less = size.ofTolerance() ? size.value() * tolerance(line, false) : size.value();
    return Double.isNaN(share) ? 1 : 1 - less * share;
  }

  private double stepDown(SheetLine line) {
    Series setting = line.mode().setting();
    if (setting == null || line.point().setting() == null) {
      return 1;
    }
    Rational at = line.point().setting().si();
    for (Series.Segment segment : setting.segments()) {
      if (segment.step() != null
          && segment.contains(at)
          && at.minus(segment.step()).compareTo(segment.from()) >= 0) {
        double lower = line.setting() - segment.step().doubleValue();
        return setsPower(line.mode())
            ? lower / line.setting()
            : between(line, lower) / line.power();
      }
    }
    return 1;
  }

  /** The power at a setting that is no power: on the straight line between the tested ones. */
  private double between(SheetLine line, double setting) {
    SheetLine below = null;
    for (SheetLine other : output) {
      boolean there = Place.of(other).equals(Place.of(line)) && sameLoad(other, line);
      if (there
          && other.setting() < line.setting()
          && (below == null || other.setting() > below.setting())) {
        below = other;
      }
    }
    if (below == null) {
      return line.power();
    }
    double share = (line.setting() - setting) / (line.setting() - below.setting());
    return line.power() - share * (line.power() - below.power());
  }

  private static boolean aboveRated(SheetLine line) {
    Series rated = line.mode().loads();
    Rational load = line.ohms();
    return rated != null && load != null && load.compareTo(rated.highest()) > 0;
  }

  /**
   * A generator reaches its rated voltage and its rated current at the greatest setting into the
   * rated load; a limit below cuts the power that a load takes.
   */
  private List<Instance> limited(Fault fault, Fault.Size size, boolean voltage) {
    return each(
        fault,
        size,
        this::byMode,
        line -> {
          Series rated = line.mode().loads();
          Rational load = line.ohms();
          if (rated == null || load == null) {
            return 1;
          }
          Rational at = voltage ? rated.highest() : rated.lowest();
          double ratio = voltage ? at.over(load).doubleValue() : load.over(at).doubleValue();
          double greatest = size.value() * size.value() * mostInto(line, at) * ratio;
          return Math.min(1, greatest / line.power());
        });
  }

  /** The power at the greatest setting into a load; of the row's own where nothing says. */
  private double mostInto(SheetLine line, Rational load) {
    Series setting = line.mode().setting();
    if (setting != null && setsPower(line.mode())) {
      return setting.highest().doubleValue();
    }
    double most = 0;
    for (SheetLine other : output) {
      if (other.mode().equals(line.mode()) && Objects.equals(load, other.ohms())) {
        most = Math.max(most, other.power());
      }
    }
    return most == 0 ? most(line) : most;
  }

  /** A pulse does not fall while it is on. */
  private List<Instance> fade(Fault fault, Fault.Size size) {
    List<SheetLine> steady = new ArrayList<>(moved);
    steady.removeIf(line -> LimitEffects.isPulse(line.mode()));
    return lines.plan().device().modes().stream().allMatch(LimitEffects::isPulse)
        ? List.of()
        : each(steady, fault, size, this::byMode, line -> faded(line, size));
  }

  private double faded(SheetLine line, Fault.Size size) {
    Rational allowed = line.point().on().allowed();
    Rational on = line.point().onTime();
    if (allowed == null || on == null) {
      return 1;
    }
    double share = Math.min(1, on.over(allowed).doubleValue());
    return 1 - size.value() * tolerance(line, false) * share;
  }

  private List<Instance> otherScale(Fault fault, Fault.Size size) {
    List<Instance> instances = new ArrayList<>();
    Map<Place, List<SheetLine>> places = new LinkedHashMap<>();
    moved.forEach(line -> places.computeIfAbsent(Place.of(line), p -> new ArrayList<>()).add(line));
    places.forEach(
        (place, some) -> {
          for (Mode other : lines.plan().device().modes()) {
            Series scale = other.setting();
            Series own = some.get(0).mode().setting();
            boolean onOutlet = some.get(0).outlet() != null && other.isOn(some.get(0).outlet());
            if (scale == null
                || own == null
                || !onOutlet
                || other.equals(some.get(0).mode())
                || !setsPower(other)
                || !setsPower(some.get(0).mode())
                || scale.highest().equals(own.highest())) {
              continue;
            }
            double times = scale.highest().over(own.highest()).doubleValue();
            List<Instance.Change> changes = new ArrayList<>();
            for (SheetLine line : some) {
              changes.add(Instance.Change.to(line, line.scaled(times)));
            }
            instances.add(
                new Instance(fault, size, place.text() + " as " + other.name().text(), changes));
          }
        });
    return instances;
  }
}
