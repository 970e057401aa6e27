package passband.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.words.Language;

/**
 * What a person calls the items of a list: the heading under which one stands on the sheet and its
 * words, at a line also the mode and the conditions of the line. No two have the same name.
 */
public final class ItemNames {
  private final Language language;
  private final Map<String, Item> items = new LinkedHashMap<>();

  /** Where a point is measured, by what the identities of its items begin with. */
  private final Map<String, Item.Measured> points = new HashMap<>();

  private final Map<String, Integer> times = new HashMap<>();

  private ItemNames(ItemList list) {
    language = Language.orEnglish(list.source().language());
    for (Item item : list.items()) {
      items.put(item.id(), item);
      if (item instanceof Item.Reading reading) {
        points.putIfAbsent(point(item), reading);
      }
    }
    list.items().forEach(item -> times.merge(words(item), 1, Integer::sum));
  }

  /** Those of a list, in its sheet's language. */
  public static ItemNames of(ItemList list) {
    return new ItemNames(list);
  }

  /** The name of an item of the list. Where others have the same words its identity follows. */
  public String of(Item item) {
    String words = words(item);
    return times.getOrDefault(words, 0) > 1 ? words + " [" + item.id() + "]" : words;
  }

  /** The name of the item with this identity; of none in the list the text itself. */
  public String of(String id) {
    Item item = items.get(id);
    return item == null ? id : of(item);
  }

  /** The name of the item whose identity ends in this part; of none in the list the part itself. */
  public String ofLast(String part) {
    for (Item item : items.values()) {
      if (item.id().endsWith("/" + part)) {
        return of(item);
      }
    }
    return part;
  }

  private static String point(Item item) {
    return item.id().substring(0, item.id().lastIndexOf('/') + 1);
  }

  private String words(Item item) {
    List<String> parts = new ArrayList<>();
    parts.add(language.term(item.head().title().strip().replaceFirst("[.:]$", "")));
    Item.@Nullable Measured at = item instanceof Item.Measured m ? m : points.get(point(item));
    if (at != null) {
      parts.addAll(conditions(at));
    }
    parts.removeIf(String::isEmpty);
    String words = String.join(", ", parts);
    return item.head().place().isEmpty() ? words : item.head().place() + ": " + words;
  }

  private List<String> conditions(Item.Measured item) {
    List<String> parts = new ArrayList<>();
    parts.add(item.where().mode() == null ? "" : item.where().mode());
    parts.add(ItemWords.setting(item));
    item.where().extras().forEach((name, value) -> parts.add(name.replace('-', ' ') + " " + value));
    parts.add(ItemWords.load(item));
    parts.replaceAll(language::number);
    return parts;
  }
}
