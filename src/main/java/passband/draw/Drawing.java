package passband.draw;

import java.util.List;

/**
 * A picture.
 *
 * @param name a word for file names and identifiers, of letters, digits, points and hyphens
 * @param title what it shows, in a few words
 * @param description the same in sentences, for those who do not see it
 * @param width in quarters of a millimetre
 * @param height in quarters of a millimetre
 */
public record Drawing(
    String name,
    String title,
    String description,
    double width,
    double height,
    List<Shape> shapes) {
  /** Units in a millimetre. */
  public static final double UNITS_PER_MM = 4;

  /** Copies the shapes. */
  public Drawing {
    shapes = List.copyOf(shapes);
  }
}
