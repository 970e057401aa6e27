package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.antlr.v4.runtime.Token;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;

/**
 * Keeps what would nest too deeply away from the parser and the tree's visitors, which descend once
 * for each parenthesis and operator.
 */
final class Depth {
  private Depth() {}

  /** The words without the rest of each line that nests too deeply; the line is said to be bad. */
  static List<Token> limited(
      SourceFile source, List<Token> words, Diagnostics diagnostics, BitSet badLines) {
    List<Token> kept = new ArrayList<>(words.size());
    int depth = 0;
    boolean skipping = false;
    for (Token word : words) {
      int type = word.getType();
      boolean ends = type == NEWLINE || type == LBRACE || type == RBRACE || type == Token.EOF;
      depth = ends ? 0 : depth + (descends(type) ? 1 : 0);
      skipping = skipping && !ends;
      if (!skipping && depth > Syntax.DEEPEST) {
        skipping = true;
        if (!badLines.get(word.getLine())) {
          badLines.set(word.getLine());
          diagnostics.say(
              Code.NESTED_TOO_DEEPLY,
              Lexer.span(source, word),
              "this line is nested more than %d levels deep",
              Syntax.DEEPEST);
        }
      }
      if (!skipping) {
        kept.add(word);
      }
    }
    return kept;
  }

  private static boolean descends(int type) {
    return switch (type) {
      case LPAREN, PLUS, MINUS, STAR, DIVIDE, CARET -> true;
      default -> false;
    };
  }
}
