package passband.draw;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A drawing as SVG 1.1 that is also well-formed inside HTML. */
public final class Svg implements Shape.Visitor {
  private static final String FONT =
      "DejaVu Sans Condensed, Liberation Sans, Arial, Helvetica, sans-serif";

  /**
   * What the page's own style says of shapes that say nothing themselves. No rule names what is
   * around a shape: that is another element where it is used.
   */
  public static final String STYLE =
      """
      svg{font-family:%s;fill:#000}
      polyline{fill:none}
      text:not([font-size]){font-size:12.7px}
      .bold{font-weight:bold}
      .middle{text-anchor:middle}
      .end{text-anchor:end}
      [stroke]:not([stroke-width]){stroke-width:1.4}
      """
          .formatted(FONT);

  private final StringBuilder out = new StringBuilder();
  private final boolean styled;

  private Svg(boolean styled) {
    this.styled = styled;
  }

  /** A whole file. */
  public static String file(Drawing drawing) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + element(drawing, drawing.name());
  }

  /**
   * The element alone.
   *
   * @param id what its title's and description's identifiers begin with; unique in a page
   */
  public static String element(Drawing drawing, String id) {
    Svg svg = new Svg(false);
    svg.open(drawing, id);
    svg.shapes(drawing.shapes());
    return svg.end();
  }

  /**
   * The beginning of the same for a page that has {@link #STYLE} in its own style, and so in fewer
   * bytes; its shapes and {@link #end} follow.
   */
  static Svg styled(Drawing drawing, String id) {
    Svg svg = new Svg(true);
    svg.open(drawing, id);
    return svg;
  }

  void shapes(List<Shape> shapes) {
    shapes.forEach(s -> s.accept(this));
  }

  /** Shapes that other drawings of the page use too. */
  void shapes(String id, List<Shape> shapes) {
    out.append("<g id=\"" + id + "\">\n");
    shapes(shapes);
    out.append("</g>\n");
  }

  /** The shapes of that identifier. */
  void use(String id) {
    out.append("<use href=\"#" + id + "\"/>\n");
  }

  String end() {
    return out.append("</svg>\n").toString();
  }

  /** {@code #000} for {@code #000000}, where the file is one page's. */
  private String colour(String colour) {
    boolean twice =
        styled
            && colour.length() == 7
            && colour.charAt(1) == colour.charAt(2)
            && colour.charAt(3) == colour.charAt(4)
            && colour.charAt(5) == colour.charAt(6);
    return twice ? "#" + colour.charAt(1) + colour.charAt(3) + colour.charAt(5) : colour;
  }

  /** Left out where the page's style says the same. */
  private String width(double width) {
    return styled && width == 1.4 ? "" : " stroke-width=\"" + number(width) + "\"";
  }

  private void open(Drawing drawing, String id) {
    String space = styled ? "" : " xmlns=\"http://www.w3.org/2000/svg\"";
    out.append("<svg" + space + " role=\"img\" aria-labelledby=\"")
        .append(id + "-title " + id + "-desc\" width=\"")
        .append(number(drawing.width() / Drawing.UNITS_PER_MM) + "mm\" height=\"")
        .append(number(drawing.height() / Drawing.UNITS_PER_MM) + "mm\" viewBox=\"0 0 ")
        .append(number(drawing.width()) + " " + number(drawing.height()))
        .append(styled ? "\"" : "\" font-family=\"" + FONT + "\" fill=\"#000000\"")
        .append(">\n<title id=\"")
        .append(id + "-title\">" + escaped(drawing.title()))
        .append("</title>\n<desc id=\"" + id + "-desc\">" + escaped(drawing.description()))
        .append("</desc>\n");
  }

  @Override
  public void line(Shape.Line line) {
    out.append("<polyline points=\"");
    String between = "";
    for (Shape.At at : bends(line.points())) {
      out.append(between).append(number(at.x())).append(',').append(number(at.y()));
      between = " ";
    }
    out.append(styled ? "\"" : "\" fill=\"none\"")
        .append(" stroke=\"" + colour(line.colour()) + "\"" + width(line.width()))
        .append(dash(line.dash()) + "/>\n");
  }

  /** Without the points at which a line goes on level or upright. */
  private static List<Shape.At> bends(List<Shape.At> points) {
    List<Shape.At> bends = new ArrayList<>(points);
    for (int i = bends.size() - 2; i > 0; i--) {
      Shape.At from = bends.get(i - 1);
      Shape.At at = bends.get(i);
      Shape.At to = bends.get(i + 1);
      boolean level = from.y() == at.y() && at.y() == to.y() && isBetween(from.x(), at.x(), to.x());
      if (level || from.x() == at.x() && at.x() == to.x() && isBetween(from.y(), at.y(), to.y())) {
        bends.remove(i);
      }
    }
    return bends;
  }

  private static boolean isBetween(double one, double number, double other) {
    return Math.min(one, other) <= number && number <= Math.max(one, other);
  }

  private static String dash(List<Double> dash) {
    if (dash.isEmpty()) {
      return "";
    }
    return " stroke-dasharray=\""
        + String.join(" ", dash.stream().map(Svg::number).toList())
        + "\"";
  }

  @Override
  public void rect(Shape.Rect rect) {
    out.append("<rect x=\"" + number(rect.x()) + "\" y=\"" + number(rect.y()))
        .append("\" width=\"" + number(rect.width()) + "\" height=\"" + number(rect.height()))
        .append("\"" + paint(rect.fill(), rect.stroke(), rect.line()) + "/>\n");
  }

  @Override
  public void circle(Shape.Circle circle) {
    out.append("<circle cx=\"" + number(circle.x()) + "\" cy=\"" + number(circle.y()))
        .append("\" r=\"" + number(circle.radius()) + "\"")
        .append(paint(circle.fill(), circle.stroke(), circle.line()) + "/>\n");
  }

  private String paint(String fill, @Nullable String stroke, double line) {
    String filled = fill == null ? "none" : colour(fill);
    return (styled && filled.equals("#000") ? "" : " fill=\"" + filled + "\"")
        + (stroke == null ? "" : " stroke=\"" + colour(stroke) + "\"" + width(line));
  }

  @Override
  public void text(Shape.Text text) {
    out.append("<text x=\"" + number(text.x()) + "\" y=\"" + number(text.y()))
        .append(
            "\""
                + (styled && text.size() == WiringGrid.SIZE
                    ? ""
                    : " font-size=\"" + number(text.size()) + "\""))
        .append(styled ? classes(text) : attributes(text))
        .append(">" + escaped(text.text()) + "</text>\n");
  }

  private static String attributes(Shape.Text text) {
    String anchor = text.anchor().word();
    return (text.bold() ? " font-weight=\"bold\"" : "")
        + (text.anchor() == Shape.Anchor.START ? "" : " text-anchor=\"" + anchor + "\"");
  }

  /** The same, as the page's style says it. */
  private static String classes(Shape.Text text) {
    String bold = text.bold() ? "bold" : "";
    String anchor = text.anchor() == Shape.Anchor.START ? "" : text.anchor().word();
    String both = (bold + " " + anchor).strip();
    return both.isEmpty() ? "" : " class=\"" + both + "\"";
  }

  /** Two decimals without needless zeros. */
  private static String number(double value) {
    double hundredths = value * 100;
    long nearest = Math.round(hundredths);
    boolean plain = Math.abs(hundredths - nearest) < 0.49 && Math.abs(hundredths) < 1e12;
    return plain ? decimal(nearest) : rounded(value);
  }

  private static String decimal(long hundredths) {
    long size = Math.abs(hundredths);
    String whole = (hundredths < 0 ? "-" : "") + size / 100;
    long rest = size % 100;
    return rest == 0
        ? whole
        : whole + (rest % 10 == 0 ? "." + rest / 10 : rest < 10 ? ".0" + rest : "." + rest);
  }

  /** A value that lies about midway between two hundredths. */
  private static String rounded(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static String escaped(String text) {
    StringBuilder escaped = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> escaped.append("&amp;");
        case '<' -> escaped.append("&lt;");
        case '>' -> escaped.append("&gt;");
        default -> escaped.append(c < 0x20 ? ' ' : c);
      }
    }
    return escaped.toString();
  }
}
