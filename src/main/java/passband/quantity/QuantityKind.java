package passband.quantity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A quantity of the trade. Peak and RMS are different quantities in the same unit.
 *
 * @param name as written in sources
 * @param printed as printed
 * @param dimension of its values
 * @param nonNegative whether a value below zero makes no sense
 */
public record QuantityKind(String name, String printed, Dimension dimension, boolean nonNegative) {
  private static final Map<String, QuantityKind> BY_NAME = new LinkedHashMap<>();

  static {
    for (String[] row : Table.read("quantities.tsv")) {
      BY_NAME.put(
          row[0], new QuantityKind(row[0], row[1], Dimension.named(row[2]), row[3].equals("yes")));
    }
  }

  /** The quantity of this name; null when the trade knows none. */
  public static QuantityKind find(String name) {
    return BY_NAME.get(name);
  }

  /** All names, in the order of the table. */
  public static List<String> names() {
    return List.copyOf(BY_NAME.keySet());
  }
}
