package passband.record;

import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.LimitsReader;

/** What sheets call what is measured: of many records of one sheet its limits are read once. */
public final class SheetNames {
  private final Map<String, Map<String, String>> known = new ConcurrentHashMap<>();

  /**
   * By identity, of a file of limits.
   *
   * @return empty where it cannot be read
   */
  Map<String, String> of(String limits) {
    return known.computeIfAbsent(limits, SheetNames::read);
  }

  private static Map<String, String> read(String limits) {
    try {
      ItemList list = LimitsReader.read(limits);
      ItemNames names = ItemNames.of(list);
      Map<String, String> measured = new HashMap<>();
      for (Item item : list.items()) {
        if (item instanceof Item.Measured) {
          measured.put(item.id(), names.of(item));
        }
      }
      return Map.copyOf(measured);
    } catch (BadInput e) {
      return Map.of();
    }
  }
}
