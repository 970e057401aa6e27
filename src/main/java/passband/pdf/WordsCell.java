package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** A cell of text. */
record WordsCell(List<TextBlock> blocks, String role, int columns) implements TableCell {
  WordsCell(List<TextBlock> blocks, String role) {
    this(blocks, role, 1);
  }

  static WordsCell of(TextBlock block) {
    return new WordsCell(List.of(block), "TD");
  }

  @Override
  public double height() {
    double sum = 0;
    for (TextBlock block : blocks) {
      sum += block.height();
    }
    return sum;
  }

  @Override
  public void draw(Canvas canvas, double x, double y, double width) throws IOException {
    double top = y;
    for (TextBlock block : blocks) {
      block.draw(canvas, x, top);
      top += block.height();
    }
  }

  @Override
  public Halves broken(double room) {
    List<TextBlock> upper = new ArrayList<>();
    List<TextBlock> lower = new ArrayList<>();
    double left = room;
    for (TextBlock block : blocks) {
      int lines = lower.isEmpty() ? Math.min(block.linesIn(left), block.lines()) : 0;
      if (lines > 0) {
        upper.add(block.upper(lines));
      }
      if (lines < block.lines()) {
        lower.add(block.lower(lines));
      }
      left -= block.height();
    }
    return new Halves(with(upper), with(lower));
  }

  private WordsCell with(List<TextBlock> others) {
    return new WordsCell(others, role, columns);
  }
}
