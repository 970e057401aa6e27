package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A question with its outcomes beside it, in one line.
 *
 * @param path of its entry in a list
 * @param number such as {@code 3.}; null for none
 * @param indent where the question begins, in points
 * @param item the identity of the item that it asks for
 */
record ChoicePart(
    List<String> path,
    @Nullable String number,
    double indent,
    Word question,
    List<Word> outcomes,
    String item)
    implements Part {
  private static final double ABOVE = 1;
  private static final double BELOW = 2;
  private static final double BOX = 10;

  /** Between a box and its word. */
  private static final double GAP = 5;

  /** Before a box. */
  private static final double BETWEEN = 14;

  /** A line of text and its width in points. */
  record Word(TextBlock text, double width) {}

  /** How wide it is. */
  double width() {
    double sum = indent + question.width;
    for (Word outcome : outcomes) {
      sum += BETWEEN + BOX + GAP + outcome.width;
    }
    return sum;
  }

  @Override
  public double height() {
    return ABOVE + question.text.height() + BELOW;
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y + ABOVE;
    canvas.item(path, item);
    List<String> body = new ArrayList<>(path);
    if (number != null) {
      canvas.tagged(
          with(path, "Lbl"),
          () ->
              canvas.text(
                  number, x + 2, top + TextBlock.baseline(TextPart.SIZE), TextPart.SIZE, false));
      body.add("LBody");
    }
    canvas.tagged(body, () -> question.text.draw(canvas, x + indent, top));
    double left = x + indent + question.width + BETWEEN;
    for (int i = 0; i < outcomes.size(); i++) {
      Word outcome = outcomes.get(i);
      double box = left;
      canvas.tagged(
          with(body, "L:outcomes", "LI:" + i, "LBody"),
          () -> {
            canvas.rect(box, top + 1, BOX, BOX, 1);
            outcome.text.draw(canvas, box + BOX + GAP, top);
          });
      left += BOX + GAP + outcome.width + BETWEEN;
    }
  }

  private static List<String> with(List<String> path, String... more) {
    List<String> longer = new ArrayList<>(path);
    longer.addAll(List.of(more));
    return longer;
  }
}
