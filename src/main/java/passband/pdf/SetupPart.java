package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;

/**
 * The wiring: the drawing at the left, what to do with the leads at the right, a frame around both.
 *
 * @param drawing null where the run before or the page before shows it
 * @param words what stands beside the drawing, from top to bottom
 * @param columns how the words stand
 */
record SetupPart(
    List<String> path,
    @Nullable Drawing drawing,
    List<Paragraph> words,
    Columns columns,
    double inner)
    implements Part {
  /** A unit of a drawing, a quarter of a millimetre, in points. */
  static final double UNIT = 72 / 25.4 / Drawing.UNITS_PER_MM;

  /** So many lines at least are before the end of a page that a paragraph goes over. */
  private static final int LEAST = 3;

  private static final double PAD = 6;
  private static final double BELOW = 8;
  private static final double TICK = 15;

  /**
   * Some of the words.
   *
   * @param role in the structure; {@code LI:} and a number from 0 for a lead to move
   * @param after the space under it
   * @param item the identity of its tick; null for none, and where that is on the page before
   */
  record Paragraph(String role, TextBlock text, double after, @Nullable String item) {}

  /** How wide the words are, and the numbers of the leads before them. */
  record Columns(double words, double numbers) {
    /** Beside a drawing; null for none. */
    static Columns beside(@Nullable Drawing drawing, double inner, double numbers) {
      double left = drawing == null ? 0 : drawing.width() * UNIT + 10;
      return new Columns(inner - 2 * PAD - left, numbers);
    }

    /** How wide what is said of a lead can be. */
    double move() {
      return words - TICK - numbers;
    }
  }

  @Override
  public double height() {
    double sum = 0;
    for (Paragraph paragraph : words) {
      sum += paragraph.text.height() + paragraph.after;
    }
    return Math.max(pictureHeight(), sum) + 2 * PAD + BELOW;
  }

  private double pictureHeight() {
    return drawing == null ? 0 : drawing.height() * UNIT;
  }

  /** Words alone go with the readings that follow. */
  @Override
  public boolean staysWithNext() {
    return drawing == null;
  }

  /** The drawing is whole; words without room beside it stand on the next page. */
  @Override
  public @Nullable Broken broken(double room) {
    double left = room - 2 * PAD - BELOW;
    if (pictureHeight() > left) {
      return null;
    }
    int count = 0;
    while (count < words.size() - 1 && words.get(count).text.height() <= left) {
      left -= words.get(count).text.height() + words.get(count).after;
      count++;
    }
    Paragraph next = words.get(count);
    int lines = Math.min(next.text.linesIn(left), next.text.lines() - 1);
    if (lines < LEAST) {
      return count == 0 ? null : new Broken(above(count, null), below(count, next));
    }
    Paragraph begun = new Paragraph(next.role, next.text.upper(lines), 0, next.item);
    Paragraph goesOn = new Paragraph(next.role, next.text.lower(lines), next.after, null);
    return new Broken(above(count, begun), below(count, goesOn));
  }

  private SetupPart above(int count, @Nullable Paragraph last) {
    List<Paragraph> some = new ArrayList<>(words.subList(0, count));
    if (last != null) {
      some.add(last);
    }
    return new SetupPart(path, drawing, some, columns, inner);
  }

  private SetupPart below(int count, Paragraph first) {
    List<Paragraph> rest = new ArrayList<>(words.subList(count, words.size()));
    rest.set(0, first);
    return new SetupPart(path, null, rest, columns, inner);
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y + 2;
    canvas.artifact(() -> canvas.rect(x, top, inner, height() - BELOW, 1));
    if (drawing != null) {
      canvas.figure(
          with("Figure"),
          drawing.title() + ". " + drawing.description(),
          () -> canvas.drawing(drawing, x + PAD, top + PAD, UNIT));
    }
    double at = top + PAD;
    for (Paragraph paragraph : words) {
      draw(canvas, paragraph, x + inner - PAD - columns.words, at);
      at += paragraph.text.height() + paragraph.after;
    }
  }

  private void draw(Canvas canvas, Paragraph paragraph, double left, double top)
      throws IOException {
    if (paragraph.role.startsWith("LI:")) {
      move(canvas, paragraph, left, top);
    } else {
      canvas.tagged(with(paragraph.role), () -> paragraph.text.draw(canvas, left, top));
    }
  }

  private void move(Canvas canvas, Paragraph move, double left, double top) throws IOException {
    if (move.item != null) {
      String number = Integer.parseInt(move.role.substring(3)) + 1 + ".";
      canvas.item(with("L", move.role), move.item);
      canvas.tagged(
          with("L", move.role, "Lbl"),
          () -> canvas.text(number, left + TICK, top + 9.5, TextPart.SIZE, true));
    }
    canvas.tagged(
        with("L", move.role, "LBody"),
        () -> {
          if (move.item != null) {
            canvas.rect(left, top + 1, 10, 10, 1);
          }
          move.text.draw(canvas, left + TICK + columns.numbers, top);
        });
  }

  private List<String> with(String... more) {
    List<String> longer = new ArrayList<>(path);
    longer.addAll(List.of(more));
    return longer;
  }
}
