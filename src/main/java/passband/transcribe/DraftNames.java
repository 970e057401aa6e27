package passband.transcribe;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Names and texts of the language from the words of a table. */
final class DraftNames {
  private DraftNames() {}

  /** Letters that are written with two, as those who use them do without such a key. */
  private static final Map<Character, String> TWO_LETTERS =
      Map.of(
          'ä', "ae", 'ö', "oe", 'ü', "ue", 'ß', "ss", 'å', "aa", 'ø', "oe", 'æ', "ae", 'œ', "oe");

  /**
   * A name: letters without marks, digits and hyphens, a letter first, since outlets and procedures
   * give names to files; of what has none the given one.
   */
  static String name(String title, String otherwise) {
    StringBuilder name = new StringBuilder();
    for (char c : plain(title).toCharArray()) {
      if (c >= 'a' && c <= 'z' || c >= '0' && c <= '9') {
        name.append(c);
      } else if (name.length() > 0 && name.charAt(name.length() - 1) != '-') {
        name.append('-');
      }
    }
    while (name.length() > 0 && name.charAt(name.length() - 1) == '-') {
      name.setLength(name.length() - 1);
    }
    boolean letter = name.length() > 0 && Character.isLetter(name.charAt(0));
    return letter ? name.toString() : otherwise + (name.length() > 0 ? "-" + name : "");
  }

  private static String plain(String title) {
    String composed = Normalizer.normalize(title, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
    StringBuilder plain = new StringBuilder();
    for (char c : composed.toCharArray()) {
      plain.append(TWO_LETTERS.getOrDefault(c, String.valueOf(c)));
    }
    return Normalizer.normalize(plain, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
  }

  /**
   * A name for each title, no two of them the same.
   *
   * @param otherwise the name of a title without letters
   */
  static List<String> names(List<String> titles, String otherwise) {
    List<String> names = new ArrayList<>();
    for (String title : titles) {
      String name = name(title, otherwise);
      String free = name;
      for (int i = 2; names.contains(free); i++) {
        free = name + "-" + i;
      }
      names.add(free);
    }
    return names;
  }

  /** A text in its quotes. */
  static String text(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      switch (c) {
        case '"', '\\' -> quoted.append('\\').append(c);
        case '{' -> quoted.append('(');
        case '}' -> quoted.append(')');
        default -> quoted.append(Character.isISOControl(c) ? ' ' : c);
      }
    }
    return quoted.append('"').toString();
  }

  /** A comment's text, in one line. */
  static String comment(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }
}
