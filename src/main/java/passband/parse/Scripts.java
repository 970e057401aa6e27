package passband.parse;

import java.lang.Character.UnicodeScript;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.Span;

/**
 * {@code script-not-printable}, an error: the PDF sets letter after letter from left to right, so
 * that scripts whose letters join, stack or run the other way would be misread. Which scripts are
 * set so is from memory of the Unicode Standard, chapters 7 and 18.
 */
final class Scripts {
  /** All below are Latin, Greek, Cyrillic or Armenian, and their signs. */
  private static final int FIRST = 0x590;

  /** In a holder of its own: no text needs it that has no letter of another script. */
  private static final class Printed {
    private static final Set<UnicodeScript> PLAIN =
        EnumSet.of(
            UnicodeScript.COMMON,
            UnicodeScript.INHERITED,
            UnicodeScript.LATIN,
            UnicodeScript.GREEK,
            UnicodeScript.CYRILLIC,
            UnicodeScript.ARMENIAN,
            UnicodeScript.GEORGIAN,
            UnicodeScript.HAN,
            UnicodeScript.HIRAGANA,
            UnicodeScript.KATAKANA,
            UnicodeScript.BOPOMOFO,
            UnicodeScript.HANGUL,
            UnicodeScript.ETHIOPIC,
            UnicodeScript.CHEROKEE,
            UnicodeScript.CANADIAN_ABORIGINAL,
            UnicodeScript.BRAILLE,
            UnicodeScript.UNKNOWN);
  }

  private Scripts() {}

  /** Says where a text first has a letter that cannot be printed right; whether it has none. */
  static boolean check(Span text, Diagnostics diagnostics) {
    String written = text.text();
    int c;
    for (int i = 0; i < written.length(); i += Character.charCount(c)) {
      c = written.codePointAt(i);
      if (c >= FIRST && !Printed.PLAIN.contains(UnicodeScript.of(c))) {
        int at = text.start() + i;
        diagnostics
            .say(
                Code.SCRIPT_NOT_PRINTABLE,
                new Span(text.file(), at, at + Character.charCount(c)),
                "checklist.pdf cannot print %s letters: they join, stack or run from right to left",
                name(UnicodeScript.of(c)))
            .hint("write the text in letters that stand one after the other from left to right");
        return false;
      }
    }
    return true;
  }

  private static String name(UnicodeScript script) {
    String name = script.name().replace('_', ' ').toLowerCase(Locale.ROOT);
    return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
  }
}
