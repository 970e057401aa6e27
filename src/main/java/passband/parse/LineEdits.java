package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.CommonToken;

/** The words of a line, and what to change in it. */
abstract class LineEdits {
  /** Words that may come after a printed name in a declaration. */
  static final Set<String> AFTER_TITLE =
      Set.of("rated", "colour", "on", "holds", "by", "through", "renamed", "one", "floating");

  final String line;
  final List<CommonToken> words;
  final List<Edit> edits = new ArrayList<>();

  /**
   * A text in the place of some characters of a line.
   *
   * @param from the first UTF-16 offset in the line
   * @param to the offset after the last
   * @param guess whether the line is tried without it too
   */
  record Edit(int from, int to, String text, boolean guess) {
    /** One that is no guess. */
    Edit(int from, int to, String text) {
      this(from, to, text, false);
    }
  }

  LineEdits(String line, List<CommonToken> words) {
    this.line = line;
    this.words = words;
  }

  final boolean ends(int at) {
    int type = words.get(at).getType();
    return type == COMMENT || type == LBRACE || type == NEWLINE;
  }

  // ---- words ----

  final int type(int at) {
    return at >= 0 && at < words.size() ? words.get(at).getType() : NEWLINE;
  }

  final String text(int at) {
    return at >= 0 && at < words.size() ? words.get(at).getText() : "";
  }

  final boolean isOneOf(int at, String signs) {
    return text(at).length() == 1 && signs.contains(text(at));
  }

  final boolean isWord(int at) {
    return type(at) == NAME || (type(at) != TEXT && Keywords.type(text(at)) != NAME);
  }

  /** Whether no space is between a word and the next. */
  final boolean adjacent(int at) {
    return at >= 0
        && at + 1 < words.size()
        && words.get(at).getStopIndex() + 1 == words.get(at + 1).getStartIndex();
  }

  final boolean hasTab(int at) {
    return at >= 0
        && at + 1 < words.size()
        && line.substring(words.get(at).getStopIndex() + 1, words.get(at + 1).getStartIndex())
            .contains("\t");
  }

  final boolean hasBar() {
    for (CommonToken word : words) {
      if (word.getType() == BAR) {
        return true;
      }
    }
    return false;
  }

  // ---- edits ----

  final void replace(int first, int last, String text) {
    int from = words.get(first).getStartIndex();
    int to = words.get(last).getStopIndex() + 1;
    boolean spaces = from > 0 && line.charAt(from - 1) == ' ' && line.startsWith(" ", to);
    edits.add(new Edit(from, text.isEmpty() && spaces ? to + 1 : to, text));
  }

  final void insert(int at, String text) {
    edits.add(new Edit(at, at, text));
  }

  /** A word in the place of a sign, parted by spaces from the words about it. */
  final String spaced(int first, int last, String text) {
    String before = first > 0 && adjacent(first - 1) ? " " : "";
    return before + text + (adjacent(last) ? " " : "");
  }
}
