package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import java.util.function.ToDoubleFunction;
import passband.quantity.Units;

/**
 * Words that stay on one line, since one alone would be read wrongly: a number and its unit, a sign
 * and its number, the halves of a range, a name and its number or letter ("KEY 1", "LOAD +").
 */
final class Unbroken {
  private static final String SIGNS = "+−-–=";
  private static final String BEFORE_A_NUMBER = "±<>≤≥≈~";
  private static final String BESIDE = "\"“”„’'«»().,;:!?";

  /** A name of so many letters before "=" stays with what it is equal to. */
  private static final int SHORT_NAME = 3;

  private static final int SHORT_NUMBER = 2;

  private Unbroken() {}

  /** The words of a text; those that stay together with a space between them. */
  static List<String> of(String text) {
    List<String> pieces = new ArrayList<>();
    StringTokenizer words = new StringTokenizer(text);
    String before = "";
    while (words.hasMoreTokens()) {
      String word = words.nextToken();
      int last = pieces.size() - 1;
      if (last >= 0 && together(before, word)) {
        pieces.set(last, pieces.get(last) + " " + word);
      } else {
        pieces.add(word);
      }
      before = word;
    }
    return pieces;
  }

  /**
   * The greatest width of what stays on one line of a text.
   *
   * @param widths of a piece of text, in points
   */
  static double widest(String text, ToDoubleFunction<String> widths) {
    double most = 0;
    for (String piece : of(text)) {
      most = Math.max(most, widths.applyAsDouble(piece));
    }
    return most;
  }

  private static boolean together(String before, String word) {
    if (isOne(SIGNS, word)) {
      return !word.equals("=") || before.length() <= SHORT_NAME;
    }
    if (isOne(SIGNS + BEFORE_A_NUMBER, before)) {
      return isNumber(word);
    }
    return isNumber(before)
        ? isUnit(word) || isOne(BEFORE_A_NUMBER, word)
        : isName(before) && isShort(word);
  }

  private static boolean isOne(String signs, String word) {
    String bare = bare(word);
    return bare.length() == 1 && signs.indexOf(bare.charAt(0)) >= 0;
  }

  /** Also one that a sign or a bracket stands before. */
  private static boolean isNumber(String word) {
    int end = word.length() - 1;
    return Character.isDigit(word.charAt(end)) && !Character.isLetter(word.charAt(0));
  }

  private static boolean isUnit(String word) {
    String unit = bare(word);
    return !unit.isEmpty() && Units.recorded(unit) != null;
  }

  private static boolean isName(String word) {
    return Character.isUpperCase(bare(word + " ").codePointAt(0));
  }

  /** A number of one or two digits, or one capital. */
  private static boolean isShort(String word) {
    String bare = bare(word);
    return bare.length() == 1 && Character.isUpperCase(bare.charAt(0))
        || !bare.isEmpty()
            && bare.length() <= SHORT_NUMBER
            && bare.chars().allMatch(Character::isDigit);
  }

  private static String bare(String word) {
    int start = 0;
    int end = word.length();
    while (start < end && BESIDE.indexOf(word.charAt(start)) >= 0) {
      start++;
    }
    while (end > start && BESIDE.indexOf(word.charAt(end - 1)) >= 0) {
      end--;
    }
    return word.substring(start, end);
  }
}
