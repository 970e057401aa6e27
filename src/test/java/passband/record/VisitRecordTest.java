package passband.record;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.ToNumberPolicy;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.LimitsWriter;
import passband.evidence.Seal;
import passband.judge.Cause;
import passband.judge.Verdict;
import passband.plan.Plan;
import passband.render.RecordJson;
import passband.render.RecordPage;
import passband.testing.Records;
import passband.testing.Sheets;

class VisitRecordTest {
  private static final ItemList LIST = Evidence.of(Sheets.YARROW).list();
  private static final KeptFile LIMITS =
      KeptFile.of("out/limits.json", LimitsWriter.of(LIST).getBytes(StandardCharsets.UTF_8));
  private static final Map<String, String> PARTICULARS =
      Map.of("number", "7", "laboratory", "Workshop, 1 Mill Lane", "issued", "2026-11-30");

  /** What makes a record, and is therefore believed. */
  private static final Set<String> GIVEN = Set.of("program", "judged_on", "particulars");

  private static final KeptFile RECORDED =
      KeptFile.of("unit.csv", Records.of(LIST, false).csv().getBytes(StandardCharsets.UTF_8));

  private static VisitRecord record(String csv) throws BadInput {
    KeptFile readings = KeptFile.of("unit.csv", csv.getBytes(StandardCharsets.UTF_8));
    return VisitRecord.of("1", "2026-11-30", PARTICULARS, LIMITS, readings);
  }

  private static String good() throws BadInput {
    return RecordJson.of(record(Records.of(LIST, false).csv()));
  }

  private static List<String> wrong(String json) throws BadInput {
    RecordReader read = RecordReader.read(json);
    List<String> wrong = new ArrayList<>(read.broken());
    if (read.record() != null) {
      wrong.addAll(Alterations.between(json, RecordJson.of(read.record())));
    }
    return wrong;
  }

  @Test
  void aRecordIsMadeAgainFromItsOwnPartsByteForByte() throws BadInput {
    String json = good();
    RecordReader read = RecordReader.read(json);
    assertEquals(List.of(), read.broken());
    assertEquals(json, RecordJson.of(read.record()));
    assertEquals(List.of(), wrong(json.replace("\n", "\r\n")));
  }

  /**
   * The sheet's own result is held against the lines: what was ticked is warned of where it
   * differs.
   */
  @Test
  void aSheetThatContradictsItsVerdictIsWarnedOf() throws BadInput {
    Item.Choice result =
        (Item.Choice)
            LIST.items().stream().filter(i -> i.id().equals(Item.RESULT)).findFirst().orElseThrow();
    assertEquals("", contradiction(Records.of(LIST, false)));
    Item missing = LIST.items().get(LIST.items().size() - 2);
    assertEquals(
        "the sheet says 'every line passed', but what is written on it comes to 'incomplete'",
        contradiction(Records.of(LIST, false).without(missing.id())));
    Item.Reading reading = null;
    for (Item item : LIST.items()) {
      if (item instanceof Item.Reading r && r.limits() != null && r.head().applies().isEmpty()) {
        reading = r;
      }
    }
    assertTrue(reading != null);
    String far = Records.reading("99999", reading.scale().unit());
    assertEquals(
        "the sheet says 'every line passed', but what is written on it comes to 'fail'",
        contradiction(Records.of(LIST, false).with(reading.id(), far)));
    for (int i = 1; i < 3; i++) {
      String said = ",,,,choice";
      String ticked = "\"" + result.options().get(i) + "\"" + said;
      assertEquals(
          "the sheet says '"
              + result.options().get(i)
              + "', but what is written on it comes to 'pass'",
          contradiction(Records.of(LIST, false).with(Item.RESULT, ticked)));
    }
    String agrees = "\"" + result.options().get(1) + "\",,,,choice";
    assertEquals(
        "",
        contradiction(Records.of(LIST, false).with(reading.id(), far).with(Item.RESULT, agrees)));
  }

