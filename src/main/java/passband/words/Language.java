package passband.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A language that sheets are printed in. Its words are read when the first is asked for: a check
 * needs none.
 */
public final class Language {
  /** English. */
  public static final Language ENGLISH = new Language("en", false);

  /** German. */
  public static final Language GERMAN = new Language("de", true);

  /** French. */
  public static final Language FRENCH = new Language("fr", true);

  private static final List<Language> ALL = List.of(ENGLISH, GERMAN, FRENCH);

  private final String code;
  private final boolean comma;
  private @Nullable Map<String, String> words;

  private Language(String code, boolean comma) {
    this.code = code;
    this.comma = comma;
  }

  /** The language of this code; null for none. */
  public static @Nullable Language named(String code) {
    for (Language language : ALL) {
      if (language.code.equals(code)) {
        return language;
      }
    }
    return null;
  }

  /** The language of this code; English for none, as for a file that says nothing of it. */
  public static Language orEnglish(String code) {
    Language language = named(code);
    return language == null ? ENGLISH : language;
  }

  /** All of them, English first. */
  public static List<Language> all() {
    return ALL;
  }

  /** Its code by ISO 639-1: {@code de}. */
  public String code() {
    return code;
  }

  /** Whether its numbers have a decimal comma. */
  public boolean comma() {
    return comma;
  }

  /**
   * Words, with values in the place of {@code {0}}, {@code {1}} and so on.
   *
   * @throws IllegalArgumentException for an unknown key
   */
  public String of(String key, Object... values) {
    String pattern = words().get(key);
    if (pattern == null) {
      throw new IllegalArgumentException("no words for '" + key + "' in " + code);
    }
    StringBuilder text = new StringBuilder(pattern.length() + 16);
    int from = 0;
    for (int at = pattern.indexOf('{'); at >= 0; at = pattern.indexOf('{', at + 1)) {
      boolean slot = at + 2 < pattern.length() && pattern.charAt(at + 2) == '}';
      int value = slot ? pattern.charAt(at + 1) - '0' : -1;
      if (value >= 0 && value < values.length) {
        text.append(pattern, from, at).append(values[value]);
        from = at + 3;
      }
    }
    return text.append(pattern, from, pattern.length()).toString();
  }

  /**
   * The word for an English term of the tables, such as a quantity's; the term where it is none.
   */
  public String term(String english) {
    StringBuilder key = new StringBuilder("term.");
    for (int i = 0; i < english.length(); i++) {
      char c = english.charAt(i);
      key.append(c == ' ' ? '-' : Character.toLowerCase(c));
    }
    String word = words().get(key.toString());
    return word == null ? english : word;
  }

  /** A number or an amount that the program has printed, with the decimal mark of the language. */
  public String number(String printed) {
    if (!comma || printed.indexOf('.') < 0) {
      return printed;
    }
    StringBuilder text = new StringBuilder(printed);
    for (int i = 1; i + 1 < text.length(); i++) {
      boolean between =
          Character.isDigit(text.charAt(i - 1)) && Character.isDigit(text.charAt(i + 1));
      if (text.charAt(i) == '.' && between) {
        text.setCharAt(i, ',');
      }
    }
    return text.toString();
  }

  /** A noun within a sentence: German ones keep their capital. */
  public String within(String noun) {
    return code.equals("de") || noun.isEmpty() ? noun : lower(noun);
  }

  private static String lower(String noun) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < noun.length(); i++) {
      text.append(Character.toLowerCase(noun.charAt(i)));
    }
    return text.toString();
  }

  /** Every key with its words, in the order of the file. */
  public synchronized Map<String, String> words() {
    if (words == null) {
      words = read(code);
    }
    return words;
  }

  private static Map<String, String> read(String code) {
    Map<String, String> words = new LinkedHashMap<>();
    for (String line : text(code + ".properties").split("\n")) {
      int equals = line.indexOf('=');
      if (!line.startsWith("#") && equals > 0) {
        words.put(line.substring(0, equals).strip(), line.substring(equals + 1).strip());
      }
    }
    return words;
  }

  private static String text(String name) {
    try (InputStream in = Language.class.getResourceAsStream("/passband/words/" + name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is not in the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Its code. */
  @Override
  public String toString() {
    return code;
  }
}
