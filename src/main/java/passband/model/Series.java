package passband.model;

import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;

/**
 * Values that something can be set to: single ones, and spans with or without a step.
 *
 * @param dimension of every value
 * @param unit the unit that values are printed in
 * @param segments at least one
 */
public record Series(Dimension dimension, Unit unit, List<Segment> segments) {

  /**
   * From one value to another.
   *
   * @param step null when any value between will do; zero is never one
   */
  public record Segment(Rational from, Rational to, @Nullable Rational step) {

    /** Whether the value is on this span and one of its steps. */
    public boolean contains(Rational value) {
      return spans(value)
          && (step == null || value.minus(from).over(step).isInteger() || value.equals(to));
    }

    /** Whether the value is between the ends. */
    public boolean spans(Rational value) {
      return from.compareTo(value) <= 0 && value.compareTo(to) <= 0;
    }

    /** How many values there are; null when any value between will do. */
    public @Nullable BigInteger count() {
      if (from.equals(to)) {
        return BigInteger.ONE;
      }
      return step == null ? null : to.minus(from).over(step).floor().add(BigInteger.ONE);
    }
  }

  /** Copies the segments. */
  public Series {
    segments = List.copyOf(segments);
  }

  /** Whether the value can be set. */
  public boolean contains(Rational value) {
    for (Segment segment : segments) {
      if (segment.contains(value)) {
        return true;
      }
    }
    return false;
  }

  /** Whether the value is between the ends, on a step or not. */
  public boolean spans(Rational value) {
    return lowest().compareTo(value) <= 0 && value.compareTo(highest()) <= 0;
  }

  /** A value in SI as the sheet prints it: {@code 0.5 s}. */
  public String text(Rational value) {
    String number = value.over(unit.factor()).toPlain();
    return unit.symbol().isEmpty() ? number : number + " " + unit.printed();
  }

  /** The least value. */
  public Rational lowest() {
    Rational lowest = segments.get(0).from();
    for (Segment segment : segments) {
      lowest = lowest.min(segment.from());
    }
    return lowest;
  }

  /** The greatest value. */
  public Rational highest() {
    Rational highest = segments.get(0).to();
    for (Segment segment : segments) {
      highest = highest.max(segment.to());
    }
    return highest;
  }
}
