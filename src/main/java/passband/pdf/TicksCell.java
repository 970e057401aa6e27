package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Boxes to tick, each with a word.
 *
 * @param ticks line by line
 */
record TicksCell(List<List<Tick>> ticks, @Nullable String item) implements TableCell {
  /** The size of a word. */
  static final double WORD_SIZE = 9;

  private static final double LINE = 13.5;
  private static final double BOX = 9;
  private static final double GAP = 3;

  /** What is free at least between a word and the next box, so that nobody takes it for its own. */
  private static final double BETWEEN = 10;

  /**
   * A box with its word.
   *
   * @param room from the left of the box to that of the next, in points
   */
  record Tick(TextBlock word, double room) {}

  /** How wide a line is with these words, in points. */
  static double width(List<Double> words) {
    double sum = -BETWEEN;
    for (double word : words) {
      sum += BOX + GAP + word + BETWEEN;
    }
    return sum;
  }

  /**
   * How far the boxes of a line are apart: as their words need it where they have room, else alike.
   */
  static List<Double> rooms(List<Double> words, double width) {
    double spare = (width - width(words)) / words.size();
    List<Double> rooms = new ArrayList<>();
    for (double word : words) {
      rooms.add(spare < 0 ? width / words.size() : BOX + GAP + word + BETWEEN + spare);
    }
    return rooms;
  }

  /** How wide a word can be with this room for it and its box. */
  static double wordWidth(double room) {
    return room - BOX - GAP;
  }

  @Override
  public double height() {
    double sum = -GAP;
    for (List<Tick> line : ticks) {
      sum += height(line);
    }
    return sum;
  }

  private static double height(List<Tick> line) {
    double most = LINE;
    for (Tick tick : line) {
      most = Math.max(most, tick.word.height() + GAP);
    }
    return most;
  }

  @Override
  public void draw(Canvas canvas, double x, double y, double width) throws IOException {
    double top = y;
    for (List<Tick> line : ticks) {
      double left = x;
      for (Tick tick : line) {
        canvas.rect(left, top + 1, BOX, BOX, 0.9);
        tick.word.draw(canvas, left + BOX + GAP, top);
        left += tick.room;
      }
      top += height(line);
    }
  }
}
