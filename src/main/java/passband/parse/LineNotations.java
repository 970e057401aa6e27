package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.CommonToken;

/**
 * What to write for lines that are as a whole in another notation: comments, rows and headings of
 * tables, a printed name without quotes.
 */
final class LineNotations extends LineEdits {
  /** What is declared with a printed name. */
  private static final Set<String> TITLED =
      Set.of(
          "jack", "key", "pole", "contact", "earth", "lead", "link", "accessory", "mode", "test");

  private LineNotations(String line, List<CommonToken> words) {
    super(line, words);
  }

  /** What to change in a line; empty where it is none of these. */
  static List<Edit> edits(String line, List<CommonToken> words) {
    LineNotations one = new LineNotations(line, words);
    boolean any =
        one.comment() || one.ruled() || one.framed() || one.row() || one.units() || one.title();
    return any ? one.edits : List.of();
  }

  // ---- whole lines ----

  /** A comment of another language. */
  private boolean comment() {
    String text = line.strip();
    for (String start : List.of("//", "/*", "--", ";")) {
      if (text.startsWith(start)) {
        int from = line.indexOf(start);
        edits.add(new Edit(from, from + start.length(), "#"));
        return true;
      }
    }
    return commentAtEnd();
  }

  /** The same after what the line says. */
  private boolean commentAtEnd() {
    for (int i = 1; i + 1 < words.size(); i++) {
      int at = line.indexOf("//", words.get(i - 1).getStopIndex() + 1);
      boolean between = at >= 0 && at <= words.get(i).getStopIndex();
      if (between && words.get(i).getType() != TEXT && words.get(i).getType() != COMMENT) {
        edits.add(new Edit(at, at + 2, "#"));
        return true;
      }
    }
    return false;
  }

  /** Cells that semicolons part. */
  private boolean row() {
    int found = 0;
    for (int i = 0; i + 1 < words.size(); i++) {
      found += text(i).equals(";") ? 1 : 0;
    }
    if (found < 2 || hasBar()) {
      return false;
    }
    for (int i = 0; i < words.size(); i++) {
      if (text(i).equals(";")) {
        replace(i, i, "|");
      }
    }
    return true;
  }

  /** Units in parentheses after a column's name. */
  private boolean units() {
    for (int i = 0; hasBar() && i + 3 < words.size(); i++) {
      boolean round = text(i + 1).equals("(") && text(i + 3).equals(")");
      boolean square = text(i + 1).equals("[") && text(i + 3).equals("]");
      if (type(i + 2) == NAME && (round || square)) {
        int from = words.get(i).getStopIndex() + 1;
        edits.add(new Edit(from, words.get(i + 3).getStopIndex() + 1, "/" + text(i + 2)));
      }
    }
    return !edits.isEmpty();
  }

  /** A printed name without quotes. */
  private boolean title() {
    boolean titled = words.size() > 2 && TITLED.contains(text(0));
    for (CommonToken word : words) {
      titled &= word.getType() != TEXT && word.getType() != OPEN_TEXT;
    }
    int last = 2;
    while (titled && last + 1 < words.size() && !ends(last + 1) && !isAfterTitle(last + 1)) {
      last++;
    }
    if (!titled || ends(2) || isAfterTitle(2) || type(2) != NAME) {
      return false;
    }
    insert(words.get(2).getStartIndex(), "\"");
    insert(words.get(last).getStopIndex() + 1, "\"");
    return true;
  }

  private boolean isAfterTitle(int at) {
    return AFTER_TITLE.contains(text(at)) || isOneOf(at, "{,");
  }

  /** Bars at both ends of a row. */
  private boolean framed() {
    int last = words.size() - 1;
    boolean bars = last > 0 && type(0) == BAR && type(last) == BAR;
    if (bars) {
      replace(0, 0, "");
      replace(last, last, "");
    }
    return bars;
  }

  /** The rule under the heading of a table, as some notations have it. */
  private boolean ruled() {
    String text = line.strip();
    boolean dashed = text.contains("--");
    for (int i = 0; i < text.length(); i++) {
      dashed &= "|-:+= \t".indexOf(text.charAt(i)) >= 0;
    }
    if (dashed) {
      edits.add(new Edit(0, line.length(), ""));
    }
    return dashed;
  }
}
