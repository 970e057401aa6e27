package passband.judge;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Rational;
import passband.quantity.Unit;

/**
 * A peak value is never below the RMS value of the same wave: the square of every instantaneous
 * value is at most that of the peak, and so is their mean. Holds whatever is calculated from the
 * two and whatever that is called; the RMS value may come from the other quantity through the load
 * (Ohm's law).
 */
final class PeakAndRms {
  private final Map<String, DerivedValue.Part> parts;
  private final @Nullable Rational load;

  private PeakAndRms(Item.Where where, Map<String, DerivedValue.Part> parts) {
    this.parts = parts;
    Unit unit = where.load() == null ? null : WrittenValue.unit(where.loadUnit());
    this.load =
        where.load() == null || unit == null
            ? null
            : Rational.of(where.load()).times(unit.factor());
  }

  /**
   * Which peak is below which RMS value among the parts of a derived value, in words; null where
   * none is.
   */
  static @Nullable String reversed(Item.Derived derived, Map<String, DerivedValue.Part> parts) {
    return new PeakAndRms(derived.where(), parts).reversed();
  }

  /**
   * Which of two readings of one point is a peak below the other's RMS value, in words; null where
   * none is.
   */
  static @Nullable String reversed(DerivedValue.Part one, DerivedValue.Part other) {
    return new PeakAndRms(
            one.item().where(),
            Map.of(one.item().scale().quantity(), one, other.item().scale().quantity(), other))
        .reversed();
  }

  private @Nullable String reversed() {
    Map<String, Rational> rms = new HashMap<>();
    through("voltage", "current", true, rms);
    through("current", "voltage", false, rms);
    for (String quantity : new String[] {"voltage", "current"}) {
      DerivedValue.Part peak = parts.get("peak-" + quantity);
      Rational effective = rms.get(quantity);
      if (peak != null && effective != null && peak.si().compareTo(effective) < 0) {
        return "peak-" + quantity + " is below " + source(quantity);
      }
    }
    return null;
  }

  private String source(String quantity) {
    String other = quantity.equals("voltage") ? "current times the load" : "voltage over the load";
    return parts.containsKey(quantity) ? quantity : other;
  }

  /** The RMS value of a quantity: read, or from the other one through the load. */
  private void through(String quantity, String other, boolean times, Map<String, Rational> rms) {
    DerivedValue.Part own = parts.get(quantity);
    DerivedValue.Part from = parts.get(other);
    if (own != null) {
      rms.put(quantity, own.si());
    } else if (from != null && load != null && load.signum() > 0) {
      rms.put(quantity, times ? from.si().times(load) : from.si().over(load));
    }
  }
}
