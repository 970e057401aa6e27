package passband.parse;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.parse.antlr.PassbandLexer;
import passband.parse.antlr.PassbandParser;

/** The words of the language, which the grammar lists as tokens. */
public final class Keywords {
  private static final Map<String, Integer> TYPES = types();

  private Keywords() {}

  /** All of them. */
  public static Set<String> all() {
    return TYPES.keySet();
  }

  /** The token of a word; that of a name when the language has no such word. */
  static int type(String word) {
    return TYPES.getOrDefault(word, PassbandLexer.NAME);
  }

  /** How a token that is a word of the language is written; null for other tokens. */
  static @Nullable String written(int type) {
    String name = PassbandParser.VOCABULARY.getSymbolicName(type);
    String word = name == null ? "" : word(name);
    return TYPES.containsKey(word) ? word : null;
  }

  private static Map<String, Integer> types() {
    Map<String, Integer> types = new LinkedHashMap<>();
    for (int type = PassbandLexer.ACCEPT; type <= PassbandLexer.WITHIN; type++) {
      types.put(word(PassbandParser.VOCABULARY.getSymbolicName(type)), type);
    }
    return types;
  }

  private static String word(String token) {
    return token.toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
