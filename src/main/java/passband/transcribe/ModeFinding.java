package passband.transcribe;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was found of a mode.
 *
 * @param rule the likeliest rule; null where the limits follow none
 * @param settled whether it is written: enough rows follow it, of this mode at least one, its
 *     numbers are round, every other row is explained by one slip and no rule of about the same
 *     likelihood allows something else
 * @param others the rules that are nearly as likely and allow something else, the likeliest first
 * @param differing the rows that the rule does not explain
 * @param sharing the modes that have the rule in common, this one among them
 */
record ModeFinding(
    int mode,
    @Nullable Rule rule,
    boolean settled,
    List<Rule> others,
    List<RowFinding> differing,
    List<Integer> sharing) {

  /** What was found of a row; null where the rule explains it. */
  @Nullable RowFinding of(ManualRow row) {
    for (RowFinding one : differing) {
      if (one.row().line() == row.line()) {
        return one;
      }
    }
    return null;
  }
}
