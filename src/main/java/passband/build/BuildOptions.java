package passband.build;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.pdf.Paper;

/**
 * The options that change what a build writes.
 *
 * @param without the parts to leave out: {@code pdf}, {@code pictures}, {@code xlsx}
 * @param analyzer the analyzer to compile for; null for each procedure's own
 * @param prune whether to remove the output of procedures that are gone; it changes no other file
 */
public record BuildOptions(
    Paper paper, Set<String> without, @Nullable String analyzer, boolean prune) {

  /** Whether this part is to be written. */
  boolean writes(String part) {
    return !without.contains(part);
  }

  /** Tells these options from others. */
  String key() {
    return paper.name() + " " + String.join(",", without) + " " + analyzer;
  }
}
