package passband.pdf;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * A cell that stands beside several lines of its row.
 *
 * @param repeats whether it was said on a page before, and stands here for the reader alone
 */
record BesideCell(TableCell cell, int rows, boolean repeats) implements TableCell {
  @Override
  public double height() {
    return cell.height();
  }

  @Override
  public void draw(Canvas canvas, double x, double y, double width) throws IOException {
    cell.draw(canvas, x, y, width);
  }

  @Override
  public int columns() {
    return cell.columns();
  }

  @Override
  public @Nullable String item() {
    return cell.item();
  }

  @Override
  public String role() {
    return cell.role();
  }

  /** Where the whole cell fits it is said again below. */
  @Override
  public Halves broken(double room) {
    Halves halves = cell.broken(room);
    boolean whole = cell.height() <= room;
    TableCell lower = whole ? again() : new BesideCell(halves.lower(), rows, repeats);
    return new Halves(new BesideCell(halves.upper(), rows, repeats), lower);
  }

  /** The same on the next page, if it is not long. */
  TableCell again() {
    return new BesideCell(cell.height() > RowPart.LEAST ? empty() : cell, rows, true);
  }
}
