package passband.judge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import passband.evidence.Item;
import passband.evidence.ItemList;

/** Which items apply, by what was chosen. */
final class Applicability {
  private final Map<String, String> chosen = new HashMap<>();

  Applicability(ItemList list, Map<String, Attempts> attempts) {
    for (Item item : list.items()) {
      Attempts written = attempts.getOrDefault(item.id(), Attempts.NONE);
      if (item instanceof Item.Choice && !written.none() && written.trouble() == null) {
        chosen.put(item.id(), written.last().reading());
      }
    }
  }

  /** Whether an item applies; while its choice is open it does not. */
  boolean applies(Item item) {
    List<Item.Condition> any = item.head().applies();
    return (any.isEmpty() || any.stream().anyMatch(this::isMet))
        && item.head().when().stream().allMatch(this::isMet);
  }

  private boolean isMet(Item.Condition condition) {
    String answer = chosen.get(condition.item());
    return answer != null && condition.is().contains(answer);
  }
}
