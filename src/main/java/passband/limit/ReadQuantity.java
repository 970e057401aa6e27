package passband.limit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
 * @param over where it is calculated from readings of several points; null where it is not
 */
public record ReadQuantity(
    QuantityKind kind,
    String title,
    Unit unit,
    Rational resolution,
    @Nullable Uncertainty uncertainty,
    Analyzer.@Nullable Range range,
    @Nullable String by,
    @Nullable Over over) {

  /**
   * How a quantity is calculated from readings of several points.
   *
   * @param column by which the points differ
   * @param group the identity that they have in common, with a star for what differs
   * @param formula over the names of the parts
   * @param parts the identities of the readings by the names that the formula has for them, in
   *     order
   * @param repeats where the mean of repeated readings counts, of each quantity the names of its
   *     parts; else empty
   */
  public record Over(
      String column,
      String group,
      String formula,
      Map<String, String> parts,
      List<List<String>> repeats) {
    /** Copies the parts, in their order. */
    public Over {
      parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
    }
  }

  /** A quantity that none of the analyzer's functions measures: swept or derived. */
  public static ReadQuantity workedOut(
      QuantityKind kind, String title, Unit unit, Rational resolution) {
    return new ReadQuantity(kind, title, unit, resolution, null, null, null, null);
  }

  /** The same, as uncertain as this. */
  public ReadQuantity with(Uncertainty known) {
    return new ReadQuantity(kind, title, unit, resolution, known, range, by, over);
  }

  /** The same, calculated from readings of several points. */
  public ReadQuantity over(Over points) {
    return new ReadQuantity(kind, title, unit, resolution, uncertainty, range, by, points);
  }
}
