package passband.evidence;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import passband.quantity.Distribution;

/**
 * How a derived value comes from readings.
 *
 * @param parts the items that are read for it, by quantity
 * @param load how far the load may be from what it is set to, in the load's unit
 * @param repeats where the mean of repeated readings counts: of each quantity the names that the
 *     formula has for its readings, all in one order and as many; else empty
 */
public record Calculation(
    WrittenFormula formula,
    Map<String, String> parts,
    Item.Contribution load,
    List<List<String>> repeats) {
  /** Of readings none of which repeats another. */
  public Calculation(WrittenFormula formula, Map<String, String> parts, Item.Contribution load) {
    this(formula, parts, load, List.of());
  }

  private static final String LOAD = Item.Contribution.LOAD;

  /** A load that is what it is set to, or none. */
  static final Item.Contribution NO_LOAD_ERROR =
      new Item.Contribution(LOAD, BigDecimal.ZERO, BigDecimal.ZERO);

  /** The error of the load as a share of it, and in its unit. */
  static Item.Contribution loadError(
      BigDecimal relative, BigDecimal absolute, Distribution spread) {
    return new Item.Contribution(LOAD, relative, absolute, spread);
  }
}
