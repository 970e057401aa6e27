package passband.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;
import passband.draw.Shape;
import passband.draw.TextWidths;

/** Ink on one page, each stroke in a tag or marked as an artifact. */
final class Canvas {
  private static final double ROUND = 0.5522847498;

  private final PDPageContentStream out;
  private final Fonts fonts;
  private final Tags tags;
  private final double height;
  private boolean repeats;

  Canvas(PDPageContentStream out, Fonts fonts, Tags tags, double height) {
    this.out = out;
    this.fonts = fonts;
    this.tags = tags;
    this.height = height;
  }

  /** What draws. */
  interface Ink {
    void draw() throws IOException;
  }

  /** Draws something a second time: all of it is an artifact, whatever it says of itself. */
  void again(Ink ink) throws IOException {
    artifact(
        () -> {
          boolean before = repeats;
          repeats = true;
          ink.draw();
          repeats = before;
        });
  }

  /** A picture of the element at the path, with what it shows in words. */
  void figure(List<String> path, String words, Ink ink) throws IOException {
    PDStructureElement element = tagged(path, ink);
    if (element != null) {
      element.setAlternateDescription(words);
    }
  }

  /** Content of the element at the path; null for what is drawn a second time. */
  @Nullable PDStructureElement tagged(List<String> path, Ink ink) throws IOException {
    if (repeats) {
      ink.draw();
      return null;
    }
    PDStructureElement element = tags.at(path);
    COSDictionary properties = new COSDictionary();
    properties.setInt(COSName.MCID, tags.content(element));
    out.beginMarkedContent(
        COSName.getPDFName(element.getStructureType()), PDPropertyList.create(properties));
    ink.draw();
    out.endMarkedContent();
    return element;
  }

  /** The element at the path asks for an item; nothing where it is drawn a second time. */
  void item(List<String> path, String id) {
    if (!repeats) {
      tags.item(tags.at(path), id);
    }
  }

  /** Content that says nothing: borders, headers that repeat. */
  void artifact(Ink ink) throws IOException {
    if (repeats) {
      ink.draw();
      return;
    }
    out.beginMarkedContent(COSName.ARTIFACT);
    ink.draw();
    out.endMarkedContent();
  }

  void text(String text, double x, double baseline, double size, boolean bold) throws IOException {
    if (text.isEmpty()) {
      return;
    }
    out.beginText();
    out.setFont(fonts.font(bold), (float) size);
    out.newLineAtOffset((float) x, (float) (height - baseline));
    out.showText(fonts.shown(text));
    out.endText();
  }

  void line(double x1, double y1, double x2, double y2, double width) throws IOException {
    out.setLineWidth((float) width);
    out.moveTo((float) x1, (float) (height - y1));
    out.lineTo((float) x2, (float) (height - y2));
    out.stroke();
  }

  void rect(double x, double y, double w, double h, double width) throws IOException {
    out.setLineWidth((float) width);
    out.addRect((float) x, (float) (height - y - h), (float) w, (float) h);
    out.stroke();
  }

  void grey(double x, double y, double w, double h, double grey) throws IOException {
    out.setNonStrokingColor((float) grey);
    out.addRect((float) x, (float) (height - y - h), (float) w, (float) h);
    out.fill();
    out.setNonStrokingColor(0f);
  }

  /** A drawing with its top left corner here, {@code scale} points to a unit. */
  void drawing(Drawing drawing, double x, double y, double scale) throws IOException {
    Painter painter = new Painter(x, y, scale);
    for (Shape shape : drawing.shapes()) {
      shape.accept(painter);
    }
    if (painter.failed != null) {
      throw painter.failed;
    }
    black();
  }

  private void black() throws IOException {
    out.setStrokingColor(0f);
    out.setNonStrokingColor(0f);
    out.setLineDashPattern(new float[0], 0);
  }

