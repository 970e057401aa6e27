package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.diff.Kind;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.evidence.Seal;
import passband.judge.Cause;
import passband.judge.Verdict;
import passband.render.Schemas;
import passband.testing.Records;
import passband.testing.Repository;
import passband.testing.Sheets;

/** Everything that is printed or written as JSON, held against the schemas by networknt. */
class SchemasTest {
  private static final int DAMAGES = 200;

  @TempDir Path folder;
  private String err = "";

  private String run(int status, String... words) {
    Call call = Call.of(folder, words);
    err = call.err();
    assertEquals(status, call.status(), String.join(" ", words) + "\n" + err);
    return call.out();
  }

  private Schema schema(String name) {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(run(0, "schema", name), InputFormat.JSON);
  }

  private void assertFits(String name, String json) {
    assertEquals(List.of(), schema(name).validate(json, InputFormat.JSON), json);
    JsonObject schema = JsonParser.parseString(Schemas.text(name)).getAsJsonObject();
    String format = JsonParser.parseString(json).getAsJsonObject().get("format").getAsString();
    assertEquals("urn:" + format.replace('-', ':').replace('/', ':'), id(schema));
  }

  private static String id(JsonObject schema) {
    return schema.get("$id").getAsString();
  }

  private static String library(String path) {
    return Repository.LIBRARY.resolve(path).toString();
  }

  @Test
  void eachSchemaHasAnIdentityAndIsStrict() {
    Set<String> ids = new TreeSet<>();
    assertEquals(String.join("\n", Schemas.NAMES) + "\n", run(0, "schema"));
    for (String name : Schemas.NAMES) {
      JsonObject schema = JsonParser.parseString(run(0, "schema", name)).getAsJsonObject();
      assertTrue(id(schema).matches("urn:passband:" + name + ":[1-9]"), id(schema));
      assertTrue(ids.add(id(schema)));
      assertStrict(name, schema);
    }
    run(2, "schema", "verdict");
    assertEquals("passband: unknown schema 'verdict'; did you mean 'verdicts'?\n", err);
  }

  /** An object with named keys takes no others. */
  private static void assertStrict(String where, JsonElement element) {
    if (element instanceof JsonArray array) {
      array.forEach(e -> assertStrict(where, e));
    } else if (element instanceof JsonObject object) {
      boolean described = object.has("type") && object.has("properties");
      boolean head = object.has("properties") && object.getAsJsonObject("properties").has("kind");
      assertTrue(!described || object.has("additionalProperties") || head, where + object);
      object.asMap().forEach((key, value) -> assertStrict(where + "/" + key, value));
    }
  }

  @Test
  void limits() {
    for (Path file : Repository.files(Repository.ROOT.resolve("out"), "limits.json")) {
      assertFits("limits", Repository.text(file));
    }
    assertFits("limits", LimitsWriter.of(Evidence.of(Sheets.SPREADS).list()));
    Sheets.demo().forEach(p -> assertFits("limits", LimitsWriter.of(Evidence.of(p).list())));
  }

  /** Every case of every diagnostic. */
  @Test
  void diagnostics() throws IOException {
    assertFits("diagnostics", run(0, "check", Repository.LIBRARY.toString(), "--as", "json"));
    int found = 0;
    try (var cases = Files.walk(Repository.ROOT.resolve("src/test/resources/cases"))) {
      for (Path file : cases.filter(f -> f.endsWith("fires.pband")).sorted().toList()) {
        String json = Call.of(folder, "check", file.toString(), "--as", "json").out();
        assertFits("diagnostics", json);
        JsonArray all =
            JsonParser.parseString(json).getAsJsonObject().getAsJsonArray("diagnostics");
        found += all.size();
      }
    }
    assertTrue(found > 50, found + " diagnostics");
  }

  @Test
  void coverage() {
    String json = run(0, "check", "--coverage", "--as", "json", Repository.PROCEDURES.toString());
    assertFits("coverage", json);
    assertTrue(json.contains("\"tested\": true"), json);
  }

  @Test
  void steps() {
    String json = run(0, "steps", "--as", "json", Repository.PROCEDURES.toString());
    assertFits("steps", json);
    assertFits("detect", run(0, "detect", "--as", "json", Repository.PROCEDURES.toString()));
    assertTrue(json.contains("\"was\": null"), json);
  }

