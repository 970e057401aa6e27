package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;

/**
 * Splits a text into the words of the lexer grammar, by a table that the build makes of it. ANTLR's
 * own lexer finds that table out step by step while it reads, each time the program starts.
 *
 * <p>Places of words are UTF-16 units of the text; lines end as those of a source file do.
 */
final class Scanner {
  private static final int BEYOND = 128;
  private static final int ZERO = '0';
  private static final byte[] COLUMNS = LexerTable.COLUMNS.getBytes(StandardCharsets.ISO_8859_1);
  private static final byte[][] NEXT = next();

  private Scanner() {}

  private static byte[][] next() {
    byte[][] next = new byte[LexerTable.NEXT.length][];
    for (int i = 0; i < next.length; i++) {
      next[i] = LexerTable.NEXT[i].getBytes(StandardCharsets.ISO_8859_1);
    }
    return next;
  }

  /** The words in order, comments on a channel of their own, without the spaces between them. */
  static List<CommonToken> words(String text) {
    List<CommonToken> words = new ArrayList<>(text.length() / 4);
    int length = text.length();
    int line = 1;
    int start = 0;
    while (start < length) {
      int state = 1;
      int type = 0;
      int end = start;
      int at = start;
      while (at < length) {
        char c = text.charAt(at++);
        state = NEXT[state - 1][COLUMNS[c < BEYOND ? c : BEYOND] - ZERO] - ZERO;
        if (state == 0) {
          break;
        }
        if (LexerTable.TOKENS[state - 1] != 0) {
          type = LexerTable.TOKENS[state - 1];
          end = at;
        }
      }
      if (type != SPACE) {
        words.add(word(type, text, start, end, line));
      }
      if (type == NEWLINE) {
        line++;
      }
      start = end;
    }
    return words;
  }

  private static CommonToken word(int type, String text, int start, int end, int line) {
    CommonToken word = new CommonToken(type, text.substring(start, end));
    word.setStartIndex(start);
    word.setStopIndex(end - 1);
    word.setLine(line);
    if (type == COMMENT) {
      word.setChannel(Token.HIDDEN_CHANNEL);
    }
    return word;
  }
}
