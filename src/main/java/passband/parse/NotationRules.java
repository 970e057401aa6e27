package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntUnaryOperator;
import org.antlr.v4.runtime.CommonToken;
import org.jspecify.annotations.Nullable;

/**
 * What to write for the notations of manuals, spreadsheets, word processors and other languages.
 * Each rule looks at the words of a line from one place on.
 */
final class NotationRules extends LineEdits {
  /** Words and signs that stand for others; the longer ones of several come first. */
  private static final Map<String, String> SIGNS =
      Map.ofEntries(
          Map.entry("<", "at most"),
          Map.entry("<=", "at most"),
          Map.entry("=<", "at most"),
          Map.entry("≤", "at most"),
          Map.entry("≦", "at most"),
          Map.entry(">", "at least"),
          Map.entry(">=", "at least"),
          Map.entry("≥", "at least"),
          Map.entry("≧", "at least"),
          Map.entry("+/-", "within"),
          Map.entry("+-", "within"),
          Map.entry("±", "within"),
          Map.entry("->", "to"),
          Map.entry("=>", "to"),
          Map.entry("→", "to"),
          Map.entry("..", "to"),
          Map.entry("...", "to"),
          Map.entry("…", "to"),
          Map.entry("×", "*"),
          Map.entry("·", "*"));

  private static final Map<String, String> WORDS =
      Map.of(
          "max", "at most",
          "maximum", "at most",
          "min", "at least",
          "minimum", "at least",
          "percent", "%",
          "the", "");

  /** Spaces of a word processor. */
  private static final String SPACES = "\u00a0\u2007\u2009\u202f";

  private static final String DASHES = "-–—−‐‑";
  private static final String QUOTES = "“”„«»";
  private static final String SINGLE_QUOTES = "‘’'‚`";

  /** Each gives the place after the words that it takes; 0 where it does not apply. */
  private final List<IntUnaryOperator> rules =
      List.of(
          this::space,
          this::quoted,
          this::bare,
          this::date,
          this::between,
          this::decimal,
          this::about,
          this::range,
          this::minus,
          this::sign,
          this::word,
          this::separator,
          this::joined,
          this::tabs,
          this::list);

  private NotationRules(String line, List<CommonToken> words) {
    super(line, words);
  }

  /** What to change in a line, in order; empty where nothing is in another notation. */
  static List<Edit> edits(String line, List<CommonToken> words) {
    List<Edit> whole = LineNotations.edits(line, words);
    if (!whole.isEmpty()) {
      return whole;
    }
    NotationRules rules = new NotationRules(line, words);
    rules.run();
    rules.edits.sort(Comparator.comparingInt(Edit::from));
    return rules.edits;
  }

  /** The line, changed. */
  static String apply(String line, List<Edit> edits) {
    StringBuilder text = new StringBuilder(line);
    for (int i = edits.size() - 1; i >= 0; i--) {
      text.replace(edits.get(i).from(), edits.get(i).to(), edits.get(i).text());
    }
    return text.toString();
  }

  private void run() {
    int at = 0;
    while (at < words.size()) {
      int next = rule(at);
      at = Math.max(at + 1, next);
    }
  }

  /** The first rule that applies from here on; the place after its words, 0 where none does. */
  private int rule(int at) {
    for (IntUnaryOperator rule : rules) {
      int next = rule.applyAsInt(at);
      if (next > 0) {
        return next;
      }
    }
    return 0;
  }

  // ---- from one word on ----

  /** Quotes of a word processor, or single ones. */
  private int quoted(int at) {
    String quotes = isOneOf(at, QUOTES) ? QUOTES : SINGLE_QUOTES;
    if (!isOneOf(at, quotes)) {
      return 0;
    }
    for (int i = at + 1; i < words.size(); i++) {
      boolean apostrophe = adjacent(i - 1) && adjacent(i) && isWord(i - 1) && isWord(i + 1);
      if (isOneOf(i, quotes) && !apostrophe) {
        replace(at, at, "\"");
        replace(i, i, "\"");
        return i + 1;
      }
    }
    return 0;
  }

  /** A space that is none of the language's. */
  private int space(int at) {
    if (!isOneOf(at, SPACES)) {
      return 0;
    }
    replace(at, at, " ");
    return at + 1;
  }

