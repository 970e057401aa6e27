package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.InputMismatchException;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.RuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.misc.IntervalSet;

/**
 * Gives up on a line at its first fault and starts afresh on the next, or in the block that the
 * line opens. A line with a fault leaves its context with an exception, by which the tree leaves it
 * out.
 */
final class LineErrors extends DefaultErrorStrategy {

  @Override
  public void recover(Parser parser, RecognitionException e) {
    skipLine(parser);
    if (parser.getCurrentToken().getType() == LBRACE && !inHead(parser)) {
      skipBlock(parser);
    }
  }

  private static void skipLine(Parser parser) {
    while (!endsLine(parser.getCurrentToken().getType())) {
      parser.consume();
    }
  }

  private static boolean endsLine(int type) {
    return type == NEWLINE || type == LBRACE || type == RBRACE || type == Token.EOF;
  }

  /** The head of a block is left at its brace: what is in the block is still looked at. */
  private static boolean inHead(Parser parser) {
    for (RuleContext context = parser.getContext(); context != null; context = context.parent) {
      if (parser.getRuleNames()[context.getRuleIndex()].endsWith("Head")) {
        return true;
      }
    }
    return false;
  }

  private static void skipBlock(Parser parser) {
    int depth = 0;
    do {
      int type = parser.getCurrentToken().getType();
      depth += type == LBRACE ? 1 : type == RBRACE ? -1 : 0;
      if (type == Token.EOF) {
        return;
      }
      parser.consume();
    } while (depth > 0);
  }

  /** Where a line should have ended, skips to where it does. */
  @Override
  public Token recoverInline(Parser parser) {
    InputMismatchException fault = new InputMismatchException(parser);
    if (!endsHere(getExpectedTokens(parser))) {
      throw fault;
    }
    reportError(parser, fault);
    skipLine(parser);
    Token end = parser.getCurrentToken();
    if (!getExpectedTokens(parser).contains(end.getType())) {
      throw fault;
    }
    if (end.getType() == NEWLINE) {
      parser.getContext().exception = fault;
    }
    parser.consume();
    return end;
  }

  private static boolean endsHere(IntervalSet expected) {
    return expected.size() > 0
        && expected.subtract(new IntervalSet(NEWLINE, LBRACE, RBRACE)).isNil();
  }

  /** After the head of a block that need not be there, skips to the block or to the line's end. */
  @Override
  public void sync(Parser parser) {
    IntervalSet next =
        parser.getATN().nextTokens(parser.getInterpreter().atn.states.get(parser.getState()));
    int type = parser.getCurrentToken().getType();
    boolean afterHead = next.size() == 2 && next.contains(LBRACE) && next.contains(NEWLINE);
    if (afterHead && !next.contains(type)) {
      reportError(parser, new InputMismatchException(parser));
      skipLine(parser);
    }
  }
}
