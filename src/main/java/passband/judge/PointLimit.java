package passband.judge;

import java.math.BigDecimal;
import java.util.List;
import passband.quantity.Unit;
import passband.quantity.Units;

/**
 * What one reading has to be; numbers in {@code unit}, a UCUM code.
 *
 * @param lower the tolerance's ends, rounded inward; null where that side is open
 * @param acceptLower what a reading is compared with; null where that side is open
 * @param resolution one step of the reading
 * @param expanded the expanded uncertainty; null where there is none
 * @param derived the formula of a derived quantity; null for what is read
 * @param budget what the uncertainty is made of; null where it is not known
 */
public record PointLimit(
    String id,
    String quantity,
    String unit,
    BigDecimal setting,
    String settingUnit,
    BigDecimal load,
    String loadUnit,
    BigDecimal lower,
    BigDecimal upper,
    BigDecimal acceptLower,
    BigDecimal acceptUpper,
    BigDecimal resolution,
    BigDecimal expanded,
    String decision,
    String derived,
    List<Part> budget) {

  /** At a reading y the half-width of a rectangular distribution is relative·|y| + absolute. */
  public record Part(String name, BigDecimal relative, BigDecimal absolute) {
    double halfWidth(double reading) {
      return relative.doubleValue() * Math.abs(reading) + absolute.doubleValue();
    }
  }

  /** How many decimals a reading needs. */
  int decimals() {
    return Math.max(0, resolution.stripTrailingZeros().scale());
  }

  /** What is accepted, in words and the unit. */
  public String accepted() {
    return between(acceptLower, acceptUpper);
  }

  /** The tolerance, in words and the unit. */
  public String tolerance() {
    return between(lower, upper);
  }

  /** The unit as people write it, after a space; empty for a plain number. */
  public String shownUnit() {
    if (unit.equals("1")) {
      return "";
    }
    Unit known = Units.ofUcum(unit);
    return " " + (known == null ? unit : known.printed());
  }

  private String between(BigDecimal low, BigDecimal high) {
    if (low == null) {
      return "at most " + high.toPlainString() + shownUnit();
    }
    return high == null
        ? "at least " + low.toPlainString() + shownUnit()
        : low.toPlainString() + " to " + high.toPlainString() + shownUnit();
  }

  /** The identity without the quantity. */
  String place() {
    return id.substring(0, id.lastIndexOf('/'));
  }

  /**
   * The standard uncertainty at a reading (JCGM 100, 4.3.7 and 5.1.2); NaN where none is known.
   *
   * @param coverage the factor k of the expanded uncertainty, used where there is no budget
   */
  double standard(double reading, double coverage) {
    if (budget != null) {
      return Budget.combined(
          budget.stream().map(p -> p.halfWidth(reading) / Math.sqrt(3)).toList());
    }
    return expanded == null ? Double.NaN : expanded.doubleValue() / coverage;
  }
}