  /** A decimal comma; before three digits it may be one of thousands. */
  private int decimal(int at) {
    String number = text(at);
    int comma = number.indexOf(',');
    if (type(at) != COMMA_NUMBER
        || comma != number.lastIndexOf(',')
        || number.length() - comma == 4) {
      return 0;
    }
    int from = words.get(at).getStartIndex() + comma;
    edits.add(new Edit(from, from + 1, "."));
    return span(at, at + 1);
  }

  /** The dash of a word processor in a name or before a number. */
  private int minus(int at) {
    boolean dash = isOneOf(at, DASHES) && !text(at).equals("-");
    boolean inName = adjacent(at - 1) && adjacent(at) && isWord(at - 1) && isWord(at + 1);
    boolean signed = type(at + 1) == NUMBER && (type(at - 1) == PERCENT || type(at - 1) == NAME);
    if (!dash || !(inName || signed)) {
      return 0;
    }
    replace(at, at, "-");
    return at + 1;
  }

  /** Between X and Y; X to Y without the first word. */
  private int between(int at) {
    if (text(at).equals("between")) {
      for (int i = at + 1; i < words.size(); i++) {
        if (text(i).equals("and")) {
          replace(at, at, "from");
          replace(i, i, "to");
          return i + 1;
        }
      }
    }
    boolean first = text(0).equals("accept") && at == 2 && type(at) == NUMBER;
    if (first && text(at + 2).equals("to")) {
      insert(words.get(at).getStartIndex(), "from ");
      return at + 1;
    }
    return 0;
  }

  /** A date with the day first, with dots, or with the dashes of a word processor. */
  private int date(int at) {
    boolean dashed = type(at) == NUMBER && dash(at + 1) > 0 && dash(at + 3) > 0;
    if (dashed && text(at).length() == 4 && adjacent(at) && adjacent(at + 1)) {
      replace(at, at + 4, text(at) + "-" + text(at + 2) + "-" + text(at + 4));
      return at + 5;
    }
    boolean shaped = type(at) == NUMBER && type(at + 1) == DOT && type(at + 2) == NUMBER;
    int dot = text(at).indexOf('.');
    if (!shaped || dot < 1 || text(at + 2).length() != 4 || !adjacent(at) || !adjacent(at + 1)) {
      return 0;
    }
    String day = twoDigits(text(at).substring(0, dot));
    String month = twoDigits(text(at).substring(dot + 1));
    replace(at, at + 2, text(at + 2) + "-" + month + "-" + day);
    return at + 3;
  }

  private static String twoDigits(String number) {
    return number.length() == 1 ? "0" + number : number;
  }

  /** A middle and how far both ends are from it, in numbers. */
  private int about(int at) {
    int after = sign(at + 1, "within");
    if (type(at) != NUMBER || after == 0 || type(after) != NUMBER || isShare(after)) {
      return 0;
    }
    BigDecimal middle = new BigDecimal(text(at));
    BigDecimal half = new BigDecimal(text(after));
    replace(at, after, plain(middle.subtract(half)) + " to " + plain(middle.add(half)));
    return after + 1;
  }

  private boolean isShare(int at) {
    return type(at + 1) == PERCENT;
  }

  private static String plain(BigDecimal number) {
    return number.toPlainString();
  }

  /** Two numbers with a dash or dots between them; the first takes over the second's unit. */
  private int range(int at) {
    return type(at) == NUMBER ? span(at, at + 1) : 0;
  }

  private int span(int at, int dash) {
    int after = dash(dash);
    after = after > 0 ? after : sign(dash, "to");
    boolean number = type(after) == NUMBER || type(after) == COMMA_NUMBER;
    boolean apart = type(at) == NUMBER && type(dash) == NAME && dash(dash + 1) > 0;
    if (apart && type(dash + 2) == NUMBER) {
      replace(dash + 1, dash + 1, "to");
      return dash + 2;
    }
    if (after == 0 || !number) {
      return type(at) == NUMBER ? 0 : at + 1;
    }
    boolean unit = type(after + 1) == NAME && !hasBar();
    String own = unit ? " " + text(after + 1) : "";
    String start = at > 1 && text(0).equals("accept") && type(at - 1) == NAME ? "from " : "";
    if (!start.isEmpty()) {
      insert(words.get(at).getStartIndex(), start);
    }
    int from = words.get(at).getStopIndex() + 1;
    edits.add(new Edit(from, words.get(after).getStartIndex(), own + " to "));
    return type(after) == NUMBER ? after + 1 : after;
  }

  private int dash(int at) {
    return isOneOf(at, DASHES) ? at + 1 : 0;
  }

