package passband.judge;

import java.util.regex.Pattern;

/**
 * Cells of comma-separated values. A spreadsheet runs a cell that begins with {@code =}, {@code +},
 * {@code -} or {@code @} as a formula, and one that begins with a tab or a carriage return may come
 * to the same; such a cell, unless it is a number, gets an apostrophe before it, and reading takes
 * it off again (OWASP, CSV Injection; from memory). An apostrophe that is the text's own gets
 * another, so that every text is read back as it was.
 */
public final class Cell {
  private static final String RISKY = "=+-@\t\r'";
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(\\.\\d+)?([eE][+-]?\\d+)?");

  private Cell() {}

  /** A text as it is written; null for null. */
  public static String written(String text) {
    return text == null || !risky(text, 0) || NUMBER.matcher(text).matches() ? text : "'" + text;
  }

  /** A written cell's text. */
  public static String read(String cell) {
    return cell.startsWith("'") && risky(cell, 1) ? cell.substring(1) : cell;
  }

  private static boolean risky(String text, int at) {
    return text.length() > at && RISKY.indexOf(text.charAt(at)) >= 0;
  }
}
