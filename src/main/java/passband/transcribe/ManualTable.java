package passband.transcribe;

import java.util.ArrayList;
import java.util.List;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;

/**
 * A manual's table of limits.
 *
 * @param modes in the order of the table
 * @param set what is set
 * @param setUnit the unit in which it is printed
 * @param read what is read
 * @param readUnit the unit in which limits are printed
 * @param limitsPrinted whether the table prints limits; else they are a nominal value and its
 *     tolerance
 * @param remarks what was taken for granted while it was read
 */
record ManualTable(
    List<ManualMode> modes,
    List<ManualRow> rows,
    QuantityKind set,
    Unit setUnit,
    QuantityKind read,
    Unit readUnit,
    boolean limitsPrinted,
    List<String> remarks) {

  /** The rows of a mode. */
  List<ManualRow> of(int mode) {
    List<ManualRow> some = new ArrayList<>();
    for (ManualRow row : rows) {
      if (row.mode() == mode) {
        some.add(row);
      }
    }
    return some;
  }

  /** What a mode is called: its title, with its outlet where another outlet's has the same. */
  String title(int mode) {
    ManualMode own = modes.get(mode);
    boolean shared =
        modes.stream().anyMatch(m -> !m.equals(own) && m.title().equalsIgnoreCase(own.title()));
    return shared ? own.title() + " (" + own.outlet() + ")" : own.title();
  }

  /** What every mode is called. */
  List<String> titles() {
    List<String> titles = new ArrayList<>();
    for (int mode = 0; mode < modes.size(); mode++) {
      titles.add(title(mode));
    }
    return titles;
  }

  /** Whether the limits are of what flows to earth, rather than of the output into the load. */
  boolean isLeakage() {
    return read.name().equals("hf-leakage");
  }

  /** Whether a setting converts to what is read through the load. */
  boolean converts() {
    return set.name().equals("power")
        && (read.name().equals("current") || read.name().equals("voltage"));
  }

  /** Whether what is set is what is read. */
  boolean direct() {
    return set.name().equals(read.name());
  }

  /** The same where a limit with fewer decimals than others lost its zeros in a spreadsheet. */
  ManualTable withZeros() {
    List<ManualRow> full = new ArrayList<>();
    for (int mode = 0; mode < modes.size(); mode++) {
      Rational finest = null;
      for (ManualRow row : of(mode)) {
        for (Side side : Side.values()) {
          Printed printed = row.limit(side);
          if (printed != null && (finest == null || printed.step().compareTo(finest) < 0)) {
            finest = printed.step();
          }
        }
      }
      for (ManualRow row : of(mode)) {
        full.add(finest == null ? row : row.with(finest));
      }
    }
    return new ManualTable(modes, full, set, setUnit, read, readUnit, limitsPrinted, remarks);
  }
}
