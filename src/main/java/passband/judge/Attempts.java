package passband.judge;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What was written for one item, by the numbers of the attempts, never by the order of the rows.
 *
 * @param rows in order of their numbers; those that are blank left out
 * @param trouble why the last cannot be told; null where it can
 */
record Attempts(List<Readings.Row> rows, @Nullable Cause trouble) {
  /** Nothing was written. */
  static final Attempts NONE = new Attempts(List.of(), null);

  /** Of the rows of one item, by its identity. */
  static Attempts of(String item, List<Readings.Row> rows) {
    TreeMap<Integer, Readings.Row> numbered = new TreeMap<>();
    List<Readings.Row> written = new ArrayList<>();
    Cause trouble = null;
    for (Readings.Row row : rows) {
      if (row.reading().isEmpty() && !row.undone()) {
        continue;
      }
      written.add(row);
      int number = number(row);
      if (number < 1) {
        trouble = Cause.of(Cause.Code.ATTEMPT_NUMBER, item).at(row, "attempt");
      } else if (numbered.putIfAbsent(number, row) != null) {
        trouble =
            row.attempt().isEmpty()
                ? Cause.of(Cause.Code.ATTEMPTS_UNNUMBERED, item).at(row, "attempt")
                : numbered(Cause.Code.ATTEMPT_TWICE, item, number).at(row, "attempt");
      }
    }
    if (trouble == null && !numbered.isEmpty() && numbered.lastKey() != numbered.size()) {
      trouble =
          numbered(Cause.Code.ATTEMPT_MISSING, item, numbered.lastKey())
              .at(numbered.lastEntry().getValue(), "attempt");
    }
    if (trouble == null && written.size() > 1 && written.stream().anyMatch(Readings.Row::undone)) {
      Readings.Row undone = written.stream().filter(Readings.Row::undone).findFirst().orElseThrow();
      trouble = Cause.of(Cause.Code.DONE_AND_NOT_DONE, item).at(undone, "kind");
    }
    return new Attempts(trouble == null ? List.copyOf(numbered.values()) : written, trouble);
  }

  private static Cause numbered(Cause.Code code, String item, int number) {
    return Cause.of(code, item).number(BigDecimal.valueOf(number), null);
  }

  /** An attempt without a number is the first. */
  private static int number(Readings.Row row) {
    if (row.attempt().isEmpty()) {
      return 1;
    }
    return row.attempt().matches("[1-9]\\d{0,3}") ? Integer.parseInt(row.attempt()) : 0;
  }

  /** Whether nothing was written, or only that it was not done. */
  boolean none() {
    return rows.stream().allMatch(Readings.Row::undone);
  }

  /** The first that has a value; there is one unless {@link #none}. */
  Readings.Row firstDone() {
    return rows.stream().filter(row -> !row.undone()).findFirst().orElseThrow();
  }

  /** The one that is judged. */
  Readings.Row last() {
    return rows.get(rows.size() - 1);
  }
}
