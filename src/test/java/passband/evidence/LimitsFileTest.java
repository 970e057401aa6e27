package passband.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import passband.plan.Plan;
import passband.testing.Sheets;

/** {@code limits.json}: what is written is read back, and a damaged file is refused. */
class LimitsFileTest {
  private static final int DAMAGES = 300;

  static List<Plan> plans() {
    return List.of(Sheets.YARROW, Sheets.TEASEL, Sheets.SPREADS);
  }

  @ParameterizedTest
  @MethodSource("plans")
  void whatIsWrittenIsReadBack(Plan plan) throws BadInput {
    ItemList list = Evidence.of(plan).list();
    assertEquals(list, LimitsReader.read(LimitsWriter.of(list)));
    assertEquals(list, LimitsReader.read(LimitsWriter.of(list).replace("\n", "\r\n")));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void everyItemHasAnIdentityOfItsOwn(Plan plan) {
    Set<String> ids = new HashSet<>();
    List<Item> items = Evidence.of(plan).list().items();
    items.forEach(item -> assertTrue(ids.add(item.id()), item.id()));
    assertTrue(items.size() > plan.limits().size());
  }

  @Test
  void anyChangedCharacterIsRefused() {
    String good = LimitsWriter.of(Evidence.of(plans().get(0)).list());
    Random random = new Random(11);
    for (int i = 0; i < DAMAGES; i++) {
      int at = random.nextInt(good.length());
      char c = good.charAt(at) == '7' ? '8' : '7';
      String bad = good.substring(0, at) + c + good.substring(at + 1);
      assertThrows(BadInput.class, () -> LimitsReader.read(bad), bad.substring(0, at));
    }
  }

  @Test
  void anyMissingLineIsRefused() {
    String good = LimitsWriter.of(Evidence.of(plans().get(0)).list());
    String[] lines = good.split("\n");
    Random random = new Random(12);
    for (int i = 0; i < DAMAGES; i++) {
      int gone = random.nextInt(lines.length);
      StringBuilder bad = new StringBuilder();
      for (int line = 0; line < lines.length; line++) {
        bad.append(line == gone ? "" : lines[line] + "\n");
      }
      assertThrows(BadInput.class, () -> LimitsReader.read(bad.toString()), lines[gone]);
    }
  }

  private static String refused(String text) {
    return assertThrows(BadInput.class, () -> LimitsReader.read(text)).getMessage();
  }

  private static String good() {
    return LimitsWriter.of(Evidence.of(plans().get(0)).list());
  }

  private static String withoutRepeats(String text) {
    String repeats = "\"repeats\": \\[(\\s*\\[[^\\[\\]]*\\],?)*\\s*\\]";
    return text.replaceAll(",\\s+" + repeats, "").replaceAll("\\{\\s+" + repeats + ",", "{");
  }

  /** The text with a seal that is right, as a program would write it. */
  private static String resealed(String text) {
    return Seal.sealed(
        text.replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.OPEN + "\""));
  }

