package passband.quantity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

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

  /**
   * Name, printed name, dimension, never below zero. RMS where nothing else is said; peak values
   * are quantities of their own. Common practice, no source.
   */
  private static final String TABLE =
      """
      power        | Power           | power       | yes
      current      | Current         | current     | yes
      voltage      | Voltage         | voltage     | yes
      peak-voltage | Peak voltage    | voltage     | yes
      peak-current | Peak current    | current     | yes
      hf-leakage   | High-frequency leakage current | current | yes
      earth-leakage | Earth leakage current | current | yes
      touch-current | Touch current  | current     | yes
      patient-leakage | Patient leakage current | current | yes
      energy       | Energy          | energy      | yes
      time         | Time            | time        | yes
      resistance   | Resistance      | resistance  | yes
      impedance    | Impedance       | resistance  | yes
      frequency    | Frequency       | frequency   | yes
      rate         | Rate            | frequency   | yes
      temperature  | Temperature     | temperature | no
      flow         | Flow            | flow        | yes
      volume       | Volume          | volume      | yes
      pressure     | Pressure        | pressure    | no
      charge       | Charge          | charge      | yes
      level        | Level           | none        | yes
      crest-factor | Crest factor    | none        | yes
      """;

  static {
    for (String[] row : Table.rows(TABLE)) {
      BY_NAME.put(
          row[0], new QuantityKind(row[0], row[1], Dimension.named(row[2]), row[3].equals("yes")));
    }
  }

  /** The quantity of this name; null when the trade knows none. */
  public static @Nullable QuantityKind find(String name) {
    return BY_NAME.get(name);
  }

  /** Whether a quantity of this dimension may be below zero, or the trade has none of it. */
  public static boolean mayBeNegative(Dimension dimension) {
    List<QuantityKind> some =
        all().stream().filter(kind -> kind.dimension.equals(dimension)).toList();
    return some.isEmpty() || some.stream().anyMatch(kind -> !kind.nonNegative);
  }

  /** All quantities, in the order of the table. */
  public static List<QuantityKind> all() {
    return List.copyOf(BY_NAME.values());
  }

  /** All names, in the order of the table. */
  public static List<String> names() {
    return List.copyOf(BY_NAME.keySet());
  }
}