  private static String contradiction(Records records) throws BadInput {
    return record(records.csv()).report().warnings().stream()
        .filter(w -> w.code() == Cause.Code.RESULT_CONTRADICTED)
        .map(Cause::text)
        .findFirst()
        .orElse("");
  }

  private static String resealed(String text) {
    return Seal.sealed(
        text.replaceFirst("\"seal\": \"[0-9a-f]{64}\"", "\"seal\": \"" + Seal.OPEN + "\""));
  }

  /**
   * Verdicts of an earlier format lack what later ones have; what they say still has to be right.
   */
  @Test
  void aRecordWithOlderVerdictsIsUnaltered() throws BadInput {
    String older =
        good()
            .replace("passband-verdicts/6", "passband-verdicts/4")
            .replaceAll("\n {8}\"(coverage_factor|degrees_of_freedom)\": [^\n]*,", "");
    older = resealed(older);
    assertEquals(List.of(), wrong(older));
    String same = resealed(older.replace("passband-verdicts/4", "passband-verdicts/6"));
    assertFalse(wrong(same).isEmpty());
    String later = resealed(older.replace("passband-verdicts/4", "passband-verdicts/7"));
    assertFalse(wrong(later).isEmpty());
    String passed = resealed(older.replaceFirst("\"verdict\": \"pass\"", "\"verdict\": \"fail\""));
    assertEquals(1, wrong(passed).size(), wrong(passed).toString());
    String added = resealed(older.replaceFirst("\"verdict\"", "\"extra\": 1, \"verdict\""));
    assertEquals(1, wrong(added).size(), wrong(added).toString());
  }

  /** Of verdicts of an earlier format no more may be missing than that format did not have. */
  @Test
  void anOlderFormatHidesNothingThatItHad() throws BadInput {
    Set<String> later = Set.of("statement", "coverage_factor", "degrees_of_freedom");
    JsonObject root = JsonParser.parseString(good()).getAsJsonObject();
    JsonObject result = root.getAsJsonObject("result");
    result.addProperty("format", "passband-verdicts/4");
    List<String> hidden = new ArrayList<>();
    for (JsonObject from :
        List.of(result, result.getAsJsonArray("items").get(0).getAsJsonObject())) {
      for (String key : List.copyOf(from.keySet())) {
        JsonElement was = from.remove(key);
        if (wrong(resealed(root)).isEmpty()) {
          hidden.add(key);
        }
        from.add(key, was);
      }
    }
    assertEquals(later, Set.copyOf(hidden));
    result.addProperty("format", "passband-verdicts/1");
    assertFalse(wrong(resealed(root)).isEmpty(), "no record holds verdicts of that format");
  }

  /** Whatever a person would read in the file and a program would not is found, too. */
  @Test
  void whatIsWrittenOtherwiseIsFoundUnderAGoodSeal() throws BadInput {
    String json = good();
    List<String> lines = json.lines().toList();
    List<String> missed = new ArrayList<>();
    for (int i = 1; i < lines.size(); i += i < 40 ? 1 : 97) {
      String line = lines.get(i);
      if (line.matches(" +\"[^\"]+\": [^\\[{]*,")) {
        List<String> twice = new ArrayList<>(lines);
        twice.add(i, line);
        List<String> remarked = new ArrayList<>(lines);
        remarked.set(i, "/* checked */" + line);
        List<String> wide = new ArrayList<>(lines);
        wide.set(i, line + " ");
        for (List<String> other : List.of(twice, remarked, wide)) {
          if (!isFound(resealed(String.join("\n", other) + "\n"))) {
            missed.add(line);
          }
        }
      }
    }
    assertEquals(List.of(), missed);
    assertTrue(isFound(resealed(json.replaceFirst("\"pass\"", "\"\\\\u0070ass\""))));
  }

  private static boolean isFound(String json) {
    try {
      return !wrong(json).isEmpty();
    } catch (BadInput refused) {
      return true;
    }
  }

