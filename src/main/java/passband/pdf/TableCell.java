package passband.pdf;

import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is in a cell of a table. */
interface TableCell {
  /** Its height, in points. */
  double height();

  /** Draws it with its top left corner here, no wider than {@code width}. */
  void draw(Canvas canvas, double x, double y, double width) throws IOException;

  /** How many of the table's columns it takes. */
  default int columns() {
    return 1;
  }

  /** How many lines of its row it stands beside. */
  default int rows() {
    return 1;
  }

  /** Whether it was said on a page before. */
  default boolean repeats() {
    return false;
  }

  /** The identity of the item that it asks for; null for none. */
  default @Nullable String item() {
    return null;
  }

  /** Whether it is a heading: of a column, or of its row. */
  default String role() {
    return "TD";
  }

  /** In two, the upper no higher than {@code room}; either may be an empty cell. */
  default Halves broken(double room) {
    return height() <= room ? new Halves(this, empty()) : new Halves(empty(), this);
  }

  /** A cell in its place with nothing in it. */
  default TableCell empty() {
    return new WordsCell(List.of(), role(), columns());
  }

  /** A cell in two. */
  record Halves(TableCell upper, TableCell lower) {}
}
