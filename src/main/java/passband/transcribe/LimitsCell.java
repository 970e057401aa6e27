package passband.transcribe;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Unit;

/** A cell with both limits: {@code 291 - 339}, {@code 291 to 339 mA}, {@code >= 291}. */
record LimitsCell(@Nullable Printed lower, @Nullable Printed upper) {
  private static final List<String> BETWEEN =
      List.of(" to ", " bis ", " à ", "...", "…", "..", "-", "–", "—", "−", "‐", "‑", "‒");
  private static final List<String> AT_LEAST =
      List.of(
          ">=", "≥", "at least", "not less than", "minimum", "min.", "min", "mindestens", "mind.");
  private static final List<String> AT_MOST =
      List.of(
          "<=",
          "≤",
          "at most",
          "up to",
          "not more than",
          "maximum",
          "max.",
          "max",
          "höchstens",
          "maximal");

  static LimitsCell of(String text, Numerals numerals, @Nullable Unit unit) throws TableFault {
    if (text.indexOf('±') >= 0 || text.contains("+/-")) {
      throw new TableFault(
          "'" + text + "' is a rule, not limits: write it under 'tolerance' beside 'nominal'");
    }
    String lower = without(text, AT_LEAST);
    if (lower != null) {
      return new LimitsCell(numerals.read(lower, unit, false), null);
    }
    String upper = without(text, AT_MOST);
    if (upper != null) {
      return new LimitsCell(null, numerals.read(upper, unit, false));
    }
    if (text.startsWith(">") || text.startsWith("<")) {
      throw new TableFault(
          "'"
              + text
              + "' leaves out the limit itself; write the last value that is accepted after"
              + " '>=' or '<='");
    }
    for (String between : BETWEEN) {
      int at = text.indexOf(between);
      if (at > 0) {
        return both(
            text.substring(0, at).strip(),
            text.substring(at + between.length()).strip(),
            numerals,
            unit);
      }
    }
    throw new TableFault("'" + text + "' is one number, not two limits");
  }

  /** What stands beside one of these words, before or behind it; null where none of them does. */
  private static @Nullable String without(String text, List<String> words) {
    for (String word : words) {
      int rest = text.length() - word.length();
      boolean whole =
          !Character.isLetter(word.charAt(0)) || rest <= 0 || isNoLetter(text, word.length());
      if (whole && text.regionMatches(true, 0, word, 0, word.length())) {
        return text.substring(word.length()).strip();
      }
      if (rest > 0
          && isNoLetter(text, rest - 1)
          && text.regionMatches(true, rest, word, 0, word.length())) {
        return text.substring(0, rest).strip();
      }
    }
    return null;
  }

  private static boolean isNoLetter(String text, int at) {
    return !Character.isLetter(text.charAt(at));
  }

  private static LimitsCell both(String lower, String upper, Numerals numerals, @Nullable Unit unit)
      throws TableFault {
    Unit own = unit;
    int end = upper.length();
    while (end > 0 && "0123456789.,".indexOf(upper.charAt(end - 1)) < 0) {
      end--;
    }
    Unit behind = ColumnHeading.unit(upper.substring(end).strip());
    if (behind != null && unit != null && !behind.dimension().equals(unit.dimension())) {
      throw new TableFault(
          "'" + upper + "' is in " + behind.symbol() + ", the heading in " + unit.symbol());
    }
    if (behind != null) {
      own = behind;
    }
    return new LimitsCell(numerals.read(lower, own, false), numerals.read(upper, own, false));
  }
}
