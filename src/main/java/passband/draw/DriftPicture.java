package passband.draw;

import java.util.ArrayList;
import java.util.List;

/** Readings over time between what is accepted. 90 mm wide. */
public final class DriftPicture {
  private static final double LEFT = 58;
  private static final double RIGHT = 350;
  private static final double TOP = 34;
  private static final double BOTTOM = 150;
  private static final double SIZE = 10;

  /** So many have room above the axes; the whole title is the picture's accessible name. */
  private static final int TITLE_LINES = 2;

  private DriftPicture() {}

  /**
   * The picture.
   *
   * @param days since the first reading, and the readings at them
   * @param low the accepted limits; NaN where that side is open, likewise {@code high}
   */
  public static Drawing of(
      String name, List<Double> days, List<Double> readings, double low, double high, String unit) {
    List<Double> all = new ArrayList<>(readings);
    if (!Double.isNaN(low)) {
      all.add(low);
    }
    if (!Double.isNaN(high)) {
      all.add(high);
    }
    Scale x = Scale.over(days, LEFT + 8, RIGHT - 8);
    Scale y = Scale.over(all, BOTTOM, TOP);
    List<Shape> shapes = new ArrayList<>();
    double line = 14;
    for (String part : TextWidths.wrapped(name, 350, SIZE, true, TITLE_LINES)) {
      shapes.add(new Shape.Text(4, line, SIZE, true, Shape.Anchor.START, part));
      line += 12;
    }
    for (double tick : y.ticks()) {
      double at = y.at(tick);
      shapes.add(rule(LEFT, at, RIGHT, at, 0.6, "#cfcfcf"));
      shapes.add(
          new Shape.Text(LEFT - 5, at + 3.5, SIZE, false, Shape.Anchor.END, Scale.text(tick)));
    }
    for (double tick : x.ticks()) {
      shapes.add(
          new Shape.Text(
              x.at(tick), BOTTOM + 14, SIZE, false, Shape.Anchor.MIDDLE, Scale.text(tick)));
    }
    for (double limit : new double[] {low, high}) {
      if (!Double.isNaN(limit)) {
        shapes.add(rule(LEFT, y.at(limit), RIGHT, y.at(limit), 1.8, Palette.INK));
      }
    }
    List<Shape.At> points = new ArrayList<>();
    for (int i = 0; i < days.size(); i++) {
      points.add(new Shape.At(x.at(days.get(i)), y.at(readings.get(i))));
    }
    shapes.add(new Shape.Line(points, 1, Palette.INK, List.of(3.0, 2.0)));
    points.forEach(
        p -> shapes.add(new Shape.Circle(p.x(), p.y(), 3, Palette.INK, Palette.PAPER, 0.8)));
    shapes.add(new Shape.Text(4, BOTTOM + 14, SIZE, true, Shape.Anchor.START, unit));
    shapes.add(
        new Shape.Text(
            (LEFT + RIGHT) / 2,
            BOTTOM + 28,
            SIZE,
            true,
            Shape.Anchor.MIDDLE,
            "days; thick lines: accepted"));
    return new Drawing(
        "drift", name, "Readings of " + name + ": " + readings, 360, BOTTOM + 34, shapes);
  }

  private static Shape rule(
      double x1, double y1, double x2, double y2, double width, String colour) {
    return new Shape.Line(
        List.of(new Shape.At(x1, y1), new Shape.At(x2, y2)), width, colour, List.of());
  }
}