  private int sign(int at) {
    for (int length = 3; length > 0; length--) {
      @Nullable String meant = at + length > words.size() ? null : SIGNS.get(together(at, length));
      if (meant != null && (at > 0 || !meant.equals("within"))) {
        boolean doubled = meant.equals("within") && text(at - 1).equals("within");
        replace(at, at + length - 1, doubled ? "" : spaced(at, at + length - 1, meant));
        return at + length;
      }
    }
    return 0;
  }

  /** The place after a sign of this meaning; 0 when there is none. */
  private int sign(int at, String meaning) {
    for (int length = 3; length > 0; length--) {
      if (at + length <= words.size() && meaning.equals(SIGNS.get(together(at, length)))) {
        return at + length;
      }
    }
    return 0;
  }

  /** The text of some words that no space parts; empty where a space does. */
  private String together(int at, int count) {
    StringBuilder text = new StringBuilder(text(at));
    for (int i = at + 1; i < at + count; i++) {
      if (!adjacent(i - 1)) {
        return "";
      }
      text.append(text(i));
    }
    return text.toString();
  }

  private int word(int at) {
    if (text(at).equals("up") && text(at + 1).equals("to") && at > 0) {
      replace(at, at + 1, "at most");
      return at + 2;
    }
    if (text(at).equals("by") && type(at + 1) == NUMBER) {
      replace(at, at, "step");
      return at + 1;
    }
    String meant = WORDS.get(text(at).toLowerCase(Locale.ROOT));
    boolean said = type(at) == NAME || type(at) == OF;
    if (meant == null || !said || at == 0 || isNamed(at)) {
      return 0;
    }
    boolean dotted = type(at + 1) == DOT && adjacent(at);
    replace(at, dotted ? at + 1 : at, meant);
    return dotted ? at + 2 : at + 1;
  }

  /** Whether a function's argument follows: {@code max(…)}. */
  private boolean isNamed(int at) {
    return type(at + 1) == LPAREN;
  }

  /** What other languages put after a name or at the end of a line. */
  private int separator(int at) {
    String text = text(at);
    boolean last = at + 1 == words.size() || ends(at + 1);
    if (text.equals(";")) {
      replace(at, at, last ? "" : ",");
    } else if (text.equals(":") || (text.equals("=") && at == 1)) {
      replace(at, at, "");
    } else {
      return 0;
    }
    return at + 1;
  }

  /** A name of two words, or with a line between them. */
  private int joined(int at) {
    if (!isWord(at)) {
      return 0;
    }
    if (text(at + 1).equals("_") && isWord(at + 2) && adjacent(at) && adjacent(at + 1)) {
      replace(at + 1, at + 1, "-");
      return at + 2;
    }
    String both = text(at) + "-" + text(at + 1);
    boolean keyword = isWord(at + 1) && Keywords.type(both) != NAME;
    boolean declared = at == 1 && isWord(0) && type(3) == TEXT;
    boolean name = at > 0 && (declared || type(at) == NAME) && isWord(at + 1) && !adjacent(at);
    if ((keyword || name) && !hasTab(at)) {
      int from = words.get(at).getStopIndex() + 1;
      edits.add(new Edit(from, words.get(at + 1).getStartIndex(), "-", true));
      return at + 1;
    }
    return 0;
  }

  /** Cells that tabs part. */
  private int tabs(int at) {
    if (at + 1 >= words.size() || !hasTab(at) || hasBar() || ends(at + 1)) {
      return 0;
    }
    int from = words.get(at).getStopIndex() + 1;
    edits.add(new Edit(from, words.get(at + 1).getStartIndex(), " | "));
    return at + 1;
  }

  /** Numbers in a row without commas. */
  private int list(int at) {
    if (type(at) != NUMBER || type(at + 1) != NUMBER || adjacent(at) || hasTab(at)) {
      return 0;
    }
    insert(words.get(at).getStopIndex() + 1, ",");
    return at + 1;
  }

  /** A tolerance without its first word, and a name that ought to be a text. */
  private int bare(int at) {
    boolean tolerance = type(at) == NUMBER && isShare(at) && text(0).equals("accept");
    if (tolerance && isWord(at - 1) && !text(at - 1).equals("within")) {
      insert(words.get(at).getStartIndex(), "within ");
      return at + 1;
    }
    if (text(at - 1).equals("revision") && type(at) != TEXT) {
      replace(at, at, "\"" + text(at) + "\"");
      return at + 1;
    }
    return 0;
  }
}
