package passband.transcribe;

import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * A row that a rule does not explain.
 *
 * @param slip what probably happened; of two limits with a slip each, the less likely
 * @param bits how unlikely that is
 * @param lower what the rule prints there; null where the side is open
 * @param upper likewise
 * @param instead the setting or the load that explains the row; null where it is neither
 */
record RowFinding(
    ManualRow row,
    Slip slip,
    double bits,
    @Nullable Rational lower,
    @Nullable Rational upper,
    @Nullable Printed instead) {

  /** Whether a limit was only rounded otherwise. */
  boolean isNote() {
    return slip == Slip.ONE_STEP;
  }

  /** Whether the row's setting or load is in doubt, rather than a limit. */
  boolean elsewhere() {
    return slip == Slip.SETTING || slip == Slip.LOAD;
  }

  /** What the rule prints at an end; null where it is open. */
  @Nullable Rational meant(Side side) {
    return side == Side.LOWER ? lower : upper;
  }

  /** Whether the limit at an end is not what the rule prints. */
  boolean differs(Side side) {
    Printed printed = row.limit(side);
    Rational meant = meant(side);
    return printed != null && meant != null && !printed.value().equals(meant);
  }
}
