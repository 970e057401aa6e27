package passband.draw;

import java.util.ArrayList;
import java.util.List;

/** The shapes of a drawing in two layers: lines and panels behind, everything else before them. */
final class Layers {
  private final List<Shape> behind = new ArrayList<>();
  private final List<Shape> before = new ArrayList<>();

  void behind(Shape shape) {
    behind.add(shape);
  }

  /** Puts a shape behind all others. */
  void behindAll(Shape shape) {
    behind.add(0, shape);
  }

  void before(Shape shape) {
    before.add(shape);
  }

  void text(double x, double y, double size, boolean bold, Shape.Anchor anchor, String text) {
    before.add(new Shape.Text(x, y, size, bold, anchor, text));
  }

  /** All shapes, from the one behind all others on. */
  List<Shape> shapes() {
    List<Shape> all = new ArrayList<>(behind);
    all.addAll(before);
    return all;
  }
}
