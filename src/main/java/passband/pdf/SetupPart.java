package passband.pdf;

import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;

/**
 * The wiring: the drawing at the left, what to do with the leads at the right, a frame around both.
 *
 * @param drawing null where the run before shows it
 * @param name the setup's name
 * @param said what stands above and below the steps
 */
record SetupPart(
    List<String> path,
    @Nullable Drawing drawing,
    TextBlock name,
    TextBlock off,
    List<Ticked> moves,
    @Nullable TextBlock said,
    double inner)
    implements Part {
  /** A unit of a drawing, a quarter of a millimetre, in points. */
  static final double UNIT = 72 / 25.4 / Drawing.UNITS_PER_MM;

  private static final double PAD = 6;
  private static final double NUMBER = 16;
  private static final double TICK = 15;

  /** A lead to move: the words, and the identity of its tick. */
  record Ticked(TextBlock text, String item) {}

  /** How wide the words are. */
  static double textWidth(@Nullable Drawing drawing, double inner) {
    double left = drawing == null ? 0 : drawing.width() * UNIT + 10;
    return inner - 2 * PAD - left;
  }

  static double moveWidth(@Nullable Drawing drawing, double inner) {
    return textWidth(drawing, inner) - NUMBER - TICK;
  }

  private double textHeight() {
    double moved = moves.stream().mapToDouble(m -> m.text.height() + 4).sum();
    return name.height() + 3 + off.height() + 4 + moved + (said == null ? 0 : said.height() + 2);
  }

  @Override
  public double height() {
    double picture = drawing == null ? 0 : drawing.height() * UNIT;
    return Math.max(picture, textHeight()) + 2 * PAD + 8;
  }

  /** Words alone go with the readings that follow. */
  @Override
  public boolean staysWithNext() {
    return drawing == null;
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y + 2;
    canvas.artifact(() -> canvas.rect(x, top, inner, height() - 8, 1));
    if (drawing != null) {
      canvas.figure(
          with("Figure"),
          drawing.title() + ". " + drawing.description(),
          () -> canvas.drawing(drawing, x + PAD, top + PAD, UNIT));
    }
    double left = x + inner - PAD - textWidth(drawing, inner);
    double[] at = {top + PAD};
    canvas.tagged(with("H3"), () -> name.draw(canvas, left, at[0]));
    at[0] += name.height() + 3;
    canvas.tagged(with("P:off"), () -> off.draw(canvas, left, at[0]));
    at[0] += off.height() + 4;
    for (int i = 0; i < moves.size(); i++) {
      move(canvas, i, left, at[0]);
      at[0] += moves.get(i).text.height() + 4;
    }
    if (said != null) {
      canvas.tagged(with("P:said"), () -> said.draw(canvas, left, at[0]));
    }
  }

  private void move(Canvas canvas, int i, double left, double top) throws IOException {
    canvas.item(with("L", "LI:" + i), moves.get(i).item);
    canvas.tagged(
        with("L", "LI:" + i, "Lbl"),
        () -> canvas.text((i + 1) + ".", left + TICK, top + 9.5, TextPart.SIZE, true));
    canvas.tagged(
        with("L", "LI:" + i, "LBody"),
        () -> {
          canvas.rect(left, top + 1, 10, 10, 1);
          moves.get(i).text.draw(canvas, left + TICK + NUMBER, top);
        });
  }

  private List<String> with(String... more) {
    List<String> longer = new java.util.ArrayList<>(path);
    longer.addAll(List.of(more));
    return longer;
  }
}
