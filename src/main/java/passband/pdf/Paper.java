package passband.pdf;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Sheets of paper. */
public enum Paper {
  A4(595.276, 841.89),
  LETTER(612, 792);

  static final double MARGIN = 32;
  static final double TOP = 45;
  static final double BOTTOM = 38;

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** The paper of this name in lower case; null for none. */
  public static @Nullable Paper named(String name) {
    for (Paper paper : values()) {
      if (paper.name().toLowerCase(Locale.ROOT).equals(name)) {
        return paper;
      }
    }
    return null;
  }

  double width() {
    return width;
  }

  double height() {
    return height;
  }

  /** Between the margins. */
  double inner() {
    return width - 2 * MARGIN;
  }

  /** Between header and footer. */
  double room() {
    return height - TOP - BOTTOM;
  }
}
