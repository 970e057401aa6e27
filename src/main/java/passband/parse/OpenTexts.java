package passband.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Where a text without its closing quote may end. */
final class OpenTexts {
  private static final String QUOTES = "\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019'";

  /** Words that come after the text of a step besides. */
  private static final Set<String> AFTER_TEXT = Set.of("from", "to");

  private OpenTexts() {}

  /**
   * The quotes to try, the most likely first: in the place of another quote, before what may come
   * after a printed name, at the end of the line.
   *
   * @param from where the text begins in the line
   */
  static List<LineEdits.Edit> closing(String line, int from) {
    List<LineEdits.Edit> edits = new ArrayList<>();
    for (int i = from + 1; i < line.length(); i++) {
      if (QUOTES.indexOf(line.charAt(i)) >= 0) {
        edits.add(new LineEdits.Edit(i, i + 1, "\""));
      }
    }
    for (int i = from + 2; i < line.length(); i++) {
      char c = line.charAt(i);
      int end = i;
      while (end > from + 1 && line.charAt(end - 1) == ' ') {
        end--;
      }
      boolean word = line.charAt(i - 1) == ' ' && isAfter(word(line, i));
      if (c == ',' || c == '{' || word) {
        edits.add(new LineEdits.Edit(end, end, "\""));
      }
    }
    int end = line.stripTrailing().length();
    edits.add(new LineEdits.Edit(end, end, "\""));
    return edits;
  }

  private static boolean isAfter(String word) {
    return LineEdits.AFTER_TITLE.contains(word) || AFTER_TEXT.contains(word);
  }

  private static String word(String line, int at) {
    int end = at;
    while (end < line.length() && Character.isLetter(line.charAt(end))) {
      end++;
    }
    return line.substring(at, end);
  }
}