  /** The first format does not say whether the procedure was released. */
  @Test
  void aRecordInTheFirstFormatIsUnaltered() throws BadInput {
    String released =
        "\n  \"released\": "
            + JsonParser.parseString(good()).getAsJsonObject().get("released")
            + ",";
    String repeats = "\n  \"failed_before_repeat\": [],";
    String first = good().replace(RecordReader.FORMAT, "passband-record/1").replace(repeats, "");
    String older = resealed(first.replace(released, ""));
    assertEquals(List.of(), wrong(older));
    assertEquals(List.of("released does not belong there"), wrong(resealed(first)));
    assertEquals(List.of("released is missing"), wrong(resealed(good().replace(released, ""))));
    RecordSummary old = RecordSummary.read("old.json", older.getBytes(StandardCharsets.UTF_8));
    RecordSummary now = RecordSummary.read("now.json", good().getBytes(StandardCharsets.UTF_8));
    assertEquals(now.values(), old.values());
    assertFalse(now.values().isEmpty());
  }

  /** Each value of the file in turn is another one, and the file is sealed anew. */
  @Test
  void whateverIsAlteredIsFoundUnderAGoodSeal() throws BadInput {
    JsonObject root = JsonParser.parseString(good()).getAsJsonObject();
    List<String> missed = new ArrayList<>();
    int[] tried = {0};
    alterEach("", root, root, missed, tried);
    assertEquals(List.of(), missed);
    assertTrue(tried[0] > 500, tried[0] + " values");
  }

  private static void alterEach(
      String path, JsonElement at, JsonObject root, List<String> missed, int[] tried) {
    if (at instanceof JsonObject object) {
      for (String key : List.copyOf(object.keySet())) {
        if (path.isEmpty() && (GIVEN.contains(key) || key.equals("seal"))
            || path.startsWith(".parts.") && key.equals("name")) {
          continue;
        }
        JsonElement was = object.get(key);
        alterEach(path + "." + key, was, root, missed, tried);
        if (!(was instanceof JsonObject) && !(was instanceof JsonArray)) {
          object.add(key, other(was));
          tried[0]++;
          note(path + "." + key, root, missed);
          object.add(key, was);
        }
      }
    } else if (at instanceof JsonArray array) {
      for (int i = 0; i < array.size(); i++) {
        JsonElement was = array.get(i);
        alterEach(path + "[" + i + "]", was, root, missed, tried);
        array.remove(i);
        tried[0]++;
        note(path + "[" + i + "] removed", root, missed);
        JsonArray rest = array.deepCopy();
        while (!array.isEmpty()) {
          array.remove(0);
        }
        for (int k = 0; k < rest.size() + 1; k++) {
          array.add(k < i ? rest.get(k) : k == i ? was : rest.get(k - 1));
        }
      }
    }
  }

  private static JsonElement other(JsonElement was) {
    if (was instanceof JsonNull) {
      return new JsonPrimitive("x");
    }
    JsonPrimitive one = (JsonPrimitive) was;
    if (one.isBoolean()) {
      return new JsonPrimitive(!one.getAsBoolean());
    }
    return one.isNumber()
        ? new JsonPrimitive(one.getAsBigDecimal().add(java.math.BigDecimal.ONE))
        : new JsonPrimitive(one.getAsString() + "x");
  }

  private static String resealed(JsonObject root) {
    JsonObject copy = root.deepCopy();
    copy.addProperty("seal", Seal.OPEN);
    return Seal.sealed(
        new GsonBuilder()
                .setPrettyPrinting()
                .serializeNulls()
                .disableHtmlEscaping()
                .setObjectToNumberStrategy(ToNumberPolicy.BIG_DECIMAL)
                .create()
                .toJson(copy)
            + "\n");
  }

