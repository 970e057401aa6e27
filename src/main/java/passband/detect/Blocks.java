package passband.detect;

import passband.plan.Plan;
import passband.source.Span;

/** Which lines of a procedure stand together: a test, or a block of several tests. */
final class Blocks {
  private Blocks() {}

  /** Whether two places are in one test, or in one block of tests. */
  static boolean same(Plan plan, Span one, Span other) {
    return one.file() == other.file() && end(plan, one) == end(plan, other);
  }

  /**
   * Where the outermost block below the procedure ends in which a place is; its own end where it is
   * written somewhere else than the procedure.
   */
  static int end(Plan plan, Span place) {
    Span whole = plan.tree().span();
    if (whole.file() != place.file() || place.start() < whole.start()) {
      return place.end();
    }
    String text = whole.file().text();
    int depth = 0;
    for (int i = whole.start(); i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"') {
        i = after(text, i);
      } else if (c == '#') {
        i = Math.max(i, text.indexOf('\n', i)); // a comment
      } else if (c == '{') {
        depth++;
      } else if (c == '}') {
        depth--;
        if (depth == 1 && i >= place.start()) {
          return i + 1;
        }
      }
    }
    return place.end();
  }

  /** The end of a text in quotation marks. */
  private static int after(String text, int from) {
    int i = from + 1;
    while (i < text.length() && text.charAt(i) != '"' && text.charAt(i) != '\n') {
      i += text.charAt(i) == '\\' ? 2 : 1;
    }
    return i;
  }
}
