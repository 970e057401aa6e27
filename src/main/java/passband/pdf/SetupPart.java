package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;

/**
 * The wiring: the drawing at the left, what to do with the leads at the right, a frame around both.
 *
 * @param drawing null where the run before or the page before shows it
 * @param words what stands beside the drawing, from top to bottom
 */
record SetupPart(List<String> path, @Nullable Drawing drawing, List<Part> words, double inner)
    implements Part {
  /** A unit of a drawing, a quarter of a millimetre, in points. */
  static final double UNIT = 72 / 25.4 / Drawing.UNITS_PER_MM;

  private static final double PAD = 6;
  private static final double BESIDE = 10;
  private static final double BELOW = 10;

  /** How wide the words are, beside a drawing or without one. */
  static double width(@Nullable Drawing drawing, double inner) {
    return inner - 2 * PAD - (drawing == null ? 0 : drawing.width() * UNIT + BESIDE);
  }

  @Override
  public double height() {
    double sum = 0;
    for (Part part : words) {
      sum += part.height();
    }
    return Math.max(pictureHeight(), sum) + 2 * PAD + BELOW;
  }

  private double pictureHeight() {
    return drawing == null ? 0 : drawing.height() * UNIT;
  }

  /** Words alone go with the readings that follow. */
  @Override
  public boolean staysWithNext() {
    return drawing == null;
  }

  /** The drawing is whole; words without room beside it stand on the next page. */
  @Override
  public @Nullable Broken broken(double room) {
    double left = room - 2 * PAD - BELOW;
    if (pictureHeight() > left) {
      return null;
    }
    int count = 0;
    while (count < words.size() - 1 && !words.get(count).isHigherThan(left)) {
      left -= words.get(count).height();
      count++;
    }
    Broken next = words.get(count).broken(left);
    List<Part> upper = new ArrayList<>(words.subList(0, count));
    List<Part> lower = new ArrayList<>(words.subList(count, words.size()));
    if (next != null) {
      upper.add(next.upper());
      lower.set(0, next.lower());
    }
    while (!upper.isEmpty() && upper.get(upper.size() - 1).staysWithNext()) {
      lower.add(0, upper.remove(upper.size() - 1));
    }
    if (upper.isEmpty()) {
      return null;
    }
    Heading heading = lower.get(0).heading();
    if (heading != null) {
      lower.add(0, new Again(heading.again()));
    }
    return new Broken(
        new SetupPart(path, drawing, upper, inner), new SetupPart(path, null, lower, inner));
  }

  /** What has been said on a page before. */
  private record Again(Part part) implements Part {
    @Override
    public double height() {
      return part.height();
    }

    @Override
    public boolean staysWithNext() {
      return true;
    }

    @Override
    public void draw(Canvas canvas, double x, double y) throws IOException {
      canvas.again(() -> part.draw(canvas, x, y));
    }
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y + 2;
    canvas.artifact(() -> canvas.rect(x, top, inner, height() - BELOW, 1));
    double left = x + PAD;
    if (drawing != null) {
      List<String> figure = new ArrayList<>(path);
      figure.add("Figure");
      canvas.figure(
          figure,
          drawing.title() + ". " + drawing.description(),
          () -> canvas.drawing(drawing, x + PAD, top + PAD, UNIT));
      left += drawing.width() * UNIT + BESIDE;
    }
    double at = top + PAD;
    for (Part part : words) {
      part.draw(canvas, left, at);
      at += part.height();
    }
  }
}
