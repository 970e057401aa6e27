package passband.parse;

import static passband.parse.antlr.PassbandLexer.*;

import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.InputMismatchException;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Token;

/** Gives up on a line at its first fault and starts afresh on the next, or at the block that the line opens. */
final class LineErrors extends DefaultErrorStrategy {

  @Override
  public void recover(Parser parser, RecognitionException e) {
    while (!endsLine(parser.getCurrentToken().getType())) {
      parser.consume();
    }
  }

  private static boolean endsLine(int type) {
    return type == NEWLINE || type == LBRACE || type == RBRACE || type == Token.EOF;
  }

  @Override
  public Token recoverInline(Parser parser) {
    throw new InputMismatchException(parser);
  }

  @Override
  public void sync(Parser parser) {
    // Every line starts with a word that its block knows: there is nothing to skip between lines.
  }
}
