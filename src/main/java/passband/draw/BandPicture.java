package passband.draw;

import java.util.ArrayList;
import java.util.List;

/**
 * What a limit accepted above what it accepts now, on one scale. 55 mm wide. The tolerance is
 * light, the acceptance within it dark; where a side is open the band goes to the edge.
 */
public final class BandPicture {
  private static final double WIDTH = 220;
  private static final double HEIGHT = 34;
  private static final double LEFT = 32;
  private static final double RIGHT = 216;
  private static final double BAR = 11;
  private static final double SIZE = 9;
  private static final String TOLERANCE = "#d9d9d9";
  private static final String ACCEPTED = "#6b6b6b";

  private BandPicture() {}

  /**
   * The ends of a limit, in one unit; NaN where a side is open.
   *
   * @param lower of the tolerance, likewise {@code upper}
   * @param from of the acceptance, likewise {@code to}
   */
  public record Band(double lower, double upper, double from, double to) {}

  /**
   * The picture.
   *
   * @param title what it shows, with the limits in words
   */
  public static Drawing of(String name, String title, Band was, Band now) {
    List<Double> ends = new ArrayList<>();
    for (Band band : List.of(was, now)) {
      for (double end : new double[] {band.lower, band.upper, band.from, band.to}) {
        if (!Double.isNaN(end)) {
          ends.add(end);
        }
      }
    }
    Scale scale = Scale.over(ends, LEFT + 8, RIGHT - 8);
    List<Shape> shapes = new ArrayList<>();
    row(shapes, "was", 3, was, scale);
    row(shapes, "now", 3 + BAR + 5, now, scale);
    return new Drawing(name, title, title, WIDTH, HEIGHT, shapes);
  }

  private static void row(List<Shape> shapes, String word, double y, Band band, Scale scale) {
    shapes.add(new Shape.Text(2, y + BAR - 2, SIZE, false, Shape.Anchor.START, word));
    bar(shapes, y, band.lower, band.upper, scale, TOLERANCE);
    bar(shapes, y + 2.5, band.from, band.to, scale, ACCEPTED);
  }

  private static void bar(
      List<Shape> shapes, double y, double from, double to, Scale scale, String fill) {
    double left = Double.isNaN(from) ? LEFT : scale.at(from);
    double right = Double.isNaN(to) ? RIGHT : scale.at(to);
    double height = fill.equals(TOLERANCE) ? BAR : BAR - 5;
    String stroke = fill.equals(TOLERANCE) ? Palette.INK : null;
    shapes.add(new Shape.Rect(left, y, Math.max(0.8, right - left), height, fill, stroke, 0.6));
  }
}
