package passband.pdf;

import org.jspecify.annotations.Nullable;

/** Room to write in. */
record BlankCell(double height, @Nullable String item) implements TableCell {
  @Override
  public void draw(Canvas canvas, double x, double y, double width) {}
}
