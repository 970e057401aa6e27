package passband.transcribe;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Names and texts of the language from the words of a table. */
final class DraftNames {
  private DraftNames() {}

  /** A name: letters, digits and hyphens, a letter first; of what has none the given one. */
  static String name(String title, String otherwise) {
    StringBuilder name = new StringBuilder();
    for (char c : title.toLowerCase(Locale.ROOT).toCharArray()) {
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

  /** A name for each title, no two of them the same. */
  static List<String> names(List<String> titles) {
    List<String> names = new ArrayList<>();
    for (String title : titles) {
      String name = name(title, "mode");
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
