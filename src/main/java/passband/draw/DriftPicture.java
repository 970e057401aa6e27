package passband.draw;

import java.time.LocalDate;
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

  /** From an end of the axis to the first date: half a date has room. */
  private static final double AT_ENDS = 28;

  private static final double DATE_WIDTH = 62;
  private static final double CAP = 4;

  private DriftPicture() {}

  /** At the next date the reading is expected between these; the same where that is not known. */
  public record Next(LocalDate date, double low, double high) {}

  /**
   * The picture.
   *
   * @param dates of the readings, in order
   * @param low the accepted limits; NaN where that side is open, likewise {@code high}
   * @param next what is expected of the next reading
   */
  public static Drawing of(
      String name,
      List<LocalDate> dates,
      List<Double> readings,
      double low,
      double high,
      String unit,
      Next next) {
    List<Double> days = new ArrayList<>();
    dates.forEach(date -> days.add((double) date.toEpochDay()));
    days.add((double) next.date().toEpochDay());
    List<Double> all = new ArrayList<>(readings);
    all.add(next.low());
    all.add(next.high());
    if (!Double.isNaN(low)) {
      all.add(low);
    }
    if (!Double.isNaN(high)) {
      all.add(high);
    }
    Scale x = new Scale(days.get(0), days.get(days.size() - 1), 1, LEFT + AT_ENDS, RIGHT - AT_ENDS);
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
    labels(dates, next.date(), x, shapes);
    for (double limit : new double[] {low, high}) {
      if (!Double.isNaN(limit)) {
        shapes.add(rule(LEFT, y.at(limit), RIGHT, y.at(limit), 1.8, Palette.INK));
      }
    }
    List<Shape.At> points = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      points.add(new Shape.At(x.at(days.get(i)), y.at(readings.get(i))));
    }
    shapes.add(new Shape.Line(points, 1, Palette.INK, List.of(3.0, 2.0)));
    points.forEach(
        p -> shapes.add(new Shape.Circle(p.x(), p.y(), 3, Palette.INK, Palette.PAPER, 0.8)));
    double ahead = x.at(next.date().toEpochDay());
    shapes.add(rule(ahead, y.at(next.low()), ahead, y.at(next.high()), 1.8, Palette.INK));
    for (double end : new double[] {next.low(), next.high()}) {
      shapes.add(rule(ahead - CAP, y.at(end), ahead + CAP, y.at(end), 1.8, Palette.INK));
    }
    shapes.add(new Shape.Text(4, TOP + 4, SIZE, true, Shape.Anchor.START, unit));
    shapes.add(
        new Shape.Text(
            (LEFT + RIGHT) / 2,
            BOTTOM + 28,
            SIZE,
            true,
            Shape.Anchor.MIDDLE,
            "thick lines: accepted; bar: where the next lies, 95 %"));
    return new Drawing(
        "drift", name, "Readings of " + name + ": " + readings, 360, BOTTOM + 34, shapes);
  }

  /** The first and the next date, and those between that have room. */
  private static void labels(List<LocalDate> dates, LocalDate next, Scale x, List<Shape> shapes) {
    double end = x.at(next.toEpochDay());
    double free = Double.NEGATIVE_INFINITY;
    for (LocalDate date : dates) {
      double at = x.at(date.toEpochDay());
      if (at >= free && at <= end - DATE_WIDTH) {
        shapes.add(date(at, date));
        free = at + DATE_WIDTH;
      }
    }
    shapes.add(date(end, next));
  }

  private static Shape date(double at, LocalDate date) {
    return new Shape.Text(at, BOTTOM + 14, SIZE, false, Shape.Anchor.MIDDLE, date.toString());
  }

  private static Shape rule(
      double x1, double y1, double x2, double y2, double width, String colour) {
    return new Shape.Line(
        List.of(new Shape.At(x1, y1), new Shape.At(x2, y2)), width, colour, List.of());
  }
}
