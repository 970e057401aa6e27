package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A box for each digit, the decimal point between them, the unit after.
 *
 * @param title what is read; null where that is clear
 * @param left how far from the left the boxes stand, in points: the title is beside them; 0 where
 *     it is above
 * @param lines {@code 0} for a box, {@code .} or {@code ,} for the decimal mark
 */
record DigitsCell(
    @Nullable TextBlock title, double left, List<String> lines, String unit, String item)
    implements TableCell {
  private static final double CELL = 14;
  private static final double HIGH = 20;
  private static final double POINT = 9;
  static final double GAP = 4;
  private static final double UNIT_SIZE = 10.5;

  /** How wide boxes and points are, without the unit. */
  static double width(String cells) {
    double width = 0;
    for (int i = 0; i < cells.length(); i++) {
      width += width(cells.charAt(i));
    }
    return width;
  }

  private static double width(char cell) {
    return cell == '0' ? CELL : POINT;
  }

  /** How wide a unit is with the gap before it. */
  static double unitWidth(Fonts fonts, String unit) {
    return GAP + fonts.width(unit, UNIT_SIZE, true);
  }

  /** Boxes and points in lines of this width. */
  static List<String> lines(String cells, double width) {
    List<String> lines = new ArrayList<>();
    int start = 0;
    double used = 0;
    for (int i = 0; i < cells.length(); i++) {
      used += width(cells.charAt(i));
      if (used > width + 0.01 && i > start) {
        lines.add(cells.substring(start, i));
        start = i;
        used = width(cells.charAt(i));
      }
    }
    lines.add(cells.substring(start));
    return lines;
  }

  @Override
  public double height() {
    double boxes = HIGH * lines.size();
    if (title == null) {
      return boxes;
    }
    return left > 0 ? Math.max(boxes, title.height()) : boxes + title.height() + 2;
  }

  @Override
  public void draw(Canvas canvas, double x, double y, double width) throws IOException {
    double top = y + height() - HIGH * lines.size();
    if (title != null && left > 0) {
      top = y + (height() - HIGH * lines.size()) / 2;
      title.draw(canvas, x, y + (height() - title.height()) / 2);
    } else if (title != null) {
      title.draw(canvas, x, y);
    }
    double right = x + left;
    for (String line : lines) {
      right = boxes(canvas, line, x + left, top);
      top += HIGH;
    }
    canvas.text(unit, right + GAP, top - 3, UNIT_SIZE, true);
  }

  private static double boxes(Canvas canvas, String line, double x, double top) throws IOException {
    double right = x;
    for (int i = 0; i < line.length(); i++) {
      if (line.charAt(i) != '0') {
        canvas.text(line.substring(i, i + 1), right + 2, top + HIGH - 1, 18, true);
      } else {
        canvas.rect(right, top, CELL, HIGH, 0.9);
      }
      right += width(line.charAt(i));
    }
    return right;
  }

  /** The boxes stay together; what is read may stand on the page before. */
  @Override
  public Halves broken(double room) {
    if (title == null || left > 0 || height() <= room) {
      return TableCell.super.broken(room);
    }
    int count = Math.min(title.linesIn(room), title.lines());
    TextBlock rest = count < title.lines() ? title.lower(count) : null;
    TableCell upper = count == 0 ? empty() : WordsCell.of(title.upper(count));
    return new Halves(upper, new DigitsCell(rest, left, lines, unit, item));
  }
}
