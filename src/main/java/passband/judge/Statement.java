package passband.judge;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What is stated of a value, its tolerance and its expanded uncertainty U beside the verdict: the
 * four outcomes with a guard band of U (ILAC-G8:09/2019, non-binary statements; the clause from
 * memory). It says how sure a verdict is; it is not the verdict.
 */
public enum Statement {
  /** Inside the tolerance by U at least. */
  PASS("pass"),
  /** Inside the tolerance, but by less than U. */
  CONDITIONAL_PASS("conditional pass"),
  /** Outside the tolerance, but by no more than U. */
  CONDITIONAL_FAIL("conditional fail"),
  /** Outside the tolerance by more than U. */
  FAIL("fail");

  private final String word;

  Statement(String word) {
    this.word = word;
  }

  /** As printed. */
  public String word() {
    return word;
  }

  /**
   * Of a value; an end of a zone belongs to the better one.
   *
   * @param lower the tolerance, null where that side is open, likewise {@code upper}
   * @param expanded the expanded uncertainty U, all in one unit
   */
  public static Statement of(
      BigDecimal value,
      @Nullable BigDecimal lower,
      @Nullable BigDecimal upper,
      BigDecimal expanded) {
    BigDecimal room = null;
    if (lower != null) {
      room = value.subtract(lower);
    }
    if (upper != null) {
      BigDecimal above = upper.subtract(value);
      room = room == null ? above : room.min(above);
    }
    if (room == null || room.compareTo(expanded) >= 0) {
      return PASS;
    }
    return room.signum() >= 0
        ? CONDITIONAL_PASS
        : room.negate().compareTo(expanded) <= 0 ? CONDITIONAL_FAIL : FAIL;
  }
}
