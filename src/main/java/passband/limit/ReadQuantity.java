package passband.limit;

import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;

/**
 * What is read at a point, and how finely and surely.
 *
 * @param title as printed
 * @param unit what it is read in
 * @param resolution one step, in SI
 * @param uncertainty null when none can be made
 * @param range the instrument's range; null when it is swept or derived
 * @param by the role of the instrument that shows it; null when it is swept or derived
 */
public record ReadQuantity(
    QuantityKind kind,
    String title,
    Unit unit,
    Rational resolution,
    @Nullable Uncertainty uncertainty,
    Analyzer.@Nullable Range range,
    @Nullable String by) {

  /** A quantity that none of the analyzer's functions measures: swept or derived. */
  public static ReadQuantity workedOut(
      QuantityKind kind, String title, Unit unit, Rational resolution) {
    return new ReadQuantity(kind, title, unit, resolution, null, null, null);
  }

  /** The same, as uncertain as this. */
  public ReadQuantity with(Uncertainty known) {
    return new ReadQuantity(kind, title, unit, resolution, known, range, by);
  }
}
