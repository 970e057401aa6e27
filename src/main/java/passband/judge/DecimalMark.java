package passband.judge;

import java.util.regex.Pattern;
import passband.words.Language;

/**
 * Numbers as people and spreadsheets write them: a comma is a decimal mark where the sheet's
 * language has one, or the file's cells are separated by semicolons, as spreadsheets do where the
 * comma is taken. {@code 1,234} may be a thousand and more unless both say so; what may be is never
 * guessed. The script of the sheet reads files by the same rule ({@code words.js}).
 *
 * @param language whether the sheet's language has a decimal comma
 * @param file whether the file's cells are separated by semicolons
 */
record DecimalMark(boolean language, boolean file) {
  private static final String SIGN = "[+\\-\u2212]?";
  private static final Pattern COMMA = Pattern.compile(SIGN + "\\d+,\\d+");
  private static final Pattern THOUSANDS = Pattern.compile(SIGN + "[1-9]\\d{0,2}[.,]\\d{3}");

  /** What follows a number that may be two, in a file that the sheet saved too. */
  static final String UNSURE = " ?";

  static DecimalMark of(String language, Readings readings) {
    Language named = Language.named(language);
    return new DecimalMark(named != null && named.comma(), readings.semicolons());
  }

  /** A row of a number with a decimal point; what may be two numbers is none. */
  Readings.Row plain(Readings.Row row) {
    String plain = plain(row.reading());
    return plain.equals(row.reading()) ? row : row.reading(plain);
  }

  private String plain(String text) {
    boolean both = language && file;
    boolean thousands = THOUSANDS.matcher(text).matches();
    if (both && thousands && text.contains(".")) {
      return text + UNSURE;
    }
    boolean decimal = both || (language || file) && !thousands;
    return decimal && COMMA.matcher(text).matches() ? text.replace(',', '.') : text;
  }
}
