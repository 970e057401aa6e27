package passband.judge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import passband.evidence.ItemNames;
import passband.words.Language;

/**
 * The sentence of each cause, from the pattern of its code; the script of the sheet fills the same
 * patterns in the same way.
 */
final class CauseWords {
  private static final Pattern OPTIONAL = Pattern.compile("\\[([^\\]]*\\{(\\w+)\\}[^\\]]*)\\]");
  private static final Pattern PLACE = Pattern.compile("\\{(\\w+)\\}");

  private CauseWords() {}

  /** All of them, after one another; empty for none. */
  static String of(List<Cause> causes) {
    return causes.stream().map(CauseWords::of).collect(Collectors.joining("; "));
  }

  static String of(Cause cause) {
    return said(cause, cause.code().pattern(), values(cause));
  }

  private static String said(Cause cause, String pattern, Map<String, @Nullable String> values) {
    String words = filled(pattern, values);
    return cause.part() == null || pattern.contains("{part}") ? words : cause.part() + ": " + words;
  }

  /** The same for people, with the names of the items in place of identities. */
  static String of(List<Cause> causes, ItemNames names, Language language) {
    return causes.stream()
        .map(cause -> of(cause, names, language))
        .collect(Collectors.joining("; "));
  }

  static String of(Cause cause, ItemNames names, Language language) {
    Map<String, @Nullable String> values = values(cause);
    String note = cause.note();
    String item = cause.item();
    String number = values.get("number");
    if (number != null) {
      values.put("number", language.number(number));
    }
    if (note != null) {
      values.put("note", NoteWords.of(cause.code(), note, names, language));
    }
    if (item != null) {
      values.put("name", quoted(names.of(item), language));
    }
    return said(cause, pattern(cause.code(), language), values);
  }

  /** In English the code's own. */
  private static String pattern(Cause.Code code, Language language) {
    String own = language.words().get("cause." + code.word());
    return own == null || language == Language.ENGLISH ? code.pattern() : own;
  }

  static String quoted(String name, Language language) {
    return language.of("page.quoted").replace("{text}", name);
  }

  private static Map<String, @Nullable String> values(Cause cause) {
    Map<String, @Nullable String> values = new HashMap<>();
    values.put("number", cause.number() == null ? null : cause.number().toPlainString());
    values.put("written", cause.written());
    values.put("note", cause.note());
    values.put("part", cause.part());
    String id = cause.item();
    values.put("name", id == null ? null : id.substring(id.lastIndexOf('/') + 1));
    return values;
  }

  private static String filled(String pattern, Map<String, @Nullable String> values) {
    String needed =
        OPTIONAL
            .matcher(pattern)
            .replaceAll(
                m -> values.get(m.group(2)) == null ? "" : Matcher.quoteReplacement(m.group(1)));
    return PLACE
        .matcher(needed)
        .replaceAll(m -> Matcher.quoteReplacement(String.valueOf(values.get(m.group(1)))));
  }
}
