package passband.evidence;

import java.math.BigDecimal;
import java.util.Map;
import passband.quantity.Distribution;

/**
 * How a derived value comes from readings.
 *
 * @param parts the items that are read for it, by quantity
 * @param load how far the load may be from what it is set to, in the load's unit
 */
public record Calculation(
    WrittenFormula formula, Map<String, String> parts, Item.Contribution load) {
  private static final String LOAD = "load error";

  /** A load that is what it is set to, or none. */
  static final Item.Contribution NO_LOAD_ERROR =
      new Item.Contribution(LOAD, BigDecimal.ZERO, BigDecimal.ZERO);

  /** The error of the load as a share of it, and in its unit. */
  static Item.Contribution loadError(
      BigDecimal relative, BigDecimal absolute, Distribution spread) {
    return new Item.Contribution(LOAD, relative, absolute, spread);
  }
}