  /** A number that was edited, a line that was taken out: that it was changed comes first. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Done by | Done | ''",
        "\"coverage_factor\": 2 | \"coverage_factor\": 2.0 | ''",
        "\"coverage_factor\": 2 | \"coverage_factor\": \"2\" | decision.coverage_factor: expected a number",
        "\"coverage_factor\": 2 | \"k\": 2 | decision: the key 'coverage_factor' is missing",
        "\"kind\": \"tick\" | \"kind\": \"tic\" | .kind: expected one of reading",
        "\"title\" | \"titel\" | the key 'title' is missing"
      })
  void ofAnEditedFileTheSealComesFirst(String was, String now, String what) {
    String broken = "its seal is broken: it was changed after it was written";
    String edited = good().replaceFirst(was, now);
    String said = refused(edited);
    assertTrue(said.startsWith(broken), said);
    assertTrue(
        what.isEmpty() ? said.equals(broken) : said.contains("; ") && said.contains(what), said);
    if (!what.isEmpty()) {
      String alone = refused(resealed(edited));
      assertEquals(broken + "; " + alone, said);
    }
  }

  @Test
  void whatIsNoJsonIsSaidWithItsPlace() {
    assertEquals("this is not a JSON file, see line 2, column 14", refused("{\n  x\"format\" 2}"));
    assertTrue(
        refused(good().replaceFirst("\"items\"", "items \"")).matches(".*line \\d+, column \\d+"));
    assertEquals("format: unknown format 'x'", refused("{\"format\": \"x\"}"));
    assertEquals(
        "it has no seal", refused(good().replaceFirst("  \"seal\".*\n", "")).split("; ")[0]);
  }

  /** The format before has the instruments as one text. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sorrel-12 | analyzer=sorrel-12",
        "analyzer sorrel-12, probe b-1 | analyzer=sorrel-12 probe=b-1"
      })
  void theFormatBeforeIsRead(String analyzer, String instruments) throws BadInput {
    String before =
        resealed(
            withoutSpreads(withoutRepeats(good()))
                .replaceFirst(
                    "(?s)\"instruments\": \\[.*?\\]", "\"analyzer\": \"" + analyzer + "\"")
                .replaceFirst("passband-limits/7", "passband-limits/2"));
    ItemList read = LimitsReader.read(before);
    assertEquals(Evidence.of(plans().get(0)).list().items(), read.items());
    assertEquals(
        instruments,
        read.source().instruments().stream()
            .map(one -> one.role() + "=" + one.name())
            .collect(Collectors.joining(" ")));
    assertEquals(analyzer, read.source().analyzers());
  }

  /** Before format 7 no file said which readings repeat one another. */
  @Test
  void formatSixIsReadWithoutRepeats() throws BadInput {
    String six = withoutRepeats(good()).replaceFirst("passband-limits/7", "passband-limits/6");
    assertEquals(Evidence.of(plans().get(0)).list(), LimitsReader.read(resealed(six)));
    String said = refused(resealed(good().replaceFirst("passband-limits/7", "passband-limits/6")));
    assertTrue(said.contains("unknown key 'repeats'"), said);
  }

  /** In format 4 all degrees of freedom were infinite, and none can be said in it. */
  @Test
  void formatFourIsReadWithoutDegreesOfFreedom() throws BadInput {
    String four =
        withoutRepeats(good())
            .replaceAll(",\\s+\"(prior|(load_error_)?degrees_of_freedom)\": null", "")
            .replaceFirst("\\s*\"language\": \"en\",", "")
            .replaceFirst("passband-limits/7", "passband-limits/4");
    assertEquals(
        Evidence.of(plans().get(0)).list().items(), LimitsReader.read(resealed(four)).items());
    String said =
        refused(
            resealed(
                withoutRepeats(good())
                    .replaceFirst("\\s*\"language\": \"en\",", "")
                    .replaceFirst("passband-limits/7", "passband-limits/4")));
    assertTrue(said.contains("unknown key 'prior'"), said);
    String half =
        refused(
            resealed(
                good()
                    .replaceFirst("\"degrees_of_freedom\": null", "\"degrees_of_freedom\": 0.5")));
    assertTrue(half.contains("at least one degree of freedom"), half);
  }

  /** In format 3 every error was rectangular, and nothing else can be said in it. */
  @Test
  void formatThreeIsReadWithoutDistributions() throws BadInput {
    String three =
        withoutSpreads(withoutRepeats(good()))
            .replaceFirst("passband-limits/7", "passband-limits/3");
    assertEquals(
        Evidence.of(plans().get(0)).list().items(), LimitsReader.read(resealed(three)).items());
    assertEquals(null, LimitsReader.read(resealed(three)).source().released());
    String said =
        refused(
            resealed(
                withoutRepeats(good())
                    .replaceFirst("\\s*\"released\": [a-z]+,", "")
                    .replaceFirst("\\s*\"language\": \"en\",", "")
                    .replaceFirst(",\\s+\"prior\": null", "")
                    .replaceFirst("passband-limits/7", "passband-limits/3")));
    assertTrue(said.contains("unknown key 'distribution'"), said);
    String unknown = refused(resealed(good().replace("\"rectangular\"", "\"trapezoid\"")));
    assertTrue(unknown.contains("unknown distribution 'trapezoid'"), unknown);
  }

