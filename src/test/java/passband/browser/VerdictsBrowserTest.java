package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.evidence.BadInput;
import passband.evidence.Blank;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Cause;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.judge.Report;
import passband.judge.Verdict;
import passband.plan.Plan;
import passband.quantity.Units;
import passband.render.Checklist;
import passband.testing.Records;
import passband.testing.Sheets;
import passband.words.Language;

/**
 * The page gives the verdicts of the judge on whatever is written, for the same causes in the same
 * words, on every item and over all.
 */
class VerdictsBrowserTest {
  private static final int RECORDS = 250;

  /** What every sheet gives cause to say. */
  private static final Set<Cause.Code> SEEN =
      EnumSet.of(
          Cause.Code.BELOW_LIMIT,
          Cause.Code.ABOVE_LIMIT,
          Cause.Code.OTHER_OUTCOME,
          Cause.Code.EARLIER_ATTEMPT,
          Cause.Code.NOT_TICKED,
          Cause.Code.NO_OUTCOME,
          Cause.Code.ATTEMPT_MISSING,
          Cause.Code.DONE_AND_NOT_DONE,
          Cause.Code.DECIMAL_COMMA,
          Cause.Code.NOT_A_NUMBER,
          Cause.Code.NO_UNIT,
          Cause.Code.OTHER_UNIT,
          Cause.Code.NEGATIVE,
          Cause.Code.NOT_A_DATE,
          Cause.Code.BEFORE_REVISION,
          Cause.Code.FILLER,
          Cause.Code.CALIBRATION_UNCHECKED,
          Cause.Code.CALIBRATION_OVERDUE,
          Cause.Code.INSTRUMENT_OVERDUE);

  /** What is written in blanks, first what is good. */
  private static final Map<Blank, List<String>> TEXTS =
      Map.of(
          Blank.TEXT,
          List.of("text", "-"),
          Blank.DATE,
          List.of(
              "2026-11-27",
              "2026-02-01",
              "2026-02-29",
              "2024-02-29",
              "2026-04-31",
              "yesterday",
              "2.11.26"),
          Blank.DUE,
          List.of(
              "2099-01-31",
              "2026-11-26",
              "S 1, due 2026-11-27",
              "S 1, due 2026-11-26.",
              "2099-01-31 or 2098-01-31",
              "2099-13-01",
              "12099-01-01",
              "2024-02-29",
              "2023-02-29",
              "0000-02-29",
              "2100-02-29",
              "n/a"),
          Blank.NAME,
          List.of(
              "text",
              "-",
              "?",
              "N/A",
              "n. a.",
              "xX-x",
              "000",
              "0001",
              "unknown",
              "\u00d8",
              "S\u00071",
              "1\u20282"));

