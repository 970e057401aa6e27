package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import passband.draw.Drawing;

/** Two pictures side by side, or one. */
record PicturesPart(List<String> path, List<Drawing> drawings, double inner) implements Part {
  @Override
  public double height() {
    return drawings.stream().mapToDouble(d -> d.height() * SetupPart.UNIT).max().orElse(0) + 12;
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    for (int i = 0; i < drawings.size(); i++) {
      Drawing drawing = drawings.get(i);
      double left = x + i * inner / 2;
      List<String> figure = new ArrayList<>(path);
      figure.add("Figure:" + drawing.name());
      canvas.figure(
          figure,
          drawing.title() + ". " + drawing.description(),
          () -> canvas.drawing(drawing, left, y, SetupPart.UNIT));
    }
  }
}
