package passband.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** A word that is wider than its line, in pieces; each letter is measured once or twice. */
public final class WordPieces {
  private WordPieces() {}

  /**
   * A word in pieces no wider than {@code width}, but of one letter at least; as many letters in
   * each as fit.
   *
   * @param size what the advances are multiplied by
   * @param advance of a code point
   */
  public static List<String> of(
      String word, double width, double size, IntToDoubleFunction advance) {
    List<String> pieces = new ArrayList<>();
    int start = 0;
    double sum = 0;
    int c;
    for (int i = 0; i < word.length(); i += Character.charCount(c)) {
      c = word.codePointAt(i);
      double wide = advance.applyAsDouble(c);
      if (i > start && (sum + wide) * size > width) {
        pieces.add(word.substring(start, i));
        start = i;
        sum = 0;
      }
      sum += wide;
    }
    pieces.add(word.substring(start));
    return pieces;
  }
}
