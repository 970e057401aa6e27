package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * {@code derive NAME "…" = EXPRESSION [over COLUMN], resolution R}.
 *
 * @param over the column by which the points differ that are compared; null for a value of each
 *     point by itself
 */
public record Derive(
    Word name,
    @Nullable Word title,
    Expression value,
    Tree.@Nullable Ref over,
    Amount resolution,
    Span span) {
  /**
   * What may be said of the readings of several points: each takes one argument. 'rise' is the
   * least difference from one point to the next; the order is that of the bench.
   */
  public static final List<String> FUNCTIONS =
      List.of("max", "min", "mean", "first", "last", "rise");
}
