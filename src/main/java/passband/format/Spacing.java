package passband.format;

import static passband.parse.antlr.PassbandLexer.*;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;

/** The words of a statement as pieces of text with what stands between them. */
final class Spacing {
  /** A word and whether a space stands before it, and whether a line may end after it. */
  record Piece(String text, boolean space, boolean breakable) {}

  private Spacing() {}

  static List<Piece> pieces(List<Token> words) {
    List<Piece> pieces = new ArrayList<>();
    boolean apart = false;
    boolean signed = false;
    for (int i = 0; i < words.size(); i++) {
      int type = words.get(i).getType();
      boolean unary = isSign(type) && (i == 0 || apart || !endsOperand(words.get(i - 1).getType()));
      pieces.add(
          new Piece(
              text(words.get(i)),
              i > 0 && space(words, i, signed),
              !unary && (type == COMMA || isOperator(type))));
      signed = unary;
      apart = inTolerance(words, i, apart);
    }
    return pieces;
  }

  private static boolean isSign(int type) {
    return type == PLUS || type == MINUS;
  }

  private static boolean isOperator(int type) {
    return switch (type) {
      case PLUS, MINUS, STAR, DIVIDE, CARET, EQUALS -> true;
      default -> false;
    };
  }

  /** In 'within +20 % -10 % of': the second sign is the amount's, not a difference. */
  private static boolean inTolerance(List<Token> words, int i, boolean apart) {
    int type = words.get(i).getType();
    if (type == PLUS && i > 0) {
      int before = words.get(i - 1).getType();
      return before == WITHIN || before == OR;
    }
    return apart && type != MINUS && type != OF && type != COMMA;
  }

  private static boolean endsOperand(int type) {
    return switch (type) {
      case NUMBER, PERCENT, RPAREN, NAME, TEXT, DATE -> true;
      default -> isName(type);
    };
  }

  /** A word of the language that may stand for a column in an expression. */
  private static boolean isName(int type) {
    return switch (type) {
      case WITHIN,
          OF,
          FROM,
          TO,
          MOST,
          LEAST,
          OR,
          STEP,
          COMMA,
          EQUALS,
          LPAREN,
          BAR,
          PLUS,
          MINUS,
          STAR,
          DIVIDE,
          SLASH,
          CARET,
          FOR,
          ON,
          RISK ->
          false;
      default -> type < LBRACE;
    };
  }

  private static boolean space(List<Token> words, int i, boolean signed) {
    int type = words.get(i).getType();
    int before = words.get(i - 1).getType();
    if (signed || type == COMMA || type == RPAREN || type == DOT || type == SLASH) {
      return false;
    }
    if (before == DOT || before == SLASH || before == LPAREN) {
      return false;
    }
    return type != LPAREN || before != NAME;
  }

  private static String text(Token word) {
    return word.getType() == DIVIDE ? "/" : word.getText();
  }

  /** The pieces on one line. */
  static String joined(List<Piece> pieces) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < pieces.size(); i++) {
      line.append(i > 0 && pieces.get(i).space() ? " " : "").append(pieces.get(i).text());
    }
    return line.toString();
  }
}
