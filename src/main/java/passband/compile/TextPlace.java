package passband.compile;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.syntax.Tree;

/**
 * Where a text is printed, which decides what its placeholders stand for.
 *
 * @param test null outside tests
 * @param atPoint whether it is printed for each point, not once in a run
 * @param values what the place gives by itself: outlet, mode, setting
 */
record TextPlace(
    Tree.@Nullable Test test, boolean atPoint, Map<String, Placeholders.Value> values) {
  /** A section or an adjustment. */
  static final TextPlace OUTSIDE = new TextPlace(null, false, Map.of());
}
