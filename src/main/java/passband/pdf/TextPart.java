package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A block of text, with what is drawn before and around it.
 *
 * @param item the identity of the item that it asks for; null for none
 * @param keep whether it stays with the part after it
 * @param heading what stands again above it at the top of a page; null for nothing
 */
record TextPart(
    List<String> path,
    TextBlock text,
    Space space,
    Marker marker,
    Lines lines,
    @Nullable String item,
    boolean keep,
    Part.@Nullable Heading heading)
    implements Part {
  static final double SIZE = 9.5;

  /** So many lines at least are before the end of a page that the text goes over. */
  private static final int LEAST = 3;

  private static final double PAD = 5;
  private static final double BOX = 10;

  /** The space above and below, and the width of the page's text. */
  record Space(double above, double below, double width) {}

  /**
   * What is before the text.
   *
   * @param number such as {@code 3.}; null for none
   * @param tick whether there is a box to tick
   * @param indent the room for both
   */
  record Marker(@Nullable String number, boolean tick, double indent) {
    static final Marker NONE = new Marker(null, false, 0);
  }

  /**
   * The widths of lines around the text; 0 for none.
   *
   * @param rule of a line under it
   * @param bar of a bar at its left
   * @param begins whether it is the text's beginning; if not, the frame is open above
   * @param ends whether it is the text's end; if not, the frame is open below
   */
  record Lines(double frame, double rule, double bar, boolean begins, boolean ends) {
    static final Lines NONE = new Lines(0, 0, 0, true, true);
  }

  /** Plain text. */
  static TextPart of(List<String> path, TextBlock text, double above, double below, double width) {
    Space space = new Space(above, below, width);
    return new TextPart(path, text, space, Marker.NONE, Lines.NONE, null, false, null);
  }

  /** The same with a number and a box to tick before it. */
  TextPart marked(@Nullable String number, boolean tick, double indent) {
    return new TextPart(
        path, text, space, new Marker(number, tick, indent), lines, item, keep, heading);
  }

  /** The same in a frame. */
  TextPart framed(double frame) {
    return with(new Lines(frame, 0, 0, true, true));
  }

  /** The same with a line under it. */
  TextPart ruled(double rule) {
    return with(new Lines(0, rule, 0, true, true));
  }

  /** The same with a bar at its left. */
  TextPart barred(double bar) {
    return with(new Lines(0, 0, bar, true, true));
  }

  private TextPart with(Lines around) {
    return new TextPart(path, text, space, marker, around, item, keep, heading);
  }

  /** The same, asking for an item. */
  TextPart asking(String id) {
    return new TextPart(path, text, space, marker, lines, id, keep, heading);
  }

  /** The same, on one page with the part after it. */
  TextPart kept() {
    return new TextPart(path, text, space, marker, lines, item, true, heading);
  }

  /** The same, under a heading that stands again above it at the top of a page. */
  TextPart under(Part.Heading above) {
    return new TextPart(path, text, space, marker, lines, item, keep, above);
  }

  @Override
  public double height() {
    return space.above + text.height() + 2 * pad() + space.below;
  }

  private double pad() {
    return lines.frame > 0 ? PAD : 0;
  }

  @Override
  public boolean staysWithNext() {
    return keep;
  }

  @Override
  public @Nullable Broken broken(double room) {
    int count = Math.min(text.linesIn(room - space.above - 2 * pad()), text.lines() - 1);
    if (count < LEAST) {
      return null;
    }
    Lines beginning = new Lines(lines.frame, 0, lines.bar, lines.begins, false);
    TextPart upper =
        new TextPart(
            path,
            text.upper(count),
            new Space(space.above, 0, space.width),
            marker,
            beginning,
            item,
            false,
            heading);
    Lines end = new Lines(lines.frame, lines.rule, lines.bar, false, lines.ends);
    TextPart lower =
        new TextPart(
            bodyPath(),
            text.lower(count),
            new Space(0, space.below, space.width),
            new Marker(null, false, marker.indent),
            end,
            null,
            keep,
            null);
    return new Broken(upper, lower);
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y + space.above;
    double height = text.height();
    canvas.artifact(() -> ornaments(canvas, x, top, height));
    double start = x + (lines.frame > 0 ? PAD + 2 : 0) + (lines.bar > 0 ? lines.bar + 8 : 0);
    if (item != null) {
      canvas.item(path, item);
    }
    if (marker.number != null) {
      canvas.tagged(
          with("Lbl"),
          () -> canvas.text(marker.number, x + 2, top + TextBlock.baseline(SIZE), SIZE, false));
    }
    canvas.tagged(
        bodyPath(),
        () -> {
          if (marker.tick) {
            canvas.rect(x + marker.indent - BOX - 5, top + 1, BOX, BOX, 1);
          }
          text.draw(canvas, start + marker.indent, top + pad());
        });
  }

  private List<String> bodyPath() {
    return marker.number == null ? path : with("LBody");
  }

  private List<String> with(String last) {
    List<String> longer = new ArrayList<>(path);
    longer.add(last);
    return longer;
  }

  private void ornaments(Canvas canvas, double x, double top, double height) throws IOException {
    if (lines.frame > 0) {
      frame(canvas, x + 1, top, height + 2 * PAD);
    }
    if (lines.rule > 0) {
      canvas.line(x, top + height + 2, x + space.width, top + height + 2, lines.rule);
    }
    if (lines.bar > 0) {
      canvas.grey(x, top, lines.bar, height, 0);
    }
  }

  private void frame(Canvas canvas, double x, double top, double height) throws IOException {
    double right = x + space.width - 2;
    if (lines.begins && lines.ends) {
      canvas.rect(x, top, right - x, height, lines.frame);
      return;
    }
    canvas.line(x, top, x, top + height, lines.frame);
    canvas.line(right, top, right, top + height, lines.frame);
    if (lines.begins) {
      canvas.line(x, top, right, top, lines.frame);
    }
    if (lines.ends) {
      canvas.line(x, top + height, right, top + height, lines.frame);
    }
  }
}
