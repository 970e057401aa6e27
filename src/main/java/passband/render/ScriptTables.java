package passband.render;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Arrays;
import java.util.Locale;
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
    return "const CAUSE_PATTERNS = " + patterns + ";\n";
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
    return "const WAVES = " + waves + ";\n";
  }

  /** A quantity within a sentence of the language. */
  private static String said(String quantity, Language language) {
    QuantityKind kind = Objects.requireNonNull(QuantityKind.find(quantity), quantity);
    return language.within(language.term(kind.printed()));
  }

  /** What verdicts are called, and whether numbers have a decimal comma. */
  static String verdicts(Language language) {
    JsonObject words = new JsonObject();
    for (Verdict verdict : Verdict.values()) {
      words.addProperty(
          verdict.word(), language.of("page.verdict." + verdict.word().replace(' ', '-')));
    }
    return "const COMMA = " + language.comma() + ";\nconst VERDICT_WORDS = " + words + ";\n";
  }

  /** As a text of a script. */
  static String quoted(String text) {
    return new JsonPrimitive(text).toString();
  }

  /** What is written where there is no answer. */
  static String fillers() {
    JsonArray fillers = new JsonArray();
    Blank.fillers().forEach(fillers::add);
    return "const FILLERS = " + fillers + ";\n";
  }

  /**
   * By column of a table of readings, what is done with it; and what its column 'kind' may hold.
   */
  static String readings() {
    JsonObject columns = new JsonObject();
    for (ReadingColumn column : ReadingColumn.values()) {
      columns.addProperty(column.word(), column.use().name().toLowerCase(Locale.ROOT));
    }
    JsonArray kinds = new JsonArray();
    ReadingsTable.KINDS.forEach(kinds::add);
    return "const READING_COLUMNS = " + columns + ";\nconst READING_KINDS = " + kinds + ";\n";
  }

  /** By dimension and factor to SI, the names of the units, between spaces. */
  static String units() {
    JsonObject dimensions = new JsonObject();
    Units.recordedNames()
        .forEach(
            (name, unit) -> {
              String dimension = dimension(unit);
              if (!dimensions.has(dimension)) {
                dimensions.add(dimension, new JsonObject());
              }
              JsonObject factors = dimensions.getAsJsonObject(dimension);
              String factor = unit.factor().toString();
              String before = factors.has(factor) ? factors.get(factor).getAsString() + " " : "";
              factors.addProperty(factor, before + name);
            });
    return "const UNITS = " + escaped(dimensions.toString()) + ";\n";
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
