package passband.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines are broken in time that grows with the text: each letter is measured a few times. */
class LongWordsTest {
  private int measured;

  private double advance(int codePoint) {
    measured++;
    return codePoint == 'i' || codePoint == ' ' ? 0.25 : codePoint == '\u0301' ? 0 : 0.5;
  }

  private List<String> wrapped(String text) {
    measured = 0;
    return TextWidths.wrapped(text, 20, 8, this::advance);
  }

  @ParameterizedTest
  @ValueSource(strings = {"m", "i", "mi", "\u0301", "\uD83D\uDD0C", "m ", "\u0301 ", "mmmmmmmm "})
  void theWorkGrowsWithTheText(String part) {
    for (int letters : List.of(100_000, 200_000)) {
      String text = part.repeat(letters / part.length());
      List<String> lines = wrapped(text);
      assertTrue(measured <= 4 * letters, letters + " letters measured " + measured + " times");
      assertEquals(text.replace(" ", ""), String.join("", lines).replace(" ", ""));
    }
  }

  @Test
  void eachPieceIsAsLongAsFits() {
    assertEquals(List.of("mmmmm", "mmmmm", "mmm"), wrapped("m".repeat(13)));
    assertEquals(List.of("m i m", "mmmmm", "m m"), wrapped("m i m mmmmmm m"));
    assertEquals(List.of(""), wrapped(" "));
    assertEquals(List.of("m", "m"), WordPieces.of("mm", 0, 8, this::advance));
  }
}
