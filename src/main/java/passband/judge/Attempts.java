package passband.judge;

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
record Attempts(List<Readings.Row> rows, @Nullable String trouble) {
  /** Nothing was written. */
  static final Attempts NONE = new Attempts(List.of(), null);

  /** Of the rows of one item. */
  static Attempts of(List<Readings.Row> rows) {
    TreeMap<Integer, Readings.Row> numbered = new TreeMap<>();
    List<Readings.Row> written = new ArrayList<>();
    String trouble = null;
    for (Readings.Row row : rows) {
      if (row.reading().isEmpty() && !row.undone()) {
        continue;
      }
      written.add(row);
      int number = number(row);
      if (number < 1) {
        trouble = "'" + row.attempt() + "' is not an attempt number";
      } else if (numbered.putIfAbsent(number, row) != null) {
        trouble =
            row.attempt().isEmpty()
                ? "several values without attempt numbers"
                : "attempt " + number + " is recorded twice";
      }
    }
    if (trouble == null && !numbered.isEmpty() && numbered.lastKey() != numbered.size()) {
      trouble = "an attempt before number " + numbered.lastKey() + " is missing";
    }
    if (trouble == null && written.size() > 1 && written.stream().anyMatch(Readings.Row::undone)) {
      trouble = "both a value and 'not done' are recorded";
    }
    return new Attempts(trouble == null ? List.copyOf(numbered.values()) : written, trouble);
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

  /** The one that is judged. */
  Readings.Row last() {
    return rows.get(rows.size() - 1);
  }
}