  /**
   * Before format 6 no file said in which language its sheet is: a comma on it is no decimal mark.
   */
  @Test
  void formatFiveIsReadAsEnglish() throws BadInput {
    String five =
        withoutRepeats(good())
            .replaceFirst("\\s*\"language\": \"en\",", "")
            .replaceFirst("passband-limits/7", "passband-limits/5");
    ItemList read = LimitsReader.read(resealed(five));
    assertEquals(Evidence.of(plans().get(0)).list(), read);
    String said =
        refused(resealed(withoutRepeats(good()).replace("passband-limits/7", "passband-limits/5")));
    assertTrue(said.contains("unknown key 'language'"), said);
    String other =
        refused(resealed(good().replace("\"language\": \"en\"", "\"language\": \"xx\"")));
    assertTrue(other.contains("language"), other);
  }

  /** Each key of each object of each kind of item; format 2 has not all of them. */
  @Test
  void ofAMissingKeyTheNameIsSaid() throws BadInput {
    Set<String> optional = new TreeSet<>();
    for (Plan plan : plans()) {
      String good = LimitsWriter.of(Evidence.of(plan).list());
      JsonObject root = JsonParser.parseString(good).getAsJsonObject();
      List<JsonObject> objects = new ArrayList<>(List.of(root, root.getAsJsonObject("decision")));
      root.getAsJsonArray("items").forEach(item -> objects.add(item.getAsJsonObject()));
      for (JsonObject object : objects) {
        for (String key : List.copyOf(object.keySet())) {
          JsonElement was = object.remove(key);
          String said = refused(resealed(pretty(root)));
          boolean kind = key.equals("kind");
          assertTrue(
              kind || said.contains("the key '" + key + "' is missing") || key.equals("seal"),
              said);
          object.add(key, was);
          if (object != root && readsAsTheFormatBefore(root, object, key)) {
            optional.add(key);
          }
        }
      }
    }
    assertEquals(
        Set.of(
            "accepts",
            "due",
            "load_error_coverage_factor",
            "load_error_degrees_of_freedom",
            "load_error_distribution",
            "prior",
            "repeats",
            "stops",
            "when"),
        optional);
  }

  private static final String SPREAD =
      "\"(load_error_)?(distribution\": \"[a-z-]+\"|coverage_factor\": 1.96"
          + "|degrees_of_freedom\": (null|[0-9.]+))";

  /** As the formats before 4 were. */
  private static String withoutSpreads(String json) {
    return json.replaceFirst("\\s*\"released\": [a-z]+,", "")
        .replaceFirst("\\s*\"language\": \"[a-z]+\",", "")
        .replaceAll(",\\s+\"prior\": null", "")
        .replaceAll("\\{\\s+\"prior\": null,", "{")
        .replaceAll(",\\s+" + SPREAD, "")
        .replaceAll("\\{\\s+" + SPREAD + ",", "{");
  }

  private static String pretty(JsonObject root) {
    return new GsonBuilder().setPrettyPrinting().serializeNulls().create().toJson(root) + "\n";
  }

  private static boolean readsAsTheFormatBefore(JsonObject root, JsonObject object, String key) {
    JsonElement format = root.get("format");
    JsonElement instruments = root.remove("instruments");
    JsonElement released = root.remove("released");
    JsonElement language = root.remove("language");
    JsonElement was = object.remove(key);
    root.addProperty("format", "passband-limits/2");
    root.addProperty("analyzer", "a");
    try {
      LimitsReader.read(resealed(withoutSpreads(withoutRepeats(pretty(root)))));
      return true;
    } catch (BadInput e) {
      return false;
    } finally {
      object.add(key, was);
      root.remove("analyzer");
      root.add("instruments", instruments);
      root.add("released", released);
      root.add("language", language);
      root.add("format", format);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[] | instruments: expected one instrument at least",
        "[{\"role\": \"a\", \"name\": \"x\"}, {\"role\": \"a\", \"name\": \"y\"}] | instruments[1].role: the role 'a' is listed twice",
        "[{\"role\": \"a\"}] | instruments[0]: the key 'name' is missing",
        "[{\"role\": \"a\", \"name\": \"\"}] | instruments[0].name: expected a text that is not empty",
        "7 | instruments: expected an array"
      })
  void theInstrumentsAreAList(String instruments, String message) {
    assertEquals(
        message,
        refused(
            resealed(
                good()
                    .replaceFirst(
                        "(?s)\"instruments\": \\[.*?\\]", "\"instruments\": " + instruments))));
  }
}
