package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A block of text on paper is broken into lines in time that grows with it. */
class LongWordsOnPaperTest {
  /** Half the type's size for each letter; counts the letters that are measured. */
  private static final class Counting implements TypeWidths {
    private int measured;

    @Override
    public double width(String text, double size, boolean bold) {
      measured += text.length();
      return text.length() * size / 2;
    }

    @Override
    public double advance(int codePoint, boolean bold) {
      measured++;
      return 500;
    }
  }

  @Test
  void theWorkGrowsWithTheText() {
    for (int letters : List.of(100_000, 200_000)) {
      for (String part : List.of("m", "m ")) {
        Counting widths = new Counting();
        TextBlock block = TextBlock.of(widths, 10, 50, false, part.repeat(letters / part.length()));
        assertTrue(widths.measured <= 4 * letters, part + " " + widths.measured);
        assertEquals(letters / 10 * 12.5, block.height(), 1e-6);
      }
    }
  }
}
