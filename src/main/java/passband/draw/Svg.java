package passband.draw;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A drawing as SVG 1.1 that is also well-formed inside HTML. */
public final class Svg implements Shape.Visitor {
  private static final String FONT =
      "DejaVu Sans Condensed, Liberation Sans, Arial, Helvetica, sans-serif";

  private final StringBuilder out = new StringBuilder();

  private Svg() {}

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
    Svg svg = new Svg();
    svg.open(drawing, id);
    drawing.shapes().forEach(s -> s.accept(svg));
    return svg.out.append("</svg>\n").toString();
  }

  private void open(Drawing drawing, String id) {
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-labelledby=\"")
        .append(id + "-title " + id + "-desc\" width=\"")
        .append(number(drawing.width() / Drawing.UNITS_PER_MM) + "mm\" height=\"")
        .append(number(drawing.height() / Drawing.UNITS_PER_MM) + "mm\" viewBox=\"0 0 ")
        .append(number(drawing.width()) + " " + number(drawing.height()))
        .append("\" font-family=\"" + FONT + "\" fill=\"#000000\">\n<title id=\"")
        .append(id + "-title\">" + escaped(drawing.title()))
        .append("</title>\n<desc id=\"" + id + "-desc\">" + escaped(drawing.description()))
        .append("</desc>\n");
  }

  @Override
  public void line(Shape.Line line) {
    out.append("<polyline points=\"");
    String between = "";
    for (Shape.At at : line.points()) {
      out.append(between).append(number(at.x())).append(',').append(number(at.y()));
      between = " ";
    }
    out.append("\" fill=\"none\" stroke=\"" + line.colour() + "\" stroke-width=\"")
        .append(number(line.width()) + "\"" + dash(line.dash()) + "/>\n");
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

  private static String paint(String fill, @Nullable String stroke, double line) {
    return " fill=\""
        + (fill == null ? "none" : fill)
        + "\""
        + (stroke == null
            ? ""
            : " stroke=\"" + stroke + "\" stroke-width=\"" + number(line) + "\"");
  }

  @Override
  public void text(Shape.Text text) {
    out.append("<text x=\"" + number(text.x()) + "\" y=\"" + number(text.y()))
        .append("\" font-size=\"" + number(text.size()) + "\"")
        .append(text.bold() ? " font-weight=\"bold\"" : "")
        .append(text.anchor() == Shape.Anchor.START ? "" : " text-anchor=\"")
        .append(text.anchor() == Shape.Anchor.START ? "" : text.anchor().word() + "\"")
        .append(">" + escaped(text.text()) + "</text>\n");
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
