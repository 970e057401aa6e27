package passband.transcribe;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * How a rule explains some rows.
 *
 * @param rule null for none: the limits are what is stated
 * @param bits what the rows cost, without the rule
 * @param differing the rows that it does not explain, in the order of the table
 */
record Explanation(@Nullable Rule rule, double bits, List<RowFinding> differing) {
  private static final double MOST_OF_ONE_SLIP = 6;

  /** Limits that no rule makes: each takes the bits of its digits. */
  static Explanation stated(List<ManualRow> rows) {
    double bits = 0;
    for (ManualRow row : rows) {
      for (Side side : Side.values()) {
        Printed printed = row.limit(side);
        bits += printed == null ? 0 : bits(printed);
      }
    }
    return new Explanation(null, bits, List.of());
  }

  private static double bits(Printed printed) {
    return log2(Math.max(2, printed.digits() / 2.0));
  }

  private static double log2(double value) {
    return StrictMath.log(value) / StrictMath.log(2);
  }

  /**
   * A rule's explanation of the rows of a mode. Null where more than half of them differ and some
   * of these by more than one slip; where each has but one, the rows of other modes decide.
   */
  static @Nullable Explanation of(Prediction prediction, Rule rule, List<ManualRow> rows) {
    for (ManualRow row : rows) {
      if (!prediction.applies(rule.basis(), row)) {
        return null;
      }
    }
    List<RowFinding> differing = new ArrayList<>();
    double bits = 0;
    List<Integer> bad = differing(prediction, rule, rows);
    boolean most = areMost(bad.size(), rows.size());
    for (int at : bad) {
      RowFinding finding = finding(prediction, rule, rows, at);
      if (most && finding.bits() > MOST_OF_ONE_SLIP) {
        return null;
      }
      bits += log2(rows.size()) + 2 + finding.bits();
      differing.add(finding);
    }
    return new Explanation(rule, bits, differing);
  }

  private static List<Integer> differing(Prediction prediction, Rule rule, List<ManualRow> rows) {
    List<Integer> bad = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (!prediction.fits(rule, rows.get(i), rows.get(i))) {
        bad.add(i);
      }
    }
    return bad;
  }

  /** Whether so many rows that differ are more than half of all. */
  static boolean areMost(int differing, int rows) {
    return differing * 2 > rows;
  }

  private static @Nullable Rational meant(
      Prediction prediction, Rule rule, ManualRow row, Side side) {
    Printed printed = row.limit(side);
    return printed == null
        ? null
        : printed.step().times(Rational.of(prediction.digits(rule, row, side, printed.step())));
  }

  // ---- what happened to a row ----

  private static RowFinding finding(
      Prediction prediction, Rule rule, List<ManualRow> rows, int at) {
    ManualRow row = rows.get(at);
    Rational lower = meant(prediction, rule, row, Side.LOWER);
    Rational upper = meant(prediction, rule, row, Side.UPPER);
    RowFinding best = limits(row, lower, upper);
    if (row.lower() != null && row.upper() != null && both(row, lower, upper)) {
      best = better(best, swapped(row, lower, upper));
      best = better(best, ofRows(prediction, rule, rows, at, lower, upper));
      if (best.slip() != Slip.ONE_STEP) {
        best = better(best, elsewhere(prediction, rule, rows, at, lower, upper));
      }
    }
    return best;
  }

  private static boolean both(ManualRow row, @Nullable Rational lower, @Nullable Rational upper) {
    return row.lower() != null
        && row.upper() != null
        && !same(row.lower(), lower)
        && !same(row.upper(), upper);
  }

  private static boolean same(Printed printed, @Nullable Rational value) {
    return value != null && printed.value().equals(value);
  }

  private static RowFinding better(RowFinding one, @Nullable RowFinding other) {
    return other != null && other.bits() < one.bits() ? other : one;
  }

  /** A slip at each end by itself. */
  private static RowFinding limits(
      ManualRow row, @Nullable Rational lower, @Nullable Rational upper) {
    Slip worst = Slip.NONE;
    double bits = 0;
    for (Side side : Side.values()) {
      Printed printed = row.limit(side);
      Rational meant = side == Side.LOWER ? lower : upper;
      if (printed != null && meant != null) {
        long steps = meant.over(printed.step()).floor().longValueExact();
        Slip slip = Slip.between(printed.digits(), steps);
        bits += slip == Slip.UNEXPLAINED ? slip.bits() + bits(printed) : slip.bits();
        worst = slip.bits() > worst.bits() ? slip : worst;
      }
    }
    return new RowFinding(row, worst, bits, lower, upper, null);
  }

  private static @Nullable RowFinding swapped(
      ManualRow row, @Nullable Rational lower, @Nullable Rational upper) {
    boolean swapped =
        row.lower() != null
            && row.upper() != null
            && same(row.lower(), upper)
            && same(row.upper(), lower);
    return swapped
        ? new RowFinding(row, Slip.SWAPPED, Slip.SWAPPED.bits(), lower, upper, null)
        : null;
  }

  /** The limits of the row above, or of any other. */
  private static @Nullable RowFinding ofRows(
      Prediction prediction,
      Rule rule,
      List<ManualRow> rows,
      int at,
      @Nullable Rational lower,
      @Nullable Rational upper) {
    ManualRow row = rows.get(at);
    if (at > 0 && same(row, rows.get(at - 1))) {
      return new RowFinding(row, Slip.COPIED, Slip.COPIED.bits(), lower, upper, null);
    }
    for (ManualRow other : rows) {
      if (other != row && prediction.fits(rule, row, other)) {
        double bits = Slip.ANOTHER_ROW.bits() + log2(rows.size());
        return new RowFinding(row, Slip.ANOTHER_ROW, bits, lower, upper, null);
      }
    }
    return null;
  }

  private static boolean same(ManualRow row, ManualRow other) {
    for (Side side : Side.values()) {
      Printed one = row.limit(side);
      Printed two = other.limit(side);
      if (one == null || two == null || !one.value().equals(two.value())) {
        return false;
      }
    }
    return true;
  }

  /** Another setting or load: of another row, or with the point elsewhere. */
  private static @Nullable RowFinding elsewhere(
      Prediction prediction,
      Rule rule,
      List<ManualRow> rows,
      int at,
      @Nullable Rational lower,
      @Nullable Rational upper) {
    ManualRow row = rows.get(at);
    List<Printed> settings = new ArrayList<>();
    List<Printed> loads = new ArrayList<>();
    tenfold(row.setting(), settings);
    if (row.ohms() != null) {
      tenfold(row.ohms(), loads);
    }
    for (ManualRow other : rows) {
      settings.add(other.setting());
      if (other.ohms() != null) {
        loads.add(other.ohms());
      }
    }
    for (Printed load : loads) {
      if (prediction.fits(rule, row, row.at(row.setting(), load))) {
        return new RowFinding(row, Slip.LOAD, Slip.LOAD.bits(), lower, upper, load);
      }
    }
    for (Printed setting : settings) {
      if (rule.basis().nominal() != Basis.Nominal.PRINTED
          && prediction.fits(rule, row, row.at(setting, row.ohms()))) {
        return new RowFinding(row, Slip.SETTING, Slip.SETTING.bits(), lower, upper, setting);
      }
    }
    return null;
  }

  private static void tenfold(Printed printed, List<Printed> all) {
    for (Rational factor : List.of(Rational.TEN, Rational.of(1, 10))) {
      Rational value = printed.value().times(factor);
      all.add(new Printed(value, printed.step(), ""));
    }
  }
}