  private static void note(String what, JsonObject root, List<String> missed) {
    try {
      if (wrong(resealed(root)).isEmpty()) {
        missed.add(what);
      }
    } catch (BadInput refused) {
      assertFalse(String.valueOf(refused.getMessage()).isEmpty(), what);
    }
  }

  /** A part that was replaced as a whole, with its digest: the verdicts are those of the other. */
  @Test
  void anotherPartComesWithOtherVerdicts() throws BadInput {
    Item.Reading limited =
        LIST.items().stream()
            .filter(item -> item instanceof Item.Reading r && r.limits() != null)
            .map(item -> (Item.Reading) item)
            .findFirst()
            .orElseThrow();
    String unit = limited.scale().unit();
    String csv = Records.of(LIST, false).with(limited.id(), Records.reading("999999", unit)).csv();
    VisitRecord bad = record(csv);
    assertEquals(Verdict.FAIL, bad.report().overall());
    JsonObject forged = JsonParser.parseString(RecordJson.of(bad)).getAsJsonObject();
    JsonObject good = JsonParser.parseString(good()).getAsJsonObject();
    forged.add("parts", good.get("parts"));
    List<String> wrong = wrong(forged.toString());
    assertTrue(wrong.get(0).contains("seal"), wrong.toString());
    assertTrue(wrong.stream().anyMatch(w -> w.startsWith("overall is \"fail\"")), wrong.toString());
  }

  @Test
  void whatFailsAsFoundStandsFirstAndStaysInTheReport() throws BadInput {
    Item.Reading found =
        LIST.items().stream()
            .filter(item -> item instanceof Item.Reading r && r.limits() != null)
            .filter(item -> LIST.phases().get(0).equals(item.head().phase()))
            .filter(item -> readAgain(item.id()))
            .map(item -> (Item.Reading) item)
            .findFirst()
            .orElseThrow();
    String value =
        Records.middle(found)
            .multiply(java.math.BigDecimal.TEN)
            .setScale(found.scale().decimals())
            .toPlainString();
    String far = Records.reading(value, found.scale().unit());
    VisitRecord adjusted = record(Records.of(LIST, true).with(found.id(), far).csv());
    assertEquals(Verdict.PASS, adjusted.report().overall());
    assertEquals(
        List.of(found.id()), adjusted.failedAsFound().stream().map(j -> j.item().id()).toList());
    assertEquals(List.of(), adjusted.failed());
    String page = RecordPage.of(adjusted, "ab", List.of());
    int first = page.indexOf("Failed as found");
    assertTrue(first > 0 && first < page.indexOf("<table>"), "as-found failures come first");
    assertTrue(page.contains(ItemNames.of(LIST).of(found) + ": " + value));
  }

  /** Whatever is read again until it passes, that it had failed stands at the top. */
  @Test
  void whatFailedBeforeItWasReadAgainStandsFirst() throws BadInput {
    int tried = 0;
    for (Item item : LIST.items()) {
      String bad = bad(item);
      if (bad != null && item.head().applies().isEmpty()) {
        Records records = Records.of(LIST, false);
        String good = row(records, item);
        assertEquals(List.of(), record(records.csv()).repeats());
        VisitRecord again = record(records.with(item.id(), bad, again(good, 2)).csv());
        assertEquals(List.of(item.id()), ids(again.repeats()), "read again");
        VisitRecord thrice =
            record(records.with(item.id(), good, again(bad, 2), again(good, 3)).csv());
        assertEquals(List.of(item.id()), ids(thrice.repeats()), "read three times");
        VisitRecord fails = record(records.with(item.id(), good, again(bad, 2)).csv());
        assertEquals(List.of(), fails.repeats(), "it fails for good");
        String page = RecordPage.of(again, "ab", List.of());
        int first = page.indexOf("Failed before it was read again");
        assertTrue(first > 0 && first < page.indexOf("<table>"), page);
        String said = page.substring(first, page.indexOf("<table>"));
        assertTrue(said.contains("no reason given"), said);
        assertFalse(said.contains(item.id()), "it is named by its words");
        assertEquals(List.of(), wrong(RecordJson.of(again)));
        tried++;
      }
    }
    assertTrue(tried > 10, tried + " items");
  }

