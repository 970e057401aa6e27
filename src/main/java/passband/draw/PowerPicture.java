package passband.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import passband.detect.Gain;
import passband.detect.Outcome;
import passband.words.Language;

/**
 * The operating characteristic of a mode on an outlet: the probability that the sheet fails against
 * the error of the gain, the tolerance shaded, and the line of 95 %. 90 mm wide.
 */
public final class PowerPicture {
  private static final double LEFT = 46;
  private static final double RIGHT = 350;
  private static final double TOP = 34;
  private static final double BOTTOM = 150;

  /** The size of print, nine points. */
  private static final double SIZE = 12.7;

  private static final double LINE = 15;
  private static final int TITLE_LINES = 3;
  private static final String SHADE = "#e2e2e2";

  private PowerPicture() {}

  /** The picture of outlets that have one curve. */
  public static Drawing of(List<Gain> same, Language language) {
    Gain gain = same.get(0);
    List<String> outlets = new ArrayList<>();
    same.forEach(one -> outlets.add(one.place().outlet()));
    List<Double> gains = new ArrayList<>();
    gain.curve().forEach(at -> gains.add(at.gain() * 100));
    String title =
        gain.place().title()
            + (outlets.get(0).equals("-") ? "" : ", " + String.join(", ", outlets))
            + (gain.load().isEmpty() ? "" : ", " + language.number(gain.load()));
    List<String> lines =
        TextWidths.wrapped(title, RIGHT / WiringGrid.OTHER_TYPE, SIZE, true, TITLE_LINES);
    double top = TOP + (lines.size() - 1) * LINE;
    double bottom = BOTTOM + (lines.size() - 1) * LINE;
    Scale x = new Scale(gains.get(0), gains.get(gains.size() - 1), 10, LEFT, RIGHT);
    Scale ticks = Scale.over(gains, LEFT, RIGHT);
    Scale y = new Scale(0, 1, 0.5, bottom, top);
    List<Shape> shapes = new ArrayList<>();
    double from = Math.max(x.low(), gain.toleranceLow() * 100);
    double to = Math.min(x.high(), gain.toleranceHigh() * 100);
    shapes.add(
        new Shape.Rect(x.at(from), top, x.at(to) - x.at(from), bottom - top, SHADE, null, 0));
    for (int i = 0; i < lines.size(); i++) {
      shapes.add(text(4, 14 + i * LINE, true, Shape.Anchor.START, lines.get(i)));
    }
    for (double tick : new double[] {0, 0.5, Outcome.SURE_ENOUGH}) {
      boolean dashed = tick == Outcome.SURE_ENOUGH;
      shapes.add(
          new Shape.Line(
              List.of(new Shape.At(LEFT, y.at(tick)), new Shape.At(RIGHT, y.at(tick))),
              dashed ? 1 : 0.6,
              dashed ? Palette.INK : "#9a9a9a",
              dashed ? List.of(1.0, 2.0) : List.of()));
      shapes.add(
          text(
              LEFT - 5,
              y.at(tick) + 4.5,
              false,
              Shape.Anchor.END,
              language.number(Scale.text(tick))));
    }
    for (double tick : ticks.ticks()) {
      if (tick >= x.low() && tick <= x.high()) {
        double at = x.at(tick);
        shapes.add(
            new Shape.Line(
                List.of(new Shape.At(at, bottom), new Shape.At(at, bottom + 4)),
                1,
                Palette.INK,
                List.of()));
        String sign = tick < 0 ? "\u2212" : tick > 0 ? "+" : "";
        shapes.add(
            text(
                at,
                bottom + 17,
                false,
                Shape.Anchor.MIDDLE,
                sign + language.number(Scale.text(Math.abs(tick)))));
      }
    }
    shapes.add(curve(gain, Gain.At::shared, x, y, 1, List.of(4.0, 2.5)));
    shapes.add(curve(gain, Gain.At::power, x, y, 2, List.of()));
    shapes.add(
        text(
            (LEFT + RIGHT) / 2,
            bottom + 32,
            true,
            Shape.Anchor.MIDDLE,
            language.of("chart.error")));
    return new Drawing(
        "power-" + (gain.place().text() + "-" + gain.load()).replaceAll("[^A-Za-z0-9.-]+", "-"),
        title,
        description(gain, language),
        360,
        bottom + 38,
        shapes);
  }

  private static Shape curve(
      Gain gain,
      ToDoubleFunction<Gain.At> power,
      Scale x,
      Scale y,
      double width,
      List<Double> dash) {
    List<Shape.At> points = new ArrayList<>();
    gain.curve()
        .forEach(
            at -> points.add(new Shape.At(x.at(at.gain() * 100), y.at(power.applyAsDouble(at)))));
    return new Shape.Line(points, width, Palette.INK, dash);
  }

  private static String description(Gain gain, Language language) {
    return language.of(
        "chart.power",
        gain.low() == null ? language.of("chart.no-shortage") : share(gain.low(), language),
        gain.high() == null ? language.of("chart.no-excess") : share(gain.high(), language));
  }

  private static String share(double gain, Language language) {
    return language.number(Math.round(gain * 1000) / 10.0 + " %");
  }

  private static Shape text(double x, double y, boolean bold, Shape.Anchor anchor, String text) {
    return new Shape.Text(x, y, SIZE, bold, anchor, text);
  }
}
