package passband.transcribe;

import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Unit;

/** Numbers in cells, with a decimal point or a decimal comma. */
final class Numerals {
  private static final int MOST_DIGITS = 12;

  private final boolean comma;

  /**
   * @param comma whether the decimal mark is a comma
   */
  Numerals(boolean comma) {
    this.comma = comma;
  }

  /**
   * A number, perhaps with a unit behind it.
   *
   * @param unit the heading's; null where it names none
   * @param bare whether a number may have no unit at all
   */
  Printed read(String text, @Nullable Unit unit, boolean bare) throws TableFault {
    int end = 0;
    while (end < text.length() && "0123456789.,".indexOf(text.charAt(end)) >= 0) {
      end++;
    }
    String digits = text.substring(0, end);
    String behind = text.substring(end).strip();
    Unit own = behind.isEmpty() ? null : ColumnHeading.unit(behind);
    if (digits.isEmpty() || (!behind.isEmpty() && own == null)) {
      throw new TableFault(
          "'" + text + "' is no number" + (digits.isEmpty() ? "" : " with a known unit"));
    }
    if (own != null && unit != null && !own.dimension().equals(unit.dimension())) {
      throw new TableFault(
          "'" + text + "' is in " + own.symbol() + ", the heading in " + unit.symbol());
    }
    Unit taken = own != null ? own : unit;
    if (taken == null) {
      if (!bare) {
        throw new TableFault("a number without a unit; put it into the heading or the cell");
      }
      taken = Unit.ONE;
    }
    String plain = plain(digits);
    int point = plain.indexOf('.');
    int decimals = point < 0 ? 0 : plain.length() - 1 - point;
    return new Printed(
        Rational.parse(plain).times(taken.factor()),
        Rational.TEN.pow(-decimals).times(taken.factor()),
        plain);
  }

  private String plain(String digits) throws TableFault {
    char mark = comma ? ',' : '.';
    char other = comma ? '.' : ',';
    if (digits.indexOf(other) >= 0) {
      throw new TableFault(
          comma
              ? "'" + digits + "' has a point where the decimal mark is a comma; write it without"
              : "'" + digits + "' has a comma; say --decimal comma or write it without");
    }
    String plain = digits.replace(mark, '.');
    boolean misplaced =
        plain.startsWith(".")
            || plain.endsWith(".")
            || plain.indexOf('.') != plain.lastIndexOf('.');
    if (misplaced || plain.length() > MOST_DIGITS) {
      throw new TableFault("'" + digits + "' is no number");
    }
    return plain;
  }
}
