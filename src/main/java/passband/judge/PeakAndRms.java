package passband.judge;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Wave;

/**
 * Peaks below the RMS value of their {@link Wave}, whatever is calculated from the two and whatever
 * that is called.
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

  /** The words for it, for programs. */
  static String isBelow(String peak, String source) {
    return peak + " is below " + source;
  }

  private @Nullable String reversed() {
    for (Wave wave : Wave.values()) {
      DerivedValue.Part peak = parts.get(wave.peak());
      Rational rms = rms(wave);
      if (peak != null && rms != null && peak.si().compareTo(rms) < 0) {
        String source = parts.containsKey(wave.rms()) ? wave.rms() : wave.through();
        return isBelow(wave.peak(), source);
      }
    }
    return null;
  }

  /** The RMS value: read, or from the other side through the load; null where neither is there. */
  private @Nullable Rational rms(Wave wave) {
    DerivedValue.Part own = parts.get(wave.rms());
    DerivedValue.Part other = parts.get(wave.other().rms());
    if (own != null) {
      return own.si();
    }
    return other != null && load != null && load.signum() > 0
        ? wave.through(other.si(), load)
        : null;
  }
}
