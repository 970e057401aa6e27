package passband.plan;

import java.util.Collection;
import org.jspecify.annotations.Nullable;
import passband.quantity.Dimension;
import passband.quantity.Unit;

/**
 * Writes values in the one way that the digest is taken of. Every text has its length before it and
 * every list its size, so that no two values are written alike: {@code 3:cut 2:70 ~}.
 */
final class Canonical {
  private final StringBuilder out = new StringBuilder();

  private Canonical() {}

  /**
   * The parts one after the other: texts, exact numbers, units, figures with their units, lists of
   * these, and null for what is absent.
   */
  static String of(@Nullable Object... parts) {
    Canonical canonical = new Canonical();
    for (Object part : parts) {
      canonical.append(part);
    }
    return canonical.out.toString();
  }

  private void append(@Nullable Object part) {
    if (part == null) {
      out.append("~ ");
    } else if (part instanceof Collection<?> list) {
      out.append('[').append(list.size()).append(' ');
      list.forEach(this::append);
    } else {
      text(written(part));
    }
  }

  private static String written(Object part) {
    if (part instanceof Unit unit) {
      return unit.symbol();
    }
    if (part instanceof Figure figure) {
      return of(figure.si(), figure.unit());
    }
    return part instanceof Dimension dimension ? dimension.base() : part.toString();
  }

  private void text(String text) {
    out.append(text.length()).append(':').append(text).append(' ');
  }
}
