package passband.draw;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What a lead's colour word looks like; a word that is not here is drawn grey and printed. */
final class Palette {
  static final String INK = "#000000";
  static final String PAPER = "#ffffff";
  static final String PANEL = "#f2f2f2";
  private static final String OTHER = "#9a9a9a";
  private static final Map<String, String> BY_WORD =
      Map.ofEntries(
          Map.entry("black", "#000000"),
          Map.entry("white", "#ffffff"),
          Map.entry("red", "#d7191c"),
          Map.entry("orange", "#f28c00"),
          Map.entry("yellow", "#ffd800"),
          Map.entry("green", "#1a9641"),
          Map.entry("blue", "#1f6fd0"),
          Map.entry("violet", "#7b3fa0"),
          Map.entry("purple", "#7b3fa0"),
          Map.entry("brown", "#7a4a1e"),
          Map.entry("pink", "#f48fb1"),
          Map.entry("grey", "#9a9a9a"),
          Map.entry("gray", "#9a9a9a"));

  private Palette() {}

  /** The colour of a word; ink for none. */
  static String of(@Nullable String word) {
    return word == null ? INK : BY_WORD.getOrDefault(word, OTHER);
  }
}
