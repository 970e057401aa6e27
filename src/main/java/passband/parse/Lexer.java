package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.source.SourceFile;
import passband.source.Span;

/** Splits a text into words, says what cannot be a word, and joins the lines that go on. */
final class Lexer {
  private final SourceFile source;
  private final Diagnostics diagnostics;
  private final BitSet badLines;

  private Lexer(SourceFile source, Diagnostics diagnostics, BitSet badLines) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.badLines = badLines;
  }

  /**
   * The words of a text, without comments, a line that goes on being one line; the last word is the
   * end of the file.
   *
   * @param badLines receives the lines on which something was no word: one bad line is one error
   */
  static List<Token> of(SourceFile source, Diagnostics diagnostics, BitSet badLines) {
    Lexer words = new Lexer(source, diagnostics, badLines);
    return words.joined(words.sound(lex(source.text()), Conflicts.check(source, diagnostics)));
  }

  /** Every word and comment of a text. */
  static List<CommonToken> lex(String text) {
    List<CommonToken> raw = Scanner.words(text);
    List<CommonToken> words = new ArrayList<>(raw.size());
    for (CommonToken word : raw) {
      if (word.getType() == NAME) {
        name(word, words);
      } else {
        words.add(word);
      }
    }
    return words;
  }

  private static void name(CommonToken word, List<CommonToken> words) {
    String text = word.getText();
    word.setType(Keywords.type(text));
    if (word.getType() == NAME && !allInName(text)) {
      split(word, words);
    } else {
      words.add(word);
    }
  }

  private static boolean allInName(String text) {
    int c;
    for (int i = 0; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      if (c >= 0x80 && !inName(c)) {
        return false;
      }
    }
    return true;
  }

  private static boolean inName(int c) {
    return Character.isLetter(c) || Character.isDigit(c) || c == '-' || c == '°';
  }

  /** The lexer takes any character beyond ASCII into a name; what is none there stands alone. */
  private static void split(CommonToken word, List<CommonToken> words) {
    String text = word.getText();
    int from = 0;
    while (from < text.length()) {
      int to = from;
      while (to < text.length() && inName(text.codePointAt(to))) {
        to += Character.charCount(text.codePointAt(to));
      }
      if (to == from) {
        to += Character.charCount(text.codePointAt(from));
        words.add(piece(word, STRAY, from, to));
      } else {
        for (CommonToken part : Scanner.words(text.substring(from, to))) {
          int type = part.getType() == NAME ? Keywords.type(part.getText()) : part.getType();
          int start = from + part.getStartIndex();
          words.add(piece(word, type, start, from + part.getStopIndex() + 1));
        }
      }
      from = to;
    }
  }

  /** A word made of some characters of another. */
  private static CommonToken piece(CommonToken word, int type, int from, int to) {
    CommonToken piece = new CommonToken(word);
    piece.setType(type);
    piece.setText(word.getText().substring(from, to));
    piece.setStartIndex(word.getStartIndex() + from);
    piece.setStopIndex(word.getStartIndex() + to - 1);
    return piece;
  }

  static Span span(SourceFile source, Token token) {
    int start = Math.max(0, token.getStartIndex());
    int end = Math.max(start, token.getStopIndex() + 1);
    int length = source.text().length();
    return new Span(source, Math.min(start, length), Math.min(end, length));
  }

  private List<CommonToken> sound(List<CommonToken> raw, BitSet leftOut) {
    List<CommonToken> words = new ArrayList<>(raw.size());
    for (CommonToken word : raw) {
      if (leftOut.get(word.getLine())) {
        continue;
      }
      switch (word.getType()) {
        case COMMENT -> {}
        case STRAY -> stray(word);
        case OPEN_TEXT -> words.add(openText(word));
        case COMMA_NUMBER -> words.add(commaNumber(word));
        default -> words.add(word);
      }
    }
    return words;
  }

  /** Whether a word is the first bad one of its line; the line is bad from now on. */
  private boolean firstBad(CommonToken word) {
    boolean first = !badLines.get(word.getLine());
    badLines.set(word.getLine());
    return first;
  }

  private void stray(CommonToken word) {
    if (!firstBad(word)) {
      return;
    }
    Span span = span(source, word);
    int c = span.text().isEmpty() ? 0 : span.text().codePointAt(0);
    String shown =
        Character.isISOControl(c) || c == 0xFEFF || Character.isSpaceChar(c)
            ? String.format(Locale.ROOT, "U+%04X", c)
            : "'" + Character.toString(c) + "'";
    diagnostics.say(Code.UNEXPECTED_CHARACTER, span, "unexpected character %s", shown);
  }

  private CommonToken openText(CommonToken word) {
    if (firstBad(word)) {
      Span span = span(source, word);
      diagnostics
          .say(Code.UNTERMINATED_TEXT, span, "this text has no closing quote on its line")
          .hint("close it with a \"; write \\n for a line break inside a text")
          .fix(Fix.insert("close the text", beforeBrace(span), "\""));
    }
    word.setType(TEXT);
    return word;
  }

  /** Where a text that runs on to the end of its line ought to end: before a block's brace. */
  private static Span beforeBrace(Span text) {
    String written = text.text().stripTrailing();
    String body = written.endsWith("{") ? written.substring(0, written.length() - 1) : written;
    int end = text.start() + body.stripTrailing().length();
    return new Span(text.file(), end, end);
  }

  private CommonToken commaNumber(CommonToken word) {
    String text = word.getText();
    Span span = span(source, word);
    String decimal = text.replaceFirst(",", ".").replace(",", "");
    String thousands = text.replace(",", "");
    String list = text.replace(",", ", ");
    if (firstBad(word)) {
      diagnostics
          .say(Code.COMMA_IN_NUMBER, span, "comma between two digits")
          .hint(
              "write %s for a decimal, %s for thousands or %s for a list", decimal, thousands, list)
          .fix(Fix.replace(span, decimal))
          .fix(Fix.replace(span, thousands))
          .fix(Fix.replace(span, list));
    }
    word.setType(NUMBER);
    return word;
  }

  /**
   * Drops the line ends inside parentheses and after a comma or an operator; in a table every line
   * end stays.
   */
  private List<Token> joined(List<CommonToken> words) {
    List<Token> lines = new ArrayList<>(words.size() + 1);
    int depth = 0;
    boolean inTable = false;
    Token last = null;
    for (CommonToken word : words) {
      int type = word.getType();
      if (type == NEWLINE && !inTable && last != null && (depth > 0 || goesOn(last))) {
        continue;
      }
      if (type == LBRACE || type == RBRACE) {
        inTable = type == LBRACE && last != null && last.getType() == TABLE;
        depth = 0;
      }
      depth = type == LPAREN ? depth + 1 : type == RPAREN ? Math.max(0, depth - 1) : depth;
      lines.add(word);
      last = word;
    }
    lines.add(end());
    return lines;
  }

  private static boolean goesOn(Token last) {
    return switch (last.getType()) {
      case COMMA, PLUS, MINUS, STAR, DIVIDE, SLASH, CARET, EQUALS -> true;
      default -> false;
    };
  }

  private CommonToken end() {
    CommonToken end = new CommonToken(Token.EOF, "<end of file>");
    int length = source.text().length();
    end.setStartIndex(length);
    end.setStopIndex(length - 1);
    end.setLine(source.lineCount());
    return end;
  }
}
