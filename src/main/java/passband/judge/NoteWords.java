package passband.judge;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.evidence.ItemNames;
import passband.quantity.QuantityKind;
import passband.quantity.Wave;
import passband.words.Language;

/**
 * The note of a cause in the words of a language. In the files for programs notes are identities
 * and English; what was written by hand and units stay as they are.
 */
final class NoteWords {
  private static final Pattern OF_ATTEMPT = Pattern.compile("(\\S+) of attempt (\\d+)");
  private static final Pattern NO_VALUE = Pattern.compile("'(.*)' has no value");

  /** Why a formula has no value, by the words that its calculation says it in. */
  private static final Map<String, String> REASONS =
      Map.of(
          "division by zero", "page.byZero",
          "the square root of zero or a negative value", "page.rootOfNone",
          "the root of a negative", "page.rootOfNone");

  private NoteWords() {}

  static String of(Cause.Code code, String note, ItemNames names, Language language) {
    return switch (code) {
      case EARLIER_FAILED, EARLIER_OPEN, GATE_FAILED, GATE_OPEN ->
          CauseWords.quoted(names.of(note), language);
      case RESULT_CONTRADICTED -> language.of("page.verdict." + note.replace(' ', '-'));
      case PEAK_BELOW_RMS -> reversed(note, language);
      case NOT_CALCULABLE -> reason(note, language);
      case ATTEMPTS_DIFFER -> attempts(note, language);
      case INSTRUMENT_OVERDUE -> CauseWords.quoted(names.ofLast(note), language);
      default -> note;
    };
  }

  private static String reversed(String note, Language language) {
    for (Wave wave : Wave.values()) {
      String peak = said(wave.peak(), language);
      if (note.equals(PeakAndRms.isBelow(wave.peak(), wave.rms()))) {
        return isBelow(peak, said(wave.rms(), language), language);
      }
      if (note.equals(PeakAndRms.isBelow(wave.peak(), wave.through()))) {
        return isBelow(peak, language.of("page.through." + wave.rms()), language);
      }
    }
    return note;
  }

  private static String isBelow(String peak, String rms, Language language) {
    return language.of("page.isBelow").replace("{peak}", peak).replace("{rms}", rms);
  }

  private static String reason(String note, Language language) {
    String key = REASONS.get(note);
    Matcher none = NO_VALUE.matcher(note);
    return key != null
        ? language.of(key)
        : none.matches()
            ? language.of("page.noValue").replace("{name}", said(none.group(1), language))
            : note;
  }

  private static String attempts(String note, Language language) {
    String pattern = language.of("page.ofAttempt");
    return OF_ATTEMPT
        .matcher(note)
        .replaceAll(
            one ->
                Matcher.quoteReplacement(
                    pattern
                        .replace("{name}", said(one.group(1), language))
                        .replace("{n}", one.group(2))));
  }

  /** What a quantity is called within a sentence; of no quantity the name itself. */
  private static String said(String quantity, Language language) {
    QuantityKind kind = QuantityKind.find(quantity);
    return kind == null ? quantity : language.within(language.term(kind.printed()));
  }
}
