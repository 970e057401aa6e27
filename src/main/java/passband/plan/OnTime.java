package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Device.Duty;
import passband.quantity.Rational;

/**
 * How long output is on at a point, in seconds, and from what that follows: the one place where it
 * is worked out. It covers for each instrument that reads how long it settles and, where it does
 * not hold its reading, how long that is read and written down.
 *
 * @param written by the test; null where it says nothing
 * @param needs of the instruments that read at the point
 * @param duty of the mode; null where there is none, or nobody states it
 */
public record OnTime(@Nullable Rational written, List<Need> needs, @Nullable Duty duty) {
  /** Output is never on. */
  public static final OnTime NONE = new OnTime(null, List.of(), null);

  /** Copies the needs. */
  public OnTime {
    needs = List.copyOf(needs);
  }

  /**
   * What one instrument needs.
   *
   * @param settle null where nobody knows
   * @param reading zero where output is off again when its reading is written down, or nothing says
   */
  public record Need(Analyzer unit, @Nullable Rational settle, Rational reading) {
    /** Both together, as far as they are known. */
    public Rational least() {
      return settle == null ? reading : settle.plus(reading);
    }
  }

  /** The same in another mode. */
  public OnTime in(@Nullable Duty other) {
    return new OnTime(written, needs, other);
  }

  /** What the sheet says: what the test does, else what instruments need; null for neither. */
  public @Nullable Rational said() {
    Need most = most();
    return written != null ? written : most == null ? null : most.least();
  }

  /** Who needs the longest where the test says nothing; null where nobody's time is known. */
  public @Nullable Need most() {
    Need most = null;
    for (Need need : needs) {
      boolean longer = most == null || need.least().compareTo(most.least()) > 0;
      most = written == null && need.settle != null && longer ? need : most;
    }
    return most;
  }

  /** What duty and heat are worked out from: what is said, else as long as the duty allows. */
  public @Nullable Rational counted() {
    return said() != null || duty == null ? said() : duty.on();
  }

  /** The longest that the duty allows; null where it says nothing, or allows any time. */
  public @Nullable Rational allowed() {
    return duty == null ? null : duty.on();
  }

  /** Whose needs the test's own on-time does not cover. */
  public List<Need> notCovered() {
    List<Need> all = new ArrayList<>();
    for (Need need : needs) {
      if (written != null && written.compareTo(need.least()) < 0) {
        all.add(need);
      }
    }
    return all;
  }

  /** How long an instrument is read while output is on; zero for one that does not say. */
  public Rational reading(String role) {
    for (Need need : needs) {
      if (need.unit.role().equals(role)) {
        return need.reading;
      }
    }
    return Rational.ZERO;
  }

  /** The rest that is due, in proportion to the on-time by the duty; null where none is. */
  public @Nullable Rational rest() {
    Rational on = duty == null ? null : duty.on();
    Rational off = duty == null ? null : duty.off();
    if (on == null || off == null) {
      return null;
    }
    Rational said = said();
    return said == null ? off : off.times(said).over(on);
  }
}
