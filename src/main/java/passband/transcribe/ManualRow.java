package passband.transcribe;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * A row of a manual's table.
 *
 * @param line where it stands in the file, counted from 1
 * @param mode which of the table's modes it is of
 * @param setting in SI
 * @param ohms the load; null where the table names none
 * @param lower null where that side is open
 * @param upper null where that side is open
 * @param nominal the printed nominal value of what is read; null where there is none
 * @param tolerance what the row says of its tolerance; null for nothing
 */
record ManualRow(
    int line,
    int mode,
    Printed setting,
    @Nullable Printed ohms,
    @Nullable Printed lower,
    @Nullable Printed upper,
    @Nullable Printed nominal,
    @Nullable Tolerance tolerance) {

  /**
   * A tolerance as a column of the table states it.
   *
   * @param share whether the value is a share, else an amount in SI
   */
  record Tolerance(Rational value, boolean share, String text) {

    /** As a rule. */
    Rule rule(Basis basis) {
      return share
          ? new Rule(basis, Rule.Form.SHARE, value, Rational.ZERO)
          : new Rule(basis, Rule.Form.AMOUNT, Rational.ZERO, value);
    }
  }

  /** Its setting and load, zero for none. */
  List<Rational> point() {
    return List.of(setting.value(), ohms == null ? Rational.ZERO : ohms.value());
  }

  /** What is printed at an end; null where it is open. */
  @Nullable Printed limit(Side side) {
    return side == Side.LOWER ? lower : upper;
  }

  /** The same at another setting and load. */
  ManualRow at(Printed otherSetting, @Nullable Printed otherOhms) {
    return new ManualRow(line, mode, otherSetting, otherOhms, lower, upper, nominal, tolerance);
  }

  /** The same with limits of which this is the last digit. */
  ManualRow with(Rational finer) {
    return new ManualRow(
        line,
        mode,
        setting,
        ohms,
        lower == null ? null : lower.with(finer),
        upper == null ? null : upper.with(finer),
        nominal,
        tolerance);
  }
}