  /** A row that fails; null for an item that nothing written makes fail. */
  private static @Nullable String bad(Item item) {
    if (item instanceof Item.Reading reading && reading.limits() != null) {
      boolean open = reading.limits().acceptUpper() == null;
      String value =
          java.math.BigDecimal.valueOf(open ? 0 : 99999)
              .setScale(reading.scale().decimals())
              .toPlainString();
      return Records.reading(value, reading.scale().unit());
    }
    return item instanceof Item.Choice choice
            && choice.pass() != null
            && !choice.id().equals(Item.RESULT)
        ? choice.options().stream().filter(o -> !o.equals(choice.pass())).findFirst().orElseThrow()
            + ",,,1,choice"
        : null;
  }

  private static String row(Records records, Item item) {
    String row =
        records
            .csv()
            .lines()
            .filter(line -> line.startsWith(item.id() + ","))
            .findFirst()
            .orElseThrow();
    return row.substring(item.id().length() + 1, row.lastIndexOf(','));
  }

  private static String again(String row, int attempt) {
    return row.replaceFirst(",1,(reading|choice)$", "," + attempt + ",$1");
  }

  private static List<String> ids(List<Repeat> repeats) {
    return repeats.stream().map(repeat -> repeat.last().item().id()).toList();
  }

  /** A calculated value is judged of the first readings as well. */
  @Test
  void aCalculatedValueThatFailedBeforeStandsFirst() throws BadInput {
    List<String> found = new ArrayList<>();
    for (Item item : LIST.items()) {
      if (item instanceof Item.Derived derived && derived.head().applies().isEmpty()) {
        Records records = Records.of(LIST, false);
        List<String> parts = List.copyOf(derived.calculation().parts().values());
        for (Item part : LIST.items()) {
          if (parts.contains(part.id())) {
            String good = row(records, part);
            String first = part.id().equals(parts.get(0)) ? good.replaceFirst("\\d", "9$0") : good;
            records.with(part.id(), first, again(good, 2));
          }
        }
        found.addAll(ids(record(records.csv()).repeats()));
      }
    }
    assertTrue(
        found.stream().anyMatch(id -> LIST.items().stream().anyMatch(i -> isDerived(i, id))),
        found.toString());
  }

  private static boolean isDerived(Item item, String id) {
    return item instanceof Item.Derived && item.id().equals(id);
  }

  /** What is recorded at a point is not the room's temperature: it stands in its own row only. */
  @Test
  void onlyWhatIsAskedForOnceStandsWithTheVisit() throws BadInput {
    int[] tried = new int[2];
    for (Plan plan : Sheets.demo()) {
      ItemList list = Evidence.of(plan).list();
      byte[] csv = Records.of(list, true).csv().getBytes(StandardCharsets.UTF_8);
      byte[] limits = LimitsWriter.of(list).getBytes(StandardCharsets.UTF_8);
      VisitRecord record =
          VisitRecord.of(
              "1", null, Map.of(), KeptFile.of("l.json", limits), KeptFile.of("r.csv", csv));
      String page = RecordPage.of(record, "ab", List.of());
      String head =
          page.substring(0, page.indexOf("<h2>" + plan.language().of("record.instruments")));
      for (Item item : list.items()) {
        if (item instanceof Item.Recorded blank && blank.unit() != null) {
          boolean once = blank.id().split("/").length == 2;
          String row = "<tr><th scope=\"row\">" + blank.head().title() + "</th>";
          assertEquals(once, head.contains(row), blank.id());
          tried[once ? 1 : 0]++;
        }
      }
    }
    assertTrue(tried[0] > 0 && tried[1] > 0, tried[0] + ", " + tried[1]);
  }

