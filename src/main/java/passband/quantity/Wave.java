package passband.quantity;

import org.jspecify.annotations.Nullable;

/**
 * The two sides of one wave that instruments show as a peak and as an RMS value. A peak is never
 * below the RMS value of the same wave: the square of every instantaneous value is at most that of
 * the peak, and so is their mean. Of the other side's RMS value it holds through the load (Ohm's
 * law).
 */
public enum Wave {
  VOLTAGE("voltage", "peak-voltage", "current times the load"),
  CURRENT("current", "peak-current", "voltage over the load");

  private final String rms;
  private final String peak;
  private final String through;

  Wave(String rms, String peak, String through) {
    this.rms = rms;
    this.peak = peak;
    this.through = through;
  }

  /** The name of its RMS value. */
  public String rms() {
    return rms;
  }

  /** The name of its peak value. */
  public String peak() {
    return peak;
  }

  /** The other side. */
  public Wave other() {
    return this == VOLTAGE ? CURRENT : VOLTAGE;
  }

  /** What the RMS value is by the other side and the load, in words. */
  public String through() {
    return through;
  }

  /** The RMS value by that of the other side and a load of more than zero, in SI. */
  public Rational through(Rational other, Rational load) {
    return this == VOLTAGE ? other.times(load) : other.over(load);
  }

  /** The side of which this is the RMS value; null where it is of none. */
  public static @Nullable Wave ofRms(String quantity) {
    return quantity.equals(VOLTAGE.rms) ? VOLTAGE : quantity.equals(CURRENT.rms) ? CURRENT : null;
  }

  /** The side of which this is the peak value; null where it is of none. */
  public static @Nullable Wave ofPeak(String quantity) {
    return quantity.equals(VOLTAGE.peak) ? VOLTAGE : quantity.equals(CURRENT.peak) ? CURRENT : null;
  }
}
