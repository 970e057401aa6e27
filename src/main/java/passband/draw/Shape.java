package passband.draw;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a drawing is made of; later shapes lie over earlier ones. Palette are {@code #rrggbb}. */
public sealed interface Shape {

  /** Calls the method for this kind. */
  void accept(Visitor visitor);

  /** What to do with each kind. */
  interface Visitor {
    void line(Line line);

    void rect(Rect rect);

    void circle(Circle circle);

    void text(Text text);
  }

  /** A point. */
  record At(double x, double y) {}

  /**
   * A line through points.
   *
   * @param dash lengths of strokes and gaps in turn; empty for an unbroken line
   */
  record Line(List<At> points, double width, String colour, List<Double> dash) implements Shape {
    /** Copies the lists. */
    public Line {
      points = List.copyOf(points);
      dash = List.copyOf(dash);
    }

    @Override
    public void accept(Visitor visitor) {
      visitor.line(this);
    }
  }

  /**
   * A rectangle.
   *
   * @param fill null for none
   * @param stroke null for none
   */
  record Rect(
      double x,
      double y,
      double width,
      double height,
      String fill,
      @Nullable String stroke,
      double line)
      implements Shape {
    @Override
    public void accept(Visitor visitor) {
      visitor.rect(this);
    }
  }

  /**
   * A circle.
   *
   * @param fill null for none
   * @param stroke null for none
   */
  record Circle(double x, double y, double radius, String fill, String stroke, double line)
      implements Shape {
    @Override
    public void accept(Visitor visitor) {
      visitor.circle(this);
    }
  }

  /** Where a text's x is. */
  enum Anchor {
    START("start"),
    MIDDLE("middle"),
    END("end");

    private final String word;

    Anchor(String word) {
      this.word = word;
    }

    /** As SVG says it. */
    public String word() {
      return word;
    }
  }

  /** A line of text; y is its base line. */
  record Text(double x, double y, double size, boolean bold, Anchor anchor, String text)
      implements Shape {
    @Override
    public void accept(Visitor visitor) {
      visitor.text(this);
    }

    /** The left edge, by the widths of the type. */
    public double left() {
      double width = TextWidths.width(text, size, bold);
      return switch (anchor) {
        case START -> x;
        case MIDDLE -> x - width / 2;
        case END -> x - width;
      };
    }
  }
}
