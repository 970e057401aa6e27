package passband.draw;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.words.Language;

/**
 * Where the limits of a mode lie: for each setting (or load, where that is what varies) the
 * tolerance as a bar with caps, what is accepted as a grey box, and the nominal as a dot. 90 mm
 * wide.
 */
public final class LimitPicture {
  private static final double WIDTH = 360;
  private static final double LEFT = 70;
  private static final double RIGHT = 350;
  private static final double TOP = 44;
  private static final double BOTTOM = 190;

  /** The size of print, nine points. */
  private static final double SIZE = 12.7;

  private static final double LINE = 14;
  private static final double TITLE_WIDTH = (WIDTH - 8) / WiringGrid.OTHER_TYPE;

  /** So many have room above the axes; the whole title is the picture's accessible name. */
  private static final int TITLE_LINES = 2;

  private static final String BOX = "#bdbdbd";
  private static final String GRID = "#cfcfcf";

  private final Language language;
  private final String name;
  private final String title;
  private final String across;
  private final String up;
  private final List<Bar> bars;
  private final List<Shape> shapes = new ArrayList<>();
  private final Scale x;
  private final Scale y;

  private LimitPicture(
      Language language, String name, String title, String across, String up, List<Bar> bars) {
    this.language = language;
    this.name = name;
    this.title = title;
    this.across = across;
    this.up = up;
    this.bars = bars;
    this.x =
        Scale.over(bars.stream().map(b -> b.at().doubleValue()).toList(), LEFT + 12, RIGHT - 12);
    this.y = Scale.over(heights(bars), BOTTOM, TOP);
  }

  /** What the upright axis has to show: zero, the tolerances and the nominals. */
  private static List<Double> heights(List<Bar> bars) {
    List<Double> heights = new ArrayList<>(List.of(0.0));
    for (Bar bar : bars) {
      for (Rational value : new Rational[] {bar.lower(), bar.upper(), bar.nominal()}) {
        if (value != null) {
          heights.add(value.doubleValue());
        }
      }
    }
    return heights;
  }

  /** What stands at one setting; null where a side is open or there is no nominal. */
  private record Bar(
      Rational at,
      @Nullable Rational lower,
      @Nullable Rational upper,
      @Nullable Rational low,
      @Nullable Rational high,
      @Nullable Rational nominal) {}

  /** A test's limits of one quantity in one mode. */
  private record Group(Stage.Run run, Mode mode, Limit limit, List<Point> points) {}

  /** One picture for each test, mode and quantity with limits at two settings or loads, or more. */
  public static List<Drawing> of(Plan plan) {
    List<Drawing> drawings = new ArrayList<>();
    for (Group group : groups(plan)) {
      boolean bySetting = distinct(group, true) > 1;
      if (bySetting || distinct(group, false) > 1) {
        drawings.add(picture(plan.language(), group, bySetting).draw());
      }
    }
    return drawings;
  }

