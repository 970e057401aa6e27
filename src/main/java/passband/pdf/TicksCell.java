package passband.pdf;

import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Boxes to tick, each with a word.
 *
 * @param ticks the words line by line
 */
record TicksCell(List<List<TextBlock>> ticks, @Nullable String item) implements TableCell {
  private static final double LINE = 13.5;
  private static final double BOX = 9;
  private static final double GAP = 3;

  /** How wide a word can be, one of {@code count} in a line. */
  static double wordWidth(double width, int count) {
    return width / count - BOX - GAP;
  }

  @Override
  public double height() {
    double sum = -GAP;
    for (List<TextBlock> line : ticks) {
      sum += height(line);
    }
    return sum;
  }

  private static double height(List<TextBlock> line) {
    double most = LINE;
    for (TextBlock word : line) {
      most = Math.max(most, word.height() + GAP);
    }
    return most;
  }

  @Override
  public void draw(Canvas canvas, double x, double y, double width) throws IOException {
    double top = y;
    for (List<TextBlock> line : ticks) {
      double left = x;
      for (TextBlock word : line) {
        canvas.rect(left, top + 1, BOX, BOX, 0.9);
        word.draw(canvas, left + BOX + GAP, top);
        left += width / line.size();
      }
      top += height(line);
    }
  }
}
