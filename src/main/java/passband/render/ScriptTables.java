package passband.render;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import passband.evidence.Blank;
import passband.judge.Cause;
import passband.judge.ReadingColumn;
import passband.judge.ReadingsTable;
import passband.judge.Verdict;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.quantity.Wave;
import passband.words.Language;

/** Tables that the script of the sheet shares with the judge, as constants of the script. */
final class ScriptTables {
  private ScriptTables() {}

  /**
   * By code that a script comes to, the pattern of its sentence: in English the judge's own.
   *
   * @param script names each code as a text
   */
  static String causes(Language language, String script) {
    JsonObject patterns = new JsonObject();
    for (Cause.Code code : Cause.Code.values()) {
      String own = language.words().get("cause." + code.word());
      if (own != null && script.contains(quoted(code.word()))) {
        patterns.addProperty(code.word(), language == Language.ENGLISH ? code.pattern() : own);
      }
    }
    return "CAUSE_PATTERNS=" + patterns;
  }

  /**
   * Of each wave its peak, its RMS value, that of the other side, how one is by the other, and what
   * the sheet calls them.
   */
  static String waves(Language language) {
    JsonArray waves = new JsonArray();
    for (Wave wave : Wave.values()) {
      JsonObject one = new JsonObject();
      one.addProperty("peak", wave.peak());
      one.addProperty("rms", wave.rms());
      one.addProperty("other", wave.other().rms());
      one.addProperty("times", wave == Wave.VOLTAGE);
      one.addProperty("through", language.of("page.through." + wave.rms()));
      one.addProperty("peakSaid", said(wave.peak(), language));
      one.addProperty("rmsSaid", said(wave.rms(), language));
      waves.add(one);
    }
    return "WAVES=" + waves;
  }

  /** A quantity within a sentence of the language. */
  private static String said(String quantity, Language language) {
    QuantityKind kind = Objects.requireNonNull(QuantityKind.find(quantity), quantity);
    return language.within(language.term(kind.printed()));
  }

  /**
   * What verdicts are called where it is not as the judge does, and whether numbers have a decimal
   * comma.
   */
  static String verdicts(Language language) {
    JsonObject words = new JsonObject();
    for (Verdict verdict : Verdict.values()) {
      String own = language.of("page.verdict." + verdict.word().replace(' ', '-'));
      if (!own.equals(verdict.word())) {
        words.addProperty(verdict.word(), own);
      }
    }
    return "COMMA=" + language.comma() + ",\nVERDICT_WORDS=" + words;
  }

  /** As a text of a script. */
  static String quoted(String text) {
    return new JsonPrimitive(text).toString();
  }

  /** What is written where there is no answer. */
  static String fillers() {
    return list("FILLERS", Blank.fillers());
  }

  /** The columns of a table of readings, and what its column 'kind' may hold. */
  static String readings() {
    return String.join(
        ",\n",
        list("READING_COLUMNS", words(List.of(ReadingColumn.values()))),
        list("NEEDED_COLUMNS", words(ReadingColumn.of(ReadingColumn.Use.NEEDED))),
        list("COMPARED_COLUMNS", words(ReadingColumn.of(ReadingColumn.Use.COMPARED))),
        list("READING_KINDS", ReadingsTable.KINDS));
  }

  private static List<String> words(List<ReadingColumn> columns) {
    return columns.stream().map(ReadingColumn::word).toList();
  }

  /** A constant, the list of texts that have no space in them. */
  private static String list(String name, Collection<String> texts) {
    return name + "=" + quoted(String.join(" ", texts)) + ".split(\" \")";
  }

  /**
   * What {@link Units#recorded} knows, in lines: dimension, factor to SI, names between commas and
   * the letters of the prefixes that they may have; 'u' is written in three ways.
   */
  static String units() {
    StringBuilder lines = new StringBuilder();
    for (Units.Family family : Units.families()) {
      lines.append(lines.isEmpty() ? "" : ";");
      lines.append(dimension(family.unit()).replaceFirst("(,0)+$", ""));
      lines.append(' ').append(family.unit().factor());
      lines.append(' ').append(String.join(",", family.names()));
      lines.append(' ').append(String.join("", family.prefixes()));
    }
    return "UNITS=" + escaped(quoted(lines.toString())) + ".split(\";\")";
  }

  /** U+2126, the ohm sign, in ASCII: normalised, it would be the letter that it looks like. */
  private static String escaped(String json) {
    return json.replace("\u2126", "\\u2126");
  }

  /** The exponents of the base units: {@code 2,1,-3,0,0,0,0,0} of a power. */
  static String dimension(Unit unit) {
    return Arrays.stream(unit.dimension().exponents())
        .mapToObj(Integer::toString)
        .collect(Collectors.joining(","));
  }
}
