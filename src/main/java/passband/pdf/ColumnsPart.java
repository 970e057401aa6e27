package passband.pdf;

import java.io.IOException;
import java.util.List;

/** Texts in two columns of equal width, to be read down the left one first. */
record ColumnsPart(List<TextPart> left, List<TextPart> right, double shift) implements Part {
  /** A text is at most so high in a column, in points. */
  static final double MOST = 60;

  @Override
  public double height() {
    return Math.max(height(left), height(right));
  }

  private static double height(List<TextPart> column) {
    double sum = 0;
    for (TextPart text : column) {
      sum += text.height();
    }
    return sum;
  }

  @Override
  public boolean staysWithNext() {
    return true;
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    draw(canvas, left, x, y);
    draw(canvas, right, x + shift, y);
  }

  private static void draw(Canvas canvas, List<TextPart> column, double x, double y)
      throws IOException {
    double top = y;
    for (TextPart text : column) {
      text.draw(canvas, x, top);
      top += text.height();
    }
  }
}
