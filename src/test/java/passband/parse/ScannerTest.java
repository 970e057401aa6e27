package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import passband.parse.antlr.PassbandLexer;
import passband.testing.Repository;

/** The table-driven lexer gives the tokens that ANTLR's own lexer gives. */
class ScannerTest {

  /** Every source of the library whole, and cut and spoilt at random. */
  @Test
  void theWordsAreThoseOfAntlr() {
    Random random = new Random(11);
    String spoilers = "\"\\#{}()|,.=+-*^%/ \t\r\n0123456789eEabZ_~$\u0000é°Ω\u2028𝄞";
    int[] characters = spoilers.codePoints().toArray();
    int words = 0;
    for (Path file : Repository.files(Repository.PROCEDURES, ".pband")) {
      String text = Repository.text(file);
      words += same(text);
      for (int i = 0; i < 40; i++) {
        StringBuilder spoilt = new StringBuilder(text.substring(random.nextInt(text.length())));
        spoilt.setLength(Math.min(spoilt.length(), 600));
        for (int j = 0; j < 30; j++) {
          int at = random.nextInt(spoilt.length() + 1);
          spoilt.insert(at, Character.toString(characters[random.nextInt(characters.length)]));
        }
        words += same(spoilt.toString().replaceAll("\\p{Cs}", "x"));
      }
    }
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int j = random.nextInt(12); j >= 0; j--) {
        text.appendCodePoint(characters[random.nextInt(characters.length)]);
      }
      words += same(text.toString());
    }
    assertTrue(words > 100_000, words + " words");
  }

  /** Compares type, place and text of every word, and gives their number. */
  private static int same(String text) {
    PassbandLexer lexer = new PassbandLexer(CharStreams.fromString(text));
    lexer.removeErrorListeners();
    List<String> wanted = new ArrayList<>();
    for (Token token : lexer.getAllTokens()) {
      int from = text.offsetByCodePoints(0, token.getStartIndex());
      int to = text.offsetByCodePoints(0, token.getStopIndex() + 1);
      wanted.add(token.getType() + " " + from + " " + to + " " + token.getText());
    }
    List<String> found = new ArrayList<>();
    for (CommonToken token : Scanner.words(text)) {
      assertEquals(
          text.substring(0, token.getStartIndex()).split("\r\n|\r|\n", -1).length, token.getLine());
      found.add(
          token.getType()
              + " "
              + token.getStartIndex()
              + " "
              + (token.getStopIndex() + 1)
              + " "
              + token.getText());
    }
    assertEquals(String.join("\n", wanted), String.join("\n", found), text);
    return found.size();
  }
}
