package passband.parse;

import java.util.List;
import org.antlr.v4.runtime.IntStream;
import org.antlr.v4.runtime.RuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenSource;
import org.antlr.v4.runtime.TokenStream;
import org.antlr.v4.runtime.WritableToken;
import org.antlr.v4.runtime.misc.Interval;
import org.jspecify.annotations.Nullable;

/**
 * Lexer that are all there, and all for the parser, as the stream that it reads. ANTLR's own
 * streams fetch words as they are needed and look for the channel of each.
 */
final class ListTokenStream implements TokenStream {
  private final Token[] words;
  private int at;

  /**
   * @param words the last of them is the end of the file
   */
  ListTokenStream(List<? extends Token> words) {
    this.words = words.toArray(new Token[0]);
    for (int i = 0; i < this.words.length; i++) {
      ((WritableToken) this.words[i]).setTokenIndex(i);
    }
  }

  @Override
  public @Nullable Token LT(int k) {
    if (k == 0 || k < -at) {
      return null;
    }
    return k < 0 ? words[at + k] : words[Math.min(at + k, words.length) - 1];
  }

  @Override
  public int LA(int k) {
    Token word = LT(k);
    return word == null ? Token.INVALID_TYPE : word.getType();
  }

  @Override
  public void consume() {
    if (at == words.length - 1) {
      throw new IllegalStateException("cannot consume EOF");
    }
    at++;
  }

  @Override
  public Token get(int index) {
    return words[index];
  }

  @Override
  public int mark() {
    return 0;
  }

  @Override
  public void release(int marker) {
    // Everything stays.
  }

  @Override
  public int index() {
    return at;
  }

  @Override
  public void seek(int index) {
    at = Math.min(index, words.length - 1);
  }

  @Override
  public int size() {
    return words.length;
  }

  @Override
  public String getSourceName() {
    return IntStream.UNKNOWN_SOURCE_NAME;
  }

  /** There is none: the words were there before. */
  @Override
  public @Nullable TokenSource getTokenSource() {
    return null;
  }

  @Override
  public String getText() {
    return getText(Interval.of(0, words.length - 1));
  }

  @Override
  public String getText(Interval interval) {
    StringBuilder text = new StringBuilder();
    for (int i = interval.a; i <= interval.b && words[i].getType() != Token.EOF; i++) {
      text.append(words[i].getText());
    }
    return text.toString();
  }

  @Override
  public String getText(RuleContext context) {
    return getText(context.getSourceInterval());
  }

  @Override
  public String getText(Token start, Token stop) {
    return getText(Interval.of(start.getTokenIndex(), stop.getTokenIndex()));
  }
}