  private static final List<String> UNITS = List.copyOf(Units.recordedNames().keySet());

  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() {
    browser = new Browser(folder, true);
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  /** One attempt: a value with its unit, or not done. */
  private record Attempt(int number, String value, String unit, boolean undone) {
    Attempt(String value, String unit, boolean undone) {
      this(1, value, unit, undone);
    }

    Attempt numbered(int number) {
      return new Attempt(number, value, unit, undone);
    }
  }

  /** In the language of the judge: the page has its sentences in that of the sheet. */
  static Stream<Plan> plans() {
    return Stream.concat(
        Stream.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW, Sheets.WAVES, Sheets.SPREADS),
        Sheets.demo().stream().filter(plan -> plan.language() == Language.ENGLISH));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void pageAndJudgeAgree(Plan plan) throws IOException, BadInput {
    Path page = folder.resolve(plan.name().text() + ".html");
    Files.writeString(page, Checklist.of(plan));
    browser.open(page);
    ItemList list = Evidence.of(plan).list();
    Random random = new Random(plan.name().text().hashCode());
    Map<Verdict, Integer> seen = new EnumMap<>(Verdict.class);
    Set<Cause.Code> causes = EnumSet.noneOf(Cause.Code.class);
    for (int i = 0; i < RECORDS; i++) {
      Map<String, List<Attempt>> written = written(list, random, i % 3 == 0);
      Report report = Judge.judge(list, readings(list, written), null);
      JsonObject said = said(written);
      for (Judgement judgement : report.judgements()) {
        String id = judgement.item().id();
        assertEquals(
            expected(judgement),
            said.getAsJsonObject("items").get(id),
            () -> judgement + "\n" + written.get(id));
        judgement.causes().forEach(cause -> causes.add(cause.code()));
        seen.merge(judgement.verdict(), 1, Integer::sum);
      }
      assertEquals(report.overall().word(), said.get("overall").getAsString());
    }
    for (Verdict verdict : List.of(Verdict.PASS, Verdict.FAIL, Verdict.UNCLEAR, Verdict.NOT_DONE)) {
      assertTrue(seen.getOrDefault(verdict, 0) > RECORDS / 10, seen.toString());
    }
    assertTrue(causes.containsAll(SEEN), causes.toString());
    assertTrue(
        plan != Sheets.WAVES || causes.contains(Cause.Code.PEAK_BELOW_RMS), causes.toString());
    boolean derives =
        list.items().stream()
            .anyMatch(i -> i instanceof Item.Derived d && d.calculation().parts().size() > 1);
    assertTrue(!derives || causes.contains(Cause.Code.ATTEMPTS_DIFFER), causes.toString());
  }

  /**
   * Means of readings that scatter, about the end of what their own uncertainty leaves of the
   * limits.
   */
  @Test
  void pageAndJudgeAgreeOnRepeatedReadings() throws IOException, BadInput {
    Path page = folder.resolve("repeated.html");
    Files.writeString(page, Checklist.of(Sheets.SPREADS));
    browser.open(page);
    ItemList list = Evidence.of(Sheets.SPREADS).list();
    List<Item.Derived> means = new ArrayList<>();
    for (Item item : list.items()) {
      if (item instanceof Item.Derived derived && !derived.calculation().repeats().isEmpty()) {
        means.add(derived);
      }
    }
    Random random = new Random(29);
    Map<Verdict, Integer> seen = new EnumMap<>(Verdict.class);
    for (int i = 0; i < RECORDS; i++) {
      Map<String, List<Attempt>> written = written(list, random, true);
      int centre = 670 + random.nextInt(30);
      int apart = random.nextInt(25);
      for (Item.Derived mean : means) {
        for (String part : mean.calculation().parts().values()) {
          int value = centre - apart / 2 + random.nextInt(apart + 1);
          boolean current = part.endsWith("/current");
          String text = current ? "" + value : BigDecimal.valueOf(1800 + value, 1).toPlainString();
          written.put(part, List.of(new Attempt(text, current ? "mA" : "V", false)));
        }
      }
      Report report = Judge.judge(list, readings(list, written), null);
      JsonObject said = said(written).getAsJsonObject("items");
      for (Judgement judgement : report.judgements()) {
        if (judgement.item() instanceof Item.Derived derived && means.contains(derived)) {
          assertEquals(expected(judgement), said.get(derived.id()), judgement::toString);
          seen.merge(judgement.verdict(), 1, Integer::sum);
        }
      }
    }
    for (Verdict verdict : List.of(Verdict.PASS, Verdict.FAIL)) {
      assertTrue(seen.getOrDefault(verdict, 0) > RECORDS / 10, seen.toString());
    }
  }

  /** A verdict as the page gives it. */
  private static JsonObject expected(Judgement judgement) {
    JsonObject expected = new JsonObject();
    expected.addProperty("verdict", judgement.verdict().word());
    JsonArray causes = new JsonArray();
    for (Cause cause : judgement.causes()) {
      JsonObject one = new JsonObject();
      one.addProperty("code", cause.code().word());
      one.addProperty("item", cause.item());
      one.addProperty("part", cause.part());
      one.addProperty("number", cause.number() == null ? null : cause.number().toPlainString());
      one.addProperty("unit", cause.unit());
      one.addProperty("written", cause.written());
      one.addProperty("note", cause.note());
      one.addProperty("text", cause.text());
      causes.add(one);
    }
    expected.add("causes", causes);
    return expected;
  }

  private static JsonObject said(Map<String, List<Attempt>> written) {
    String script =
        "const data = Fields.data;"
            + "const written = new Map(Object.entries(JSON.parse(arguments[0])));"
            + "const verdicts = Verdicts.of(written);"
            + "return JSON.stringify({overall: Verdicts.overall(verdicts),"
            + "  items: Object.fromEntries([...verdicts].map(([id, {verdict, causes}]) =>"
            + "    [id, {verdict, causes: causes.map(c => ({...c, text: Causes.text(c)}))}]))})";
    return JsonParser.parseString((String) browser.run(script, new Gson().toJson(written)))
        .getAsJsonObject();
  }

  private static Readings readings(ItemList list, Map<String, List<Attempt>> written) {
    List<Readings.Row> rows = new ArrayList<>();
    for (Item item : list.items()) {
      for (Attempt attempt : written.getOrDefault(item.id(), List.of())) {
        String kind = attempt.undone ? "not-done" : kind(item);
        rows.add(
            new Readings.Row(
                item.id(),
                attempt.value,
                attempt.unit,
                "",
                "" + attempt.number,
                kind,
                rows.size()));
      }
    }
    return new Readings(list.source().digest(), rows);
  }

  private static String kind(Item item) {
    return item instanceof Item.Tick
        ? "tick"
        : item instanceof Item.Choice
            ? "choice"
            : item instanceof Item.Recorded ? "record" : "reading";
  }

  // ---- what is written ----

  /** Mostly as it should be, so that other things than the first fault are looked at. */
  private static Map<String, List<Attempt>> written(ItemList list, Random random, boolean good) {
    Map<String, List<Attempt>> written = new LinkedHashMap<>();
    boolean adjusted = random.nextBoolean();
    for (Item item : list.items()) {
      boolean skipped =
          item instanceof Item.Derived
              || !item.head().applies().isEmpty() && !adjusted && random.nextInt(20) > 0;
      if (skipped || !good && random.nextInt(10) == 0) {
        continue;
      }
      List<Attempt> attempts = new ArrayList<>();
      attempts.add(attempt(item, random, adjusted, good));
      if (!good && random.nextInt(8) == 0) {
        attempts.add(attempt(item, random, adjusted, false).numbered(2));
      }
      if (!good && random.nextInt(25) == 0) {
        attempts.set(0, new Attempt("", "", true));
      }
      if (!good && random.nextInt(25) == 0) {
        attempts.remove(0);
      }
      written.put(item.id(), attempts);
    }
    return written;
  }

  private static Attempt attempt(Item item, Random random, boolean adjusted, boolean good) {
    if (item instanceof Item.Reading reading) {
      return good ? in(reading, Records.middle(reading).toPlainString()) : value(reading, random);
    }
    if (item instanceof Item.Choice choice) {
      List<String> options = choice.options();
      boolean asked = choice.id().endsWith("/adjusted");
      String value =
          asked
              ? adjusted ? "yes" : "no"
              : good && choice.pass() != null
                  ? choice.pass()
                  : random.nextInt(20) == 0 ? "other" : options.get(random.nextInt(options.size()));
      return new Attempt(value, "", false);
    }
    if (item instanceof Item.Recorded recorded && recorded.unit() != null) {
      String value = good ? Records.value(recorded) : any(numbers(recorded), random);
      boolean own = good || random.nextInt(3) > 0;
      return new Attempt(value, own ? recorded.unit() : any(UNITS, random), false);
    }
    if (item instanceof Item.Recorded recorded) {
      List<String> some = TEXTS.get(Blank.of(recorded));
      return new Attempt(
          good || random.nextInt(6) > 0 ? some.get(0) : any(some, random), "", false);
    }
    boolean odd = item instanceof Item.Tick && !good && random.nextInt(15) == 0;
    return new Attempt(odd ? "x" : item instanceof Item.Tick ? "yes" : "text", "", false);
  }

  /** What is a number or none; on and beside the limits, with all decimals or fewer. */
  private static List<String> numbers(Item.Recorded recorded) {
    List<String> numbers = new ArrayList<>(List.of("80", "80.5", "-3", "banana", "8,0", "0"));
    Item.Accepts accepts = recorded.accepts();
    if (accepts != null) {
      for (BigDecimal end : new BigDecimal[] {accepts.lower(), accepts.upper()}) {
        if (end != null) {
          List.of(end, end.add(accepts.step()), end.subtract(accepts.step()))
              .forEach(value -> numbers.add(value.toPlainString()));
          numbers.add(end.toBigInteger().toString());
          numbers.add(end + "001");
        }
      }
    }
    return numbers;
  }

  private static String any(List<String> some, Random random) {
    return some.get(random.nextInt(some.size()));
  }

  private static Attempt in(Item.Reading reading, String value) {
    String unit = reading.scale().unit();
    return new Attempt(value, unit.equals("1") ? "" : unit, false);
  }

  /** On, beside, between and far from the limits; in other units, forms and numbers of decimals. */
  private static Attempt value(Item.Reading reading, Random random) {
    BigDecimal step = reading.scale().resolution();
    Item.Limits limits = reading.limits();
    BigDecimal middle = Records.middle(reading);
    List<BigDecimal> places = new ArrayList<>(List.of(middle, middle, middle));
    if (limits != null) {
      for (BigDecimal end :
          new BigDecimal[] {
            limits.lower(), limits.upper(), limits.acceptLower(), limits.acceptUpper()
          }) {
        if (end != null) {
          places.addAll(List.of(end, end.add(step), end.subtract(step)));
        }
      }
    }
    BigDecimal value = places.get(random.nextInt(places.size()));
    String plain =
        value.setScale(Math.max(value.scale(), reading.scale().decimals())).toPlainString();
    String unit = reading.scale().unit();
    return switch (random.nextInt(16)) {
      case 0 -> in(reading, "-" + plain.replace("-", ""));
      case 1 -> in(reading, plain.replace('.', ','));
      case 2 -> in(reading, value.toBigInteger().toString());
      case 3 ->
          in(reading, plain + "000000000000000000000001".substring(plain.contains(".") ? 0 : 24));
      case 4 -> new Attempt(plain, "", false);
      case 5 -> new Attempt(plain, unit.equals("mA") ? "A" : unit.equals("V") ? "mV" : "W", false);
      case 6 ->
          unit.equals("mA")
              ? new Attempt(value.movePointLeft(3).toPlainString(), "A", false)
              : in(reading, "text");
      case 7 -> new Attempt(plain, any(UNITS, random), false);
      case 8 -> new Attempt(plain, any(UNITS, random) + "/" + any(UNITS, random), false);
      case 9 -> in(reading, value.multiply(BigDecimal.TEN).toPlainString());
      default -> in(reading, plain);
    };
  }
}