  private static List<Group> groups(Plan plan) {
    Map<String, Group> groups = new LinkedHashMap<>();
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          Mode mode = point.mode();
          if (mode != null) {
            String key = run.test().text() + "." + mode.name().text() + "." + limit.quantity();
            groups
                .computeIfAbsent(key, k -> new Group(run, mode, limit, new ArrayList<>()))
                .points()
                .add(point);
          }
        }
      }
    }
    return List.copyOf(groups.values());
  }

  /** Where a point lies; null for one without a setting or load. */
  private static @Nullable Figure along(Point point, boolean bySetting) {
    return bySetting ? point.setting() : point.load();
  }

  private static long distinct(Group group, boolean bySetting) {
    return group.points().stream()
        .map(p -> along(p, bySetting))
        .filter(f -> f != null)
        .map(Figure::si)
        .distinct()
        .count();
  }

  private static LimitPicture picture(Language language, Group group, boolean bySetting) {
    Set<Bar> bars = new LinkedHashSet<>();
    Unit unit = Unit.ONE;
    for (Point point : group.points()) {
      Figure at = along(point, bySetting);
      if (at == null) {
        continue;
      }
      unit = bars.isEmpty() ? at.unit() : unit;
      for (Limit limit : point.limits()) {
        if (limit.quantity().equals(group.limit().quantity())) {
          bars.add(bar(at.si().over(unit.factor()), limit, group));
        }
      }
    }
    String printed = unit.symbol().isEmpty() ? "" : ", " + unit.printed();
    return new LimitPicture(
        language,
        group.run().test().text()
            + "."
            + group.mode().name().text()
            + "."
            + group.limit().quantity(),
        language.of(
            "chart.title",
            group.run().title() + ", " + group.mode().title(),
            language.term(group.limit().title())),
        language.term(bySetting ? "setting" : "load") + printed,
        group.limit().unit().printed(),
        List.copyOf(bars));
  }

  private static Bar bar(Rational at, Limit limit, Group group) {
    Rational factor = group.limit().unit().factor();
    Rational nominal =
        limit.exact().nominal() == null
            ? null
            : Rational.of(limit.exact().nominal().toDecimal(12, RoundingMode.HALF_EVEN));
    return new Bar(
        at,
        over(limit.printed().lower(), factor),
        over(limit.printed().upper(), factor),
        over(limit.accept().lower(), factor),
        over(limit.accept().upper(), factor),
        over(nominal, factor));
  }

  private static @Nullable Rational over(@Nullable Rational value, Rational factor) {
    return value == null ? null : value.over(factor);
  }

  private Drawing draw() {
    frame();
    band(true);
    band(false);
    bars.forEach(this::bar);
    double height = legend();
    return new Drawing(name, title, description(), WIDTH, height, shapes);
  }

  private void frame() {
    double line = 14;
    for (String part : TextWidths.wrapped(title, TITLE_WIDTH, SIZE, true, TITLE_LINES)) {
      text(4, line, SIZE, true, Shape.Anchor.START, part);
      line += LINE;
    }
    for (double tick : y.ticks()) {
      double at = y.at(tick);
      line(List.of(new Shape.At(LEFT, at), new Shape.At(RIGHT, at)), 0.6, GRID, List.of());
      text(LEFT - 5, at + 4.5, SIZE, false, Shape.Anchor.END, language.number(Scale.text(tick)));
    }
    double free = 0;
    for (double tick : x.ticks()) {
      double at = x.at(tick);
      line(
          List.of(new Shape.At(at, BOTTOM), new Shape.At(at, BOTTOM + 4)),
          1,
          Palette.INK,
          List.of());
      String number = language.number(Scale.text(tick));
      double half = TextWidths.width(number, SIZE, false) * WiringGrid.OTHER_TYPE / 2;
      if (at - half >= free) {
        text(at, BOTTOM + 17, SIZE, false, Shape.Anchor.MIDDLE, number);
        free = at + half + 4;
      }
    }
    line(
        List.of(new Shape.At(LEFT, TOP), new Shape.At(LEFT, BOTTOM), new Shape.At(RIGHT, BOTTOM)),
        1.2,
        Palette.INK,
        List.of());
    text(4, TOP + 4, SIZE, true, Shape.Anchor.START, up);
    text((LEFT + RIGHT) / 2, BOTTOM + 34, SIZE, true, Shape.Anchor.MIDDLE, across);
  }

  /** The tolerance's ends joined from setting to setting. */
  private void band(boolean lower) {
    List<Shape.At> points = new ArrayList<>();
    bars.stream()
        .sorted((a, b) -> a.at().compareTo(b.at()))
        .forEach(
            b -> {
              Rational end = lower ? b.lower() : b.upper();
              if (end != null) {
                points.add(new Shape.At(x.at(b.at().doubleValue()), y.at(end.doubleValue())));
              }
            });
    if (points.size() > 1) {
      line(points, 0.8, Palette.INK, List.of(2.0, 2.0));
    }
  }

  private void bar(Bar bar) {
    double at = x.at(bar.at().doubleValue());
    double half = Math.max(2, Math.min(7, 90.0 / bars.size()));
    double top = bar.high() == null ? TOP : y.at(bar.high().doubleValue());
    double bottom = bar.low() == null ? BOTTOM : y.at(bar.low().doubleValue());
    shapes.add(new Shape.Rect(at - half, top, 2 * half, Math.max(0.5, bottom - top), BOX, null, 0));
    double high = bar.upper() == null ? TOP : y.at(bar.upper().doubleValue());
    double low = bar.lower() == null ? BOTTOM : y.at(bar.lower().doubleValue());
    line(List.of(new Shape.At(at, high), new Shape.At(at, low)), 1.2, Palette.INK, List.of());
    cap(at, half, high, bar.upper() != null);
    cap(at, half, low, bar.lower() != null);
    if (bar.nominal() != null) {
      shapes.add(
          new Shape.Circle(
              at, y.at(bar.nominal().doubleValue()), 2.6, Palette.INK, Palette.PAPER, 0.8));
    }
  }

  private void cap(double at, double half, double height, boolean closed) {
    if (closed) {
      line(
          List.of(new Shape.At(at - half, height), new Shape.At(at + half, height)),
          1.6,
          Palette.INK,
          List.of());
    }
  }

  private double legend() {
    double at = BOTTOM + 54;
    line(List.of(new Shape.At(12, at - 9), new Shape.At(12, at + 2)), 1.2, Palette.INK, List.of());
    cap(12, 5, at - 9, true);
    cap(12, 5, at + 2, true);
    double x = legendText(22, at, "chart.tolerance");
    shapes.add(new Shape.Rect(x, at - 9, 10, 11, BOX, null, 0));
    x = legendText(x + 15, at, "chart.accepted");
    if (bars.stream().anyMatch(b -> b.nominal() != null)) {
      shapes.add(new Shape.Circle(x + 3, at - 4, 2.6, Palette.INK, Palette.PAPER, 0.8));
      legendText(x + 11, at, "chart.nominal");
    }
    return at + 8;
  }

  /** A word of the legend; gives where the next sign has room. */
  private double legendText(double x, double y, String key) {
    String word = language.of(key);
    text(x, y, SIZE, false, Shape.Anchor.START, word);
    return x + TextWidths.width(word, SIZE, false) * WiringGrid.OTHER_TYPE + 14;
  }

  private String description() {
    StringBuilder said = new StringBuilder();
    for (Bar bar : bars) {
      said.append(said.isEmpty() ? "" : " ")
          .append(
              language.of(
                  "chart.at",
                  across.split(",")[0],
                  language.number(bar.at().toPlain()),
                  said(bar)));
    }
    return said.toString();
  }

  /** What is accepted, in words. */
  private String said(Bar bar) {
    String low = bar.low() == null ? null : language.number(bar.low().toPlain());
    String high = bar.high() == null ? null : language.number(bar.high().toPlain());
    if (low == null || high == null) {
      String end = (low == null ? high == null ? "" : high : low) + " " + up;
      return low == null && high == null
          ? language.of("limits.none")
          : language.of(low == null ? "limits.at-most" : "limits.at-least", end);
    }
    return language.of("limits.between", low, high + " " + up);
  }

  private void line(List<Shape.At> points, double width, String colour, List<Double> dash) {
    shapes.add(new Shape.Line(points, width, colour, dash));
  }

  private void text(
      double atX, double atY, double size, boolean bold, Shape.Anchor anchor, String text) {
    shapes.add(new Shape.Text(atX, atY, size, bold, anchor, text));
  }
}