  /** Draws shapes of a drawing. */
  private final class Painter implements Shape.Visitor {
    private final double left;
    private final double top;
    private final double scale;
    private @Nullable IOException failed;

    Painter(double left, double top, double scale) {
      this.left = left;
      this.top = top;
      this.scale = scale;
    }

    private float x(double unit) {
      return (float) (left + unit * scale);
    }

    private float y(double unit) {
      return (float) (height - top - unit * scale);
    }

    private void attempt(Ink ink) {
      try {
        if (failed == null) {
          ink.draw();
        }
      } catch (IOException e) {
        failed = e;
      }
    }

    @Override
    public void line(Shape.Line line) {
      attempt(
          () -> {
            stroke(line.colour(), line.width());
            float[] dash = new float[line.dash().size()];
            for (int i = 0; i < dash.length; i++) {
              dash[i] = (float) (line.dash().get(i) * scale);
            }
            out.setLineDashPattern(dash, 0);
            boolean first = true;
            for (Shape.At at : line.points()) {
              if (first) {
                out.moveTo(x(at.x()), y(at.y()));
              } else {
                out.lineTo(x(at.x()), y(at.y()));
              }
              first = false;
            }
            out.stroke();
            out.setLineDashPattern(new float[0], 0);
          });
    }

    @Override
    public void rect(Shape.Rect rect) {
      attempt(
          () -> {
            out.addRect(
                x(rect.x()),
                y(rect.y() + rect.height()),
                (float) (rect.width() * scale),
                (float) (rect.height() * scale));
            paint(rect.fill(), rect.stroke(), rect.line());
          });
    }

    @Override
    public void circle(Shape.Circle circle) {
      attempt(
          () -> {
            double r = circle.radius();
            double k = r * ROUND;
            double cx = circle.x();
            double cy = circle.y();
            out.moveTo(x(cx + r), y(cy));
            out.curveTo(x(cx + r), y(cy + k), x(cx + k), y(cy + r), x(cx), y(cy + r));
            out.curveTo(x(cx - k), y(cy + r), x(cx - r), y(cy + k), x(cx - r), y(cy));
            out.curveTo(x(cx - r), y(cy - k), x(cx - k), y(cy - r), x(cx), y(cy - r));
            out.curveTo(x(cx + k), y(cy - r), x(cx + r), y(cy - k), x(cx + r), y(cy));
            out.closePath();
            paint(circle.fill(), circle.stroke(), circle.line());
          });
    }

    @Override
    public void text(Shape.Text text) {
      attempt(
          () -> {
            double size = text.size() * scale;
            double width = fonts.width(text.text(), size, text.bold());
            double taken = TextWidths.width(text.text(), size, text.bold());
            if (width > 1.01 * taken) { // characters that the drawing took for narrower ones
              size *= taken / width;
              width = taken;
            }
            double shift =
                switch (text.anchor()) {
                  case START -> 0;
                  case MIDDLE -> width / 2;
                  case END -> width;
                };
            fill("#000000");
            Canvas.this.text(
                text.text(), x(text.x()) - shift, top + text.y() * scale, size, text.bold());
          });
    }

    private void paint(String fill, @Nullable String stroke, double width) throws IOException {
      if (fill != null) {
        fill(fill);
      }
      if (stroke != null) {
        stroke(stroke, width);
      }
      if (fill != null && stroke != null) {
        out.fillAndStroke();
      } else if (fill != null) {
        out.fill();
      } else {
        out.stroke();
      }
    }

    private void stroke(String colour, double width) throws IOException {
      out.setLineWidth((float) (width * scale));
      out.setStrokingColor(part(colour, 1), part(colour, 3), part(colour, 5));
    }

    private void fill(String colour) throws IOException {
      out.setNonStrokingColor(part(colour, 1), part(colour, 3), part(colour, 5));
    }

    private float part(String colour, int at) {
      return Integer.parseInt(colour.substring(at, at + 2), 16) / 255f;
    }
  }
}
