package passband.pdf;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A piece of the sheet. It is broken only where it is higher than a page. */
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
  default @Nullable Heading heading() {
    return null;
  }

  /** Whether it has a box for a reading. */
  default boolean isLine() {
    return false;
  }

  /** Whether it is higher than this; found without a look at more of it than fills the room. */
  default boolean isHigherThan(double room) {
    return height() > room;
  }

  /**
   * In two, the upper no higher than {@code room}; null where it cannot be broken there. Called
   * only for a part that is higher than a page.
   */
  default @Nullable Broken broken(double room) {
    return null;
  }

  /**
   * A heading and what says it again on a further page.
   *
   * @param first the part that says it where it stands first
   * @param again the part for further pages; may be the same
   */
  record Heading(Part first, Part again) {
    /** The same each time. */
    static Heading of(Part heading) {
      return new Heading(heading, heading);
    }
  }

  /** A part in two. */
  record Broken(Part upper, Part lower) {}
}