  @Test
  void diff() throws IOException {
    String main = library("teasel/teasel-output.pband");
    assertFits("diff", run(0, "diff", main, main, "--as", "json"));
    String changed = run(1, "diff", Repository.LIBRARY.toString(), changed(), "--as", "json");
    assertFits("diff", changed);
    assertTrue(changed.contains("\"text\": \"tack | 1       | 40       | 400 to 500\""), changed);
    assertNumbers(changed);
    Path none = Files.createDirectories(folder.resolve("none"));
    Files.writeString(none.resolve("leads.pband"), "");
    assertFits(
        "diff", run(1, "diff", Repository.LIBRARY.toString(), none.toString(), "--as", "json"));
  }

  /** The library with one limit changed; its folder. */
  private String changed() {
    Path other = folder.resolve("other");
    Repository.texts(Repository.LIBRARY)
        .forEach(
            (name, text) -> {
              try {
                Files.createDirectories(other.resolve(name).getParent());
                Files.writeString(other.resolve(name), text.replace("410 to 500", "400 to 500"));
              } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
              }
            });
    return other.toString();
  }

  /** The limits before rounding are numbers in the unit of those that are accepted. */
  private static void assertNumbers(String diff) {
    List<JsonObject> objects = new ArrayList<>();
    objects(JsonParser.parseString(diff), objects);
    int looked = 0;
    for (JsonObject change : objects) {
      for (JsonElement detail :
          change.has("details") ? change.getAsJsonArray("details") : new JsonArray()) {
        JsonObject now = detail.getAsJsonObject().getAsJsonObject("now");
        if (now.has("lower")) {
          JsonObject limit =
              change.getAsJsonObject("now").getAsJsonArray("limits").get(0).getAsJsonObject();
          assertEquals(limit.get("unit"), now.get("unit"));
          BigDecimal exact = now.get("lower").getAsBigDecimal();
          assertTrue(exact.compareTo(limit.get("lower").getAsBigDecimal()) <= 0, change.toString());
          looked++;
        }
      }
    }
    assertTrue(looked > 0, diff);
  }

  /** Each key removed, another added, each value of another type: the schema refuses it. */
  @Test
  void everyDamageOfADiffIsRefused() {
    String other = library("teasel/teasel-output.pband");
    String good =
        run(1, "diff", library("yarrow/yarrow-service.pband"), other, "--as", "json")
            + run(1, "diff", Repository.LIBRARY.toString(), changed(), "--as", "json");
    Schema schema = schema("diff");
    int damages = 0;
    for (String text : good.split("(?<=\n\\}\n)")) {
      int objects = objects(text).size();
      for (int i = 0; i < objects; i += Math.max(1, objects / 60)) {
        for (String key : List.copyOf(objects(text).get(i).keySet())) {
          for (int kind = 0; kind < 3; kind++) {
            JsonObject root = JsonParser.parseString(text).getAsJsonObject();
            List<JsonObject> found = new ArrayList<>();
            objects(root, found);
            JsonObject object = found.get(i);
            JsonElement was = object.get(key);
            switch (kind) {
              case 0 -> object.remove(key);
              case 1 -> object.add(key + "_2", was);
              default -> object.add(key, otherType(was));
            }
            assertFalse(
                schema.validate(written(root), InputFormat.JSON).isEmpty(), kind + key + object);
            damages++;
          }
        }
      }
    }
    assertTrue(damages > DAMAGES, damages + " damages");
  }

  private static List<JsonObject> objects(String text) {
    List<JsonObject> found = new ArrayList<>();
    objects(JsonParser.parseString(text), found);
    return found;
  }

  /** The words of a schema are those that the program has. */
  @Test
  void aSchemaKnowsEveryWordOfTheProgram() {
    assertEquals(
        Stream.of(Kind.values()).map(Kind::word).toList(),
        words(definition("diff", "kind").getAsJsonArray("enum")));
    assertEquals(
        Stream.of(Cause.Code.values()).map(Cause.Code::word).collect(Collectors.toSet()),
        Set.copyOf(words("verdicts", "cause", "code")));
    assertEquals(
        Stream.of(Verdict.values())
            .filter(verdict -> verdict != Verdict.INCOMPLETE)
            .map(Verdict::word)
            .toList(),
        words("verdicts", "item", "verdict"));
  }

  private static List<String> words(String schema, String part, String key) {
    return words(
        definition(schema, part)
            .getAsJsonObject("properties")
            .getAsJsonObject(key)
            .getAsJsonArray("enum"));
  }

  private static JsonObject definition(String schema, String name) {
    JsonObject root = JsonParser.parseString(Schemas.text(schema)).getAsJsonObject();
    return root.getAsJsonObject("$defs").getAsJsonObject(name);
  }

  private static List<String> words(JsonArray words) {
    return words.asList().stream().map(JsonElement::getAsString).toList();
  }

  @Test
  void verdictsAndHistory() throws IOException {
    for (var plan : Sheets.demo()) {
      ItemList list = Evidence.of(plan).list();
      Files.writeString(folder.resolve("limits.json"), LimitsWriter.of(list));
      Records good = Records.of(list, false);
      Files.writeString(folder.resolve("2025-11-03.csv"), good.csv());
      assertFits("verdicts", run(0, "judge", "limits.json", "2025-11-03.csv", "--as", "json"));
      String some = written(list, good);
      Files.writeString(folder.resolve("bad.csv"), good.without(some).csv());
      assertFits("verdicts", run(1, "judge", "limits.json", "bad.csv", "--as", "json"));
      assertRecord(0, "2025-11-03.csv");
      assertRecord(1, "bad.csv");
      Files.writeString(
          folder.resolve("next.csv"),
          Files.readString(folder.resolve("2025-11-03.csv")).replace("2026-11-27", "2027-11-27"));
      String json = run(0, "history", "limits.json", "2025-11-03.csv", "next.csv", "--as", "json");
      assertFits("history", json);
      assertTrue(json.contains("\"crosses\": false"), json);
      assertTrue(json.contains("\"warnings\": []"), json);
    }
  }

  private void assertRecord(int status, String readings) throws IOException {
    String number = "N-17";
    String json = run(status, "record", "limits.json", readings, "--number", number);
    assertFits("record", json);
    assertFits("verdicts", JsonParser.parseString(json).getAsJsonObject().get("result").toString());
    Files.writeString(folder.resolve("record.json"), json);
    String seal = JsonParser.parseString(json).getAsJsonObject().get("seal").getAsString();
    String said = run(0, "verify", "record.json");
    assertTrue(said.startsWith("record.json: unaltered"), said);
    assertTrue(said.endsWith("; seal " + seal.substring(0, 16) + "\n"), said);
    for (String given : List.of(seal, " " + seal.substring(0, 8).toUpperCase(Locale.ROOT))) {
      run(0, "verify", "record.json", "--seal", given);
    }
    for (String given : List.of(seal.substring(0, 7), "?".repeat(8), " ")) {
      run(2, "verify", "record.json", "--seal", given);
      assertTrue(err.contains("at least the first 8 are needed"), err);
    }
    String other = (seal.startsWith("0") ? "1" : "0") + seal.substring(1);
    assertTrue(run(1, "verify", "record.json", "--seal", other).contains("not " + other));
    Path records = Files.createDirectories(folder.resolve("records"));
    run(2, "fleet", Files.createDirectories(folder.resolve("empty")).toString());
    assertTrue(err.contains("there is no .json file"), err);
    Files.writeString(records.resolve("r.json"), json);
    assertTrue(run(0, "fleet", "records", "--as", "csv").startsWith("device,serial,"));
    run(2, "fleet", "records", "--instrument", "no such");
    assertTrue(err.contains("no record names an instrument"), err);
    String[] turned = {"--from", "2026-02-01", "--to", "2026-01-01"};
    run(2, "fleet", "records", "--instrument", "x", turned[0], turned[1], turned[2], turned[3]);
    assertTrue(err.contains("is after"), err);
    String all = run(0, "verify", "records");
    assertTrue(all.startsWith("records/r.json: unaltered"), all);
    assertTrue(all.endsWith("1 unaltered, 0 altered, 0 no record\n"), all);
    Files.writeString(records.resolve("s.JSON"), json.replace(number, "N-18"));
    all = run(1, "verify", "records");
    assertTrue(all.contains("records/s.JSON: altered\n  its seal is broken"), all);
    assertTrue(all.endsWith("1 unaltered, 1 altered, 0 no record\n"), all);
    Files.writeString(records.resolve("t.json"), "{}");
    all = run(2, "verify", "records");
    assertTrue(all.contains("records/t.json: no record: "), all);
    run(2, "verify", "records", "--as", "html");
    assertTrue(err.contains("are for one record"), err);
    Files.delete(records.resolve("s.JSON"));
    Files.delete(records.resolve("t.json"));
    Files.writeString(folder.resolve("record.json"), json.replace(number, "N-18"));
    assertTrue(run(1, "verify", "record.json").contains("seal is broken"));
  }

  @Test
  void transcripts() throws IOException {
    Files.writeString(
        folder.resolve("table.csv"),
        """
        Mode,Power (W),Load (ohm),Limits (mA)
        Cut,10,100,291 to 339
        Cut,20,100,412 to 479
        Cut,40,100,583 to 687
        Cut,60,100,714 to 830
        Cut,80,1000,824 to 959
        Spray,3,200,17 to 700
        Spray,9,200,33 to 34
        """);
    String json = run(0, "transcribe", "table.csv", "--as", "json");
    assertFits("transcript", json);
    assertTrue(json.contains("\"slip\": \"transposed\""), json);
    assertTrue(json.contains("\"instead\": \"100 ohm\""), json);
    assertTrue(json.contains("\"rule\": null"), json);
  }

  /** An item in the middle of a record that is written down, not calculated. */
  private static String written(ItemList list, Records good) {
    List<String> ids = new ArrayList<>(good.ids());
    list.items().stream()
        .filter(item -> item instanceof Item.Derived)
        .forEach(item -> ids.remove(item.id()));
    return ids.get(ids.size() / 2);
  }

  /** From the middle of its limits to one of them in a year, a reading leaves them in the next. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aDriftIsWarnedOfInNumbers(boolean up) throws IOException {
    ItemList list = Evidence.of(Sheets.TEASEL).list();
    Item.Reading drifts =
        list.items().stream()
            .filter(i -> i instanceof Item.Reading r && r.limits() != null)
            .map(i -> (Item.Reading) i)
            .findFirst()
            .orElseThrow();
    BigDecimal limit = up ? drifts.limits().acceptUpper() : drifts.limits().acceptLower();
    Files.writeString(folder.resolve("limits.json"), LimitsWriter.of(list));
    Records records = Records.of(list, false);
    Files.writeString(folder.resolve("one.csv"), records.csv());
    records.with(drifts.id(), Records.reading(limit.toPlainString(), drifts.scale().unit()));
    Files.writeString(folder.resolve("two.csv"), records.csv().replace("2026-11-27", "2027-11-27"));
    String json = run(1, "history", "limits.json", "one.csv", "two.csv", "--as", "json");
    assertFits("history", json);
    JsonArray warnings = JsonParser.parseString(json).getAsJsonObject().getAsJsonArray("warnings");
    assertEquals(1, warnings.size());
    JsonObject warning = warnings.get(0).getAsJsonObject();
    assertEquals(up ? "above-limit" : "below-limit", warning.get("code").getAsString());
    assertEquals(drifts.id(), warning.get("item").getAsString());
    assertEquals(limit, warning.get("limit").getAsBigDecimal());
    BigDecimal expected = limit.multiply(BigDecimal.valueOf(2)).subtract(Records.middle(drifts));
    assertEquals(
        expected.doubleValue(),
        warning.get("expected").getAsDouble(),
        expected.doubleValue() / 1e5);
  }

  // ---- damaged limits ----

  /**
   * One damage each: a key removed, added or of another type, an unknown format, an item twice,
   * each also with the seal made again; a value edited or an item removed, which only the seal
   * tells.
   */
  @Test
  void everyDamageIsRefused() throws BadInput {
    Random random = new Random(20261127);
    List<ItemList> lists = new ArrayList<>();
    Sheets.demo().forEach(plan -> lists.add(Evidence.of(plan).list()));
    Schema schema = schema("limits");
    for (int i = 0; i < DAMAGES; i++) {
      String good = LimitsWriter.of(lists.get(i % lists.size()));
      JsonObject root = JsonParser.parseString(good).getAsJsonObject();
      boolean resealed = i % 2 == 0;
      String what = damage(root, random, resealed ? i / 2 % 5 : i / 2 % 7);
      String bad = written(root);
      assertFalse(bad.equals(good), what);
      String file = resealed && root.has("seal") ? resealed(bad) : bad;
      assertTrue(
          !schema.validate(file, InputFormat.JSON).isEmpty() || refused(file),
          what + (resealed ? ", sealed again" : ""));
      assertTrue(!what.startsWith("damage 0") || refused(file), "a missing key: " + what);
    }
    for (ItemList list : lists) {
      String good = LimitsWriter.of(list);
      JsonObject root = JsonParser.parseString(good).getAsJsonObject();
      assertEquals(good, written(root), "what is written again unchanged is accepted");
      assertEquals(good, resealed(good));
      assertEquals(list, LimitsReader.read(good));
    }
  }

  private static boolean refused(String file) {
    try {
      LimitsReader.read(file);
      return false;
    } catch (BadInput e) {
      return true;
    }
  }

  private static String written(JsonObject root) {
    return new GsonBuilder()
            .setPrettyPrinting()
            .serializeNulls()
            .disableHtmlEscaping()
            .create()
            .toJson(root)
        + "\n";
  }

  private static String resealed(String text) {
    return Seal.sealed(
        text.replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.OPEN + "\""));
  }

  /** Damages the file at one place; what was done. */
  private static String damage(JsonObject root, Random random, int kind) {
    List<JsonObject> objects = new ArrayList<>();
    objects(root, objects);
    JsonObject object = objects.get(random.nextInt(objects.size()));
    List<String> keys = List.copyOf(object.keySet());
    String key = keys.get(random.nextInt(keys.size()));
    JsonArray items = root.getAsJsonArray("items");
    int item = random.nextInt(items.size());
    switch (kind) {
      case 0 -> object.remove(key);
      case 1 -> object.add(key + "_2", object.get(key));
      case 2 -> {
        // What a gate stops is a list or null, so that a list in place of null is no other type.
        JsonElement other = new JsonPrimitive("text");
        object.add(key, key.equals("stops") ? other : otherType(object.get(key)));
      }
      case 3 -> root.addProperty("format", "passband-limits/" + (7 + random.nextInt(90)));
      case 4 -> items.add(items.get(item).deepCopy());
      case 5 -> items.remove(item);
      default -> {
        List<JsonObject> valued = new ArrayList<>(objects);
        valued.removeIf(o -> o.asMap().values().stream().noneMatch(SchemasTest::isValue));
        object = valued.get(random.nextInt(valued.size()));
        List<String> simple = new ArrayList<>(object.keySet());
        JsonObject of = object;
        simple.removeIf(k -> !isValue(of.get(k)));
        key = simple.get(random.nextInt(simple.size()));
        object.add(key, edited(object.get(key).getAsJsonPrimitive()));
      }
    }
    return "damage " + kind + " at " + key + " of " + object;
  }

  /** Every object with fixed keys; what is named by the procedure may be of any name. */
  private static void objects(JsonElement element, List<JsonObject> found) {
    if (element instanceof JsonArray array) {
      array.forEach(e -> objects(e, found));
    } else if (element instanceof JsonObject object) {
      found.add(object);
      object
          .asMap()
          .forEach(
              (key, value) -> {
                if (!Set.of("extras", "parts").contains(key)) {
                  objects(value, found);
                }
              });
    }
  }

  private static boolean isValue(JsonElement element) {
    return element.isJsonPrimitive();
  }

  /** A type that no key takes beside its own. */
  private static JsonElement otherType(JsonElement was) {
    return was instanceof JsonObject || was instanceof JsonArray
        ? new JsonPrimitive("text")
        : new JsonArray();
  }

  private static JsonPrimitive edited(JsonPrimitive was) {
    return was.isNumber()
        ? new JsonPrimitive(was.getAsBigDecimal().add(java.math.BigDecimal.ONE))
        : was.isBoolean()
            ? new JsonPrimitive(!was.getAsBoolean())
            : new JsonPrimitive(was.getAsString() + " ");
  }
}
