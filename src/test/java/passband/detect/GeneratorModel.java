package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Contacts;
import passband.plan.Figure;
import passband.syntax.Tree;

/** A generator: what its panel shows, and what it delivers while contacts are closed. */
final class GeneratorModel {
  /**
   * What one outlet delivers.
   *
   * @param outlet what the panel calls it; it may come out elsewhere
   * @param setting in SI; NaN where there is none, or where it could not be set
   * @param on how long it has been on, as a share of what the duty allows; 0 where nothing says
   */
  record Delivered(@Nullable Outlet outlet, Mode mode, double setting, double on) {
    String outletName() {
      return outlet == null ? "-" : outlet.name().text();
    }

    String modeName() {
      return mode.name().text();
    }

    /** Its mode and outlet. */
    String place() {
      return outlet == null ? modeName() : modeName() + " " + outletName();
    }

    Delivered at(double other) {
      return new Delivered(outlet, mode, other, on);
    }

    Delivered from(Outlet other) {
      return new Delivered(other, mode, setting, on);
    }
  }

  /** Of a monitor that no row reads: more than any plate has. */
  private static final double OPEN = 1e6;

  private final Device device;
  private final Ratings ratings;
  private final Trouble trouble;

  /** The contact monitor of an outlet: above how many ohm its alarm is on. */
  private final Map<String, Double> alarms;

  /** By outlet, the one that was touched last at the end. */
  private final Map<String, Mode> selected = new LinkedHashMap<>();

  private final Map<String, Double> settings = new HashMap<>();
  private @Nullable Outlet shown;

  GeneratorModel(Device device, Ratings ratings, Trouble trouble, Map<String, Double> alarms) {
    this.device = device;
    this.ratings = ratings;
    this.trouble = trouble;
    this.alarms = alarms;
  }

  private static String name(@Nullable Outlet outlet) {
    return outlet == null ? "-" : outlet.name().text();
  }

  /** Whether the panel shows a mode. */
  boolean shows(@Nullable Mode mode) {
    return mode == null || mode.equals(selected.get(name(shown)));
  }

  /** Whether the panel shows a setting. */
  boolean shows(@Nullable Figure setting) {
    Mode mode = selected.get(name(shown));
    return setting == null
        || mode == null
        || setting.si().doubleValue() == delivery(name(shown), mode, 0).setting();
  }

  /** The mode and the outlet that the panel shows. */
  String place() {
    Mode mode = selected.get(name(shown));
    return mode == null ? "-" : delivery(name(shown), mode, 0).place();
  }

  /**
   * A mode is selected.
   *
   * @param here whether the words name the outlet; else it is selected for all that have it
   */
  void select(@Nullable Outlet outlet, Mode mode, boolean here) {
    shown = outlet;
    for (Outlet other : here ? List.<Outlet>of() : mode.outlets()) {
      selected.remove(name(other));
      selected.put(name(other), mode);
    }
    selected.remove(name(outlet));
    selected.put(name(outlet), mode);
  }

  /** The knob of the outlet that the panel shows; a value that its mode has not cannot be set. */
  void adjust(Figure setting, boolean here) {
    for (Map.Entry<String, Mode> one : selected.entrySet()) {
      Mode mode = one.getValue();
      if (one.getKey().equals(name(shown)) || (!here && mode.equals(selected.get(name(shown))))) {
        boolean taken = mode.setting() != null && mode.setting().contains(setting.si());
        double value = taken ? setting.si().doubleValue() : Double.NaN;
        settings.put(one.getKey() + " " + mode.name().text(), value);
      }
    }
  }

  /**
   * What is delivered; the first contact that is closed wins, and a bad plate lets none through.
   */
  List<Delivered> delivers(BenchModel bench, List<Terminal> closed, boolean pressed, double on) {
    List<Delivered> all = new ArrayList<>();
    for (Map.Entry<String, Mode> one : selected.entrySet()) {
      if (trouble.runsAlone()) {
        all.add(delivery(one.getKey(), one.getValue(), on));
      }
    }
    for (Terminal contact : closed) {
      Delivered asked = trouble.works(contact) ? asked(contact, on) : null;
      if (asked != null && all.isEmpty()) {
        all.add(asked);
      }
    }
    Mode mode = selected.get(name(shown));
    if (pressed && closed.isEmpty() && mode != null && mode.activateBy().isEmpty()) {
      all.add(delivery(name(shown), mode, on));
    }
    all.removeIf(one -> inhibited(one.mode(), bench));
    return all;
  }

  private Delivered delivery(String outlet, Mode mode, double on) {
    double setting = settings.getOrDefault(outlet + " " + mode.name().text(), Double.NaN);
    return new Delivered(device.outlet(outlet), mode, setting, on);
  }

  /** Of outlets that share a contact the one that was touched last. */
  private @Nullable Delivered asked(Terminal contact, double on) {
    Delivered last = null;
    for (Map.Entry<String, Mode> one : selected.entrySet()) {
      Outlet outlet = device.outlet(one.getKey());
      for (Tree.Ref ref : one.getValue().activateBy()) {
        Terminal own = Contacts.named(device, outlet, ref);
        if (own != null && own.same(contact)) {
          last = delivery(one.getKey(), one.getValue(), on);
        }
      }
    }
    return last;
  }

  /** Whether a bad plate sounds the alarm when contacts are closed. */
  boolean alarms(BenchModel bench, List<Terminal> closed) {
    boolean alarms = false;
    for (Terminal contact : closed) {
      Delivered asked = trouble.works(contact) ? asked(contact, 0) : null;
      Outlet plate = asked == null ? null : asked.mode().through();
      alarms |= plate != null && alarm(plate, halves(plate, bench));
    }
    return alarms;
  }

  private boolean inhibited(Mode mode, BenchModel bench) {
    Outlet plate = mode.through();
    return plate != null && !trouble.ignoresAlarm() && alarm(plate, halves(plate, bench));
  }

  private static double halves(Outlet plate, BenchModel bench) {
    List<Terminal> poles = plate.poles();
    return poles.size() < 2 ? 0 : bench.ohms(poles.get(0), poles.get(1));
  }

  /** From how many ohm between its halves the alarm of an outlet sounds; infinite for never. */
  double sounds(Outlet plate) {
    String name = plate.name().text();
    double at = alarms.getOrDefault(name, OPEN);
    boolean never = trouble.neverAlarms() || plate.poles().size() < 2;
    return never
        ? Double.POSITIVE_INFINITY
        : at * trouble.later(plate, at, ratings.limit("alarm " + name));
  }

  /** Whether the alarm of an outlet sounds at a resistance between its halves. */
  boolean alarm(Outlet plate, double ohms) {
    return sounds(plate) < Double.POSITIVE_INFINITY && ohms >= sounds(plate);
  }

  /** What it delivers into a load. */
  double power(Delivered one, double ohms) {
    if (Double.isNaN(one.setting()) && one.mode().setting() != null) {
      return Double.NaN;
    }
    return Math.max(0, trouble.power(one, ohms, ratings));
  }
}
