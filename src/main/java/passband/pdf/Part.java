package passband.pdf;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A piece of the sheet that is never broken. */
interface Part {
  /** Its height, in points. */
  double height();

  /** Draws it with its top left corner here. */
  void draw(Canvas canvas, double x, double y) throws IOException;

  /** Whether it has to stand on the same page as the part after it. */
  default boolean staysWithNext() {
    return false;
  }

  /** What stands again above it at the top of a page; null for nothing. */
  default @Nullable Part heading() {
    return null;
  }
}
