package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A block of text with, before it, room for a number and a box to tick.
 *
 * @param number such as {@code 3.}; null for none
 * @param tick whether there is a box
 * @param frame the width of a border; 0 for none
 * @param rule the width of a line under it; 0 for none
 * @param bar the width of a bar at its left; 0 for none
 * @param keep whether it stays with the part after it
 */
record TextPart(
    List<String> path,
    TextBlock text,
    String number,
    boolean tick,
    double indent,
    double before,
    double after,
    double frame,
    double rule,
    double bar,
    double inner,
    boolean keep)
    implements Part {
  static final double SIZE = 9.5;
  private static final double PAD = 5;
  private static final double BOX = 10;

  /** Plain text. */
  static TextPart of(List<String> path, TextBlock text, double before, double after, double inner) {
    return new TextPart(path, text, null, false, 0, before, after, 0, 0, 0, inner, false);
  }

  TextPart kept() {
    return new TextPart(
        path, text, number, tick, indent, before, after, frame, rule, bar, inner, true);
  }

  @Override
  public double height() {
    return before + text.height() + (frame > 0 ? 2 * PAD : 0) + after;
  }

  @Override
  public boolean staysWithNext() {
    return keep;
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y + before;
    double height = text.height();
    canvas.artifact(() -> ornaments(canvas, x, top, height));
    double pad = frame > 0 ? PAD : 0;
    double start = x + (frame > 0 ? PAD + 2 : 0) + (bar > 0 ? bar + 8 : 0);
    if (number != null) {
      canvas.tagged(with("Lbl"), () -> canvas.text(number, x + 2, top + SIZE * 1.02, SIZE, false));
    }
    canvas.tagged(
        number == null ? path : with("LBody"), () -> text.draw(canvas, start + indent, top + pad));
  }

  private List<String> with(String last) {
    List<String> longer = new ArrayList<>(path);
    longer.add(last);
    return longer;
  }

  private void ornaments(Canvas canvas, double x, double top, double height) throws IOException {
    if (frame > 0) {
      canvas.rect(x + 1, top, inner - 2, height + 2 * PAD, frame);
    }
    if (tick) {
      canvas.rect(x + indent - BOX - 5, top + 1, BOX, BOX, 1);
    }
    if (rule > 0) {
      canvas.line(x, top + height + 2, x + inner, top + height + 2, rule);
    }
    if (bar > 0) {
      canvas.grey(x, top, bar, height, 0);
    }
  }
}
