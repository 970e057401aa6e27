package passband.check;

import java.util.Objects;
import passband.detect.BluntRows;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;

/**
 * {@code gain-error-missed}, a warning: rows of one mode, outlet and load that together catch with
 * 95 % only a gain error beyond the mode's tolerance and the expanded uncertainty.
 */
final class GainNoticed implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    if (diagnostics.hasFaults()) {
      return; // limits that are wrong miss much, and are said to be wrong
    }
    for (BluntRows rows : BluntRows.of(plan)) {
      String load = rows.load().isEmpty() ? "" : " into " + rows.load();
      String error = rows.above() ? "excess" : "shortage";
      Double caught = rows.caught();
      diagnostics
          .say(
              Code.GAIN_ERROR_MISSED,
              rows.first().span(),
              "%s%s: %s",
              rows.place().text(),
              load,
              caught == null
                  ? "no " + error + " of power is caught with 95 %"
                  : "the least "
                      + error
                      + " of power that is caught with 95 % is "
                      + percent(caught))
          .note(
              ModeLines.limit(
                  Objects.requireNonNull(rows.first().mode(), "output without a mode"), "power"),
              "the tolerance is %s; with the expanded uncertainty and half a step of the reading, %s",
              percent(rows.tolerance()),
              percent(rows.expected()))
          .hint("add rows, or read with less uncertainty, or accept less");
    }
  }

  /** Without the rows that a fault leaves out, more goes unnoticed. */
  @Override
  public boolean needsWhole() {
    return true;
  }

  private static String percent(double share) {
    return Math.round(Math.abs(share) * 1000) / 10.0 + " %";
  }
}