  /** Whether it is read in the other phase too. */
  private static boolean readAgain(String id) {
    String other = id.replace("/" + LIST.phases().get(0) + "/", "/" + LIST.phases().get(1) + "/");
    return LIST.items().stream().anyMatch(item -> item.id().equals(other));
  }

  /** ISO/IEC 17025:2017, 7.8.2, 7.8.4 and 7.8.6, from memory: what a report has to say. */
  @Test
  void theReportSaysWhatIsAskedOfAReport() throws BadInput {
    VisitRecord record = record(Records.of(LIST, false).csv());
    String page = RecordPage.of(record, "ab", List.of());
    List<String> asked =
        new ArrayList<>(
            List.of(
                "<h1>Output verification",
                "Workshop, 1 Mill Lane",
                "2026-11-30",
                LIST.source().title(),
                "Generator serial",
                "Calibration due",
                "Certificate",
                "coverage factor k",
                "decision rule",
                "Deviations, repeats and remarks",
                "relate only to",
                "reproduced except in full",
                "Authorized by",
                "End of the report"));
    asked.addAll(Particulars.all().values());
    List<String> absent =
        asked.stream()
            .filter(
                one ->
                    !page.toLowerCase(java.util.Locale.ROOT)
                        .contains(one.toLowerCase(java.util.Locale.ROOT)))
            .toList();
    assertEquals(List.of(), absent);
  }

  @Test
  void anAttemptKeepsItsReasonItsPersonAndItsRemark() throws BadInput {
    String csv =
        "point,reading,unit,attempt,kind,digest,by,reason,remark\n"
            + "sheet/done-by,Kim,,1,record,"
            + LIST.source().digest()
            + ",,,\n"
            + "sheet/done-by,Lee,,2,record,"
            + LIST.source().digest()
            + ",Lee,handed over,at noon\n";
    List<Deviation> deviations = record(csv).deviations();
    assertEquals(1, deviations.size());
    assertEquals(Deviation.Kind.REPEATED, deviations.get(0).kind());
    assertEquals("2", deviations.get(0).attempt());
    assertEquals("Lee", deviations.get(0).by());
    assertEquals("handed over; at noon", deviations.get(0).reason());
    assertTrue(RecordPage.of(record(csv), "", List.of()).contains("read again, attempt 2, by Lee"));
    String silent = csv.replace("handed over,at noon", ",");
    assertTrue(RecordPage.of(record(silent), "", List.of()).contains("no reason given"));
  }

  @Test
  void bytesOfAnyKindAreKept() throws BadInput {
    byte[] wide = ("\ufeff" + Records.of(LIST, false).csv()).getBytes(StandardCharsets.UTF_16LE);
    KeptFile part = KeptFile.of("C:\\work\\unit.csv", wide);
    assertEquals("unit.csv", part.name());
    assertEquals(KeptFile.Encoding.BASE64, part.encoding());
    assertArrayEquals(wide, part.bytes());
    VisitRecord record = VisitRecord.of("1", null, Map.of(), LIMITS, part);
    assertEquals(Verdict.PASS, record.report().overall());
    assertEquals(List.of(), wrong(RecordJson.of(record)));
  }

  @Test
  void whatIsNoRecordIsRefused() throws BadInput {
    String json = good();
    for (String damaged :
        List.of(
            "",
            "[]",
            "{}",
            json.replace(RecordReader.FORMAT, "passband-record/9"),
            json.replace("\"encoding\": \"utf-8\"", "\"encoding\": \"utf-9\""),
            json.substring(0, json.length() / 2))) {
      BadInput refused = assertThrows(BadInput.class, () -> RecordReader.read(damaged));
      assertFalse(String.valueOf(refused.getMessage()).isEmpty());
    }
    BadInput unknown =
        assertThrows(
            BadInput.class,
            () -> VisitRecord.of("1", null, Map.of("nummer", "7"), LIMITS, RECORDED));
    assertTrue(String.valueOf(unknown.getMessage()).startsWith("unknown particular 'nummer'"));
  }
}
