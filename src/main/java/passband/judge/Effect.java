package passband.judge;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Distribution;
import passband.quantity.Rational;

/**
 * A part of the uncertainty of a derived value: one error of the readings that it is calculated
 * from, or their scatter.
 *
 * @param source what brings it about
 * @param moved the readings that it moves
 * @param sharing how it counts where there are several of them
 * @param spread how the error is distributed; null for scatter, whose standard uncertainty is found
 *     from the readings
 * @param freedom its degrees of freedom; null for infinitely many
 * @param standard by how much it moves the result, as a standard uncertainty, in the result's unit
 */
public record Effect(
    String source,
    List<Moved> moved,
    Sharing sharing,
    @Nullable Distribution spread,
    @Nullable Rational freedom,
    double standard) {

  /**
   * A reading that is moved.
   *
   * @param name that the formula has for it
   * @param width the half-width of the error at what was read, in its unit
   * @param unit a UCUM code; null where there is none
   * @param slope the sensitivity coefficient: the result's unit per unit of the reading
   */
  public record Moved(String name, double width, @Nullable String unit, double slope) {}

  /** How the same error of several readings counts. */
  public enum Sharing {
    /** Of one reading, or never in common. */
    NONE,
    /** Taken as different in each: together they would move the result less. */
    APART,
    /** Taken as the same in all of them. */
    COMMON
  }
}
