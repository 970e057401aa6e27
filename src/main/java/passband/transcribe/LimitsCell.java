package passband.transcribe;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Unit;

/** A cell with both limits: {@code 291 - 339}, {@code 291 to 339 mA}, {@code >= 291}. */
record LimitsCell(@Nullable Printed lower, @Nullable Printed upper) {
  private static final List<String> BETWEEN =
      List.of(" to ", " bis ", " à ", "...", "…", "..", "-", "–", "—", "−", "‐", "‑", "‒");
  private static final List<String> AT_LEAST = List.of(">=", "≥", "at least", "min.", "min");
  private static final List<String> AT_MOST = List.of("<=", "≤", "at most", "max.", "max");

  static LimitsCell of(String text, Numerals numerals, @Nullable Unit unit) throws TableFault {
    if (text.indexOf('±') >= 0 || text.contains("+/-")) {
      throw new TableFault(
          "'" + text + "' is a rule, not limits: write it under 'tolerance' beside 'nominal'");
    }
    for (String word : AT_LEAST) {
      if (text.startsWith(word)) {
        return new LimitsCell(one(text, word, numerals, unit), null);
      }
    }
    for (String word : AT_MOST) {
      if (text.startsWith(word)) {
        return new LimitsCell(null, one(text, word, numerals, unit));
      }
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

  private static Printed one(String text, String word, Numerals numerals, @Nullable Unit unit)
      throws TableFault {
    return numerals.read(text.substring(word.length()).strip(), unit, false);
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
