package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.LimitsReader;
import passband.render.HistoryPage;
import passband.testing.Examples;
import passband.testing.Records;
import passband.testing.Repository;

/** Verdicts on readings as people write them. The fixtures' benches are invented. */
class JudgeTest {
  private static final ItemList SIMPLE = fixture("simple.pband");
  private static final ItemList PHASED = fixture("phased.pband");

  /** 178.9 to 219.0 mA. */
  private static final ItemNames NAMES = ItemNames.of(SIMPLE);

  private static final String CURRENT = "output/bip/thin/5W/125ohm/current";
  private static final String NAME = NAMES.of(CURRENT);

  private static ItemList fixture(String name) {
    return Evidence.of(
            Examples.compile(
                    Repository.bytes(
                        Repository.ROOT.resolve("src/test/resources/judge").resolve(name)))
                .plan())
        .list();
  }

  private static Judgement of(Report report, String id) {
    return report.judgements().stream()
        .filter(j -> j.item().id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static Report judged(ItemList list, Records records) throws BadInput {
    return Judge.judge(list, records.readings(), null);
  }

  private static Report judged(ItemList list, String csv) throws BadInput {
    return Judge.judge(list, Readings.parse(csv.getBytes(StandardCharsets.UTF_8)), null);
  }

  // ---- one reading ----

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "178.9  | mA | pass     | ''",
        "219.0  | mA | pass     | ''",
        "200.00 | mA | pass     | ''",
        "178.8  | mA | fail     | below 178.9",
        "219.1  | mA | fail     | above 219.0",
        "219.00000000000000000001 | mA | fail | above 219.0",
        "200    | mA | unclear  | too few decimals",
        "0.2000 | A  | pass     | ''",
        "0.200  | A  | unclear  | too few decimals",
        "0.3000 | A  | fail     | above 219.0",
        "200.0000 | A  | fail   | above 219.0",
        "200000 | uA | pass     | ''",
        "200.0  | W  | unclear  | given in W, which cannot be converted to mA",
        "200.0  | '' | unclear  | no unit",
        "abc    | mA | unclear  | 'abc' is not a number",
        "1e2    | mA | unclear  | not a number",
        "-9999.0 | mA | unclear | negative, which is impossible",
        "-0.1   | mA | unclear  | zero the instrument",
        "\u2212200.0 | mA | unclear | negative, which is impossible",
        "''     | mA | not done | ''"
      })
  void oneReading(String reading, String unit, String verdict, String why) throws BadInput {
    Report report =
        judged(SIMPLE, Records.of(SIMPLE, false).with(CURRENT, Records.reading(reading, unit)));
    Judgement judgement = of(report, CURRENT);
    assertEquals(verdict, judgement.verdict().word(), judgement.why());
    assertTrue(judgement.why().contains(why), judgement.why());
    assertEquals(
        verdict.equals("pass")
            ? Verdict.PASS
            : verdict.equals("fail") ? Verdict.FAIL : Verdict.INCOMPLETE,
        report.overall());
  }

  /** A report prints the item's unit after what was written, so it has to be in that unit. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "0.2000, A, 200.0",
        "200000, uA, 200.000",
        "200.0, mA, 200.0",
        "200.0, V, '200.0 V'",
        "200.0, furlong, '200.0 furlong'"
      })
  void whatWasWrittenIsPrintedInTheItemsUnit(String reading, String unit, String printed)
      throws BadInput {
    Report report =
        judged(SIMPLE, Records.of(SIMPLE, false).with(CURRENT, Records.reading(reading, unit)));
    assertEquals(List.of(printed), of(report, CURRENT).attempts());
  }

  @Test
  void aDecimalCommaIsUnclear() throws BadInput {
    Report report = judged(SIMPLE, Records.HEAD + CURRENT + ",\"200,0\",mA,,1,reading,\n");
    assertEquals(
        "write a decimal point: the comma or point in '200,0' may separate thousands",
        of(report, CURRENT).why());
  }

  /**
   * JCGM 100, 4.3.7 and 5.1.2, worked by hand: at 200.0 mA half-widths of 0.2 % + 0.1 mA = 0.5 mA,
   * half a step of 0.05 mA and half of the load's 0.5 % = 0.5 mA, k = 2. A reading on a limit
   * conforms with a probability of a half (JCGM 106, 7.3).
   */
  @Test
  void theUncertaintyOfAReading() throws BadInput {
    Judgement middle =
        of(
            judged(SIMPLE, Records.of(SIMPLE, false).with(CURRENT, Records.reading("200.0", "mA"))),
            CURRENT);
    assertEquals(2 * Math.sqrt((0.25 + 0.0025 + 0.25) / 3), middle.uncertainty(), 1e-9);
    assertEquals(1, middle.conformity(), 1e-9);
    Judgement edge =
        of(
            judged(SIMPLE, Records.of(SIMPLE, false).with(CURRENT, Records.reading("219.0", "mA"))),
            CURRENT);
    assertEquals(0.5, edge.conformity(), 1e-9);
  }

  private static Judgement guarded(String value) throws BadInput {
    Item.Head head = new Item.Head("t/x", "X", null, "1. Test", List.of());
    Item.Where where = new Item.Where("t", null, null, null, null, null, null, java.util.Map.of());
    Item.Limits limits =
        new Item.Limits(
            null,
            new java.math.BigDecimal(100),
            new java.math.BigDecimal(200),
            new java.math.BigDecimal(102),
            new java.math.BigDecimal(198),
            new java.math.BigDecimal(2),
            null,
            "rule");
    Item.Scale scale = new Item.Scale("voltage", "V", java.math.BigDecimal.ONE, null, false);
    ItemList list =
        new ItemList(
            SIMPLE.source(),
            new ItemList.Decision(
                "guarded", new java.math.BigDecimal(2), null, new java.math.BigDecimal(2)),
            List.of(),
            List.of(new Item.Reading(head, where, scale, limits, null, null)));
    return judged(list, "point,reading,unit\nt/x," + value + ",V\n").judgements().get(0);
  }

  /** Without a budget the standard uncertainty is U over k. */
  @ParameterizedTest
  @CsvSource({
    "102, pass, ''",
    "198, pass, ''",
    "101, fail, 'below 102; inside the tolerance, outside the guard band'",
    "100, fail, 'below 102; inside the tolerance, outside the guard band'",
    "99, fail, below 102",
    "199, fail, 'above 198; inside the tolerance, outside the guard band'",
    "200, fail, 'above 198; inside the tolerance, outside the guard band'",
    "201, fail, above 198"
  })
  void aReadingInTheGuardBandIsNamed(String value, String verdict, String why) throws BadInput {
    Judgement judgement = guarded(value);
    assertEquals(verdict, judgement.verdict().word());
    assertEquals(why, judgement.why());
    assertEquals(2, judgement.uncertainty(), 1e-12);
  }

  // ---- attempts ----

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "100.0,mA,,1,reading | 200.0,mA,,2,reading | pass | attempt 2, the first was 100.0",
        "200.0,mA,,2,reading | 100.0,mA,,1,reading | pass | attempt 2, the first was 100.0",
        "200.0,mA,,1,reading | 100.0,mA,,2,reading | fail | below 178.9; attempt 2",
        "200.0,mA,,2,reading | '' | unclear | an attempt before number 2 is missing",
        "200.0,mA,,1,reading | 200.0,mA,,3,reading | unclear | before number 3 is missing",
        "100.0,mA,,,reading | 200.0,mA,,,reading | unclear | without attempt numbers",
        "100.0,mA,,1,reading | 200.0,mA,,1,reading | unclear | attempt 1 is recorded twice",
        "200.0,mA,,0,reading | '' | unclear | '0' is not an attempt number",
        "200.0,mA,,x,reading | '' | unclear | 'x' is not an attempt number",
        "200.0,mA,,1,reading | ',,,1,not-done' | unclear | twice",
        "200.0,mA,,1,reading | ',,,2,not-done' | unclear | both a value and 'not done'",
        "200.0,mA,,1,tick | '' | unclear | recorded as a tick, but it is a reading",
        "200.0,mA,,, | '' | pass | ''"
      })
  void attemptsAreOrderedByTheirNumbers(String one, String two, String verdict, String why)
      throws BadInput {
    Report report = judged(SIMPLE, Records.of(SIMPLE, false).with(CURRENT, one, two));
    Judgement judgement = of(report, CURRENT);
    assertEquals(verdict, judgement.verdict().word(), judgement.why());
    assertTrue(judgement.why().contains(why), judgement.why());
  }

  // ---- choices, ticks, records ----

  @ParameterizedTest
  @CsvSource({
    "green, pass, ''",
    "red, fail, only 'green' passes",
    "dark, fail, only 'green' passes",
    "blue, unclear, not one of the outcomes",
    "'', not done, ''"
  })
  void onlyTheOutcomeThatPassesPasses(String chosen, String verdict, String why) throws BadInput {
    Report report =
        judged(SIMPLE, Records.of(SIMPLE, false).with("alarm/lamp", chosen + ",,,1,choice"));
    Judgement judgement = of(report, "alarm/lamp");
    assertEquals(verdict, judgement.verdict().word());
    assertTrue(judgement.why().contains(why), judgement.why());
  }

  @Test
  void aTickIsYes() throws BadInput {
    Report report = judged(SIMPLE, Records.of(SIMPLE, false).with("alarm/sounds", "x,,,1,tick"));
    assertEquals(Verdict.UNCLEAR, of(report, "alarm/sounds").verdict());
    assertEquals(Verdict.INCOMPLETE, report.overall());
  }

  @Test
  void theTechniciansOwnResultCounts() throws BadInput {
    Report report =
        judged(
            SIMPLE,
            Records.of(SIMPLE, false)
                .with("sheet/result", "a line failed: out of service,,,1,choice"));
    assertEquals(Verdict.FAIL, report.overall());
  }

  // ---- tables of readings ----

  @ParameterizedTest
  @CsvSource({"UTF-8, ','", "UTF-8, ;", "UTF-16LE, ;", "UTF-16BE, ','", "UTF-16LE, '\t'"})
  void spreadsheetsAreRead(String charset, String separator) throws BadInput {
    String csv = "\ufeff" + Records.of(SIMPLE, false).csv().replace(",", separator);
    Readings readings = Readings.parse(csv.getBytes(Charset.forName(charset)));
    assertEquals(Verdict.PASS, Judge.judge(SIMPLE, readings, null).overall());
  }

  @Test
  void whatIsNoTableIsRefused() {
    assertRefused("point,reading\nx,1\n", "there is no column 'unit'");
    assertRefused("point,reading,unit\n\"x,1,V\n", "this is not a CSV file: Unclosed");
    assertRefused("point,reading,unit,kind\nx,1,V,guess\n", "line 2: unknown kind 'guess'");
    assertRefused(
        "point,reading,unit,digest\na,1,V,11\nb,1,V,22\n", "the rows carry 2 different digests");
    assertRefused("point,reading,unit,digest\na,1,V,11\nb,1,V,\n", "others do not");
    assertEquals(
        "this is not UTF-8 text",
        assertThrows(BadInput.class, () -> Readings.parse(new byte[] {(byte) 0x80, 1}))
            .getMessage());
  }

  private static void assertRefused(String csv, String why) {
    String said = assertThrows(BadInput.class, () -> judged(SIMPLE, csv)).getMessage();
    assertTrue(said.contains(why), said);
  }

  @Test
  void anotherDigestOrPointIsRefused() {
    String csv = Records.of(SIMPLE, false).csv();
    assertRefused(
        csv.replace(SIMPLE.source().digest(), "0".repeat(64)), "another procedure or revision");
    assertRefused(
        csv + "no/such/point,1,V,,1,reading," + SIMPLE.source().digest() + "\n",
        "these points are not in the limits: no/such/point");
  }

  @Test
  void readingsWithoutADigestAreJudgedWithAWarning() throws BadInput {
    Report report = judged(SIMPLE, "point,reading,unit\n" + CURRENT + ",200.0,mA\n");
    assertEquals(Verdict.PASS, of(report, CURRENT).verdict());
    assertEquals(Verdict.INCOMPLETE, report.overall());
    assertEquals(
        List.of(
            "the limits are of a procedure that was not released when they were written: nobody had"
                + " approved them",
            "the readings file has no digest: nothing says that it belongs to these limits, and it"
                + " cannot pass"),
        texts(report.warnings()));
  }

  private static List<String> texts(List<Cause> causes) {
    return causes.stream().map(Cause::text).toList();
  }

  // ---- phases ----

  /** The row of another phase under this point's name would stand for a reading not taken. */
  @Test
  void aRowOfAnotherPhaseThanItsPointIsRefused() throws BadInput {
    String csv = "point,reading,unit,phase\n" + FOUND + ",400.0,mA,";
    assertEquals(Verdict.PASS, of(judged(PHASED, csv + "found\n"), FOUND).verdict());
    String said = assertThrows(BadInput.class, () -> judged(PHASED, csv + "left\n")).getMessage();
    assertEquals(
        "line 2: the phase is 'left', but the point is of 'found': 1. Output (found): Current, thin,"
            + " 20 W, 125 Ω",
        said);
  }

  private static final String FOUND = "output/bip/thin/20W/125ohm/found/current";
  private static final String LEFT = "output/bip/thin/20W/125ohm/left/current";

  private static String low() {
    return Records.reading("100.0", "mA");
  }

  @Test
  void whereNothingWasAdjustedTheFirstPhaseDecides() throws BadInput {
    Report good = judged(PHASED, Records.of(PHASED, false));
    assertEquals(Verdict.PASS, good.overall());
    assertEquals(List.of("found"), List.copyOf(good.phases().keySet()));
    Report bad = judged(PHASED, Records.of(PHASED, false).with(FOUND, low()));
    assertEquals(Verdict.FAIL, bad.overall());
    assertEquals(List.of(), bad.superseded());
  }

  @Test
  void afterAnAdjustmentTheLastPhaseDecidesAndTheFirstIsReported() throws BadInput {
    Report report = judged(PHASED, Records.of(PHASED, true).with(FOUND, low()));
    assertEquals(Verdict.PASS, report.overall());
    assertEquals(Verdict.FAIL, report.phases().get("found"));
    assertEquals(Verdict.PASS, report.phases().get("left"));
    assertEquals(List.of(FOUND), report.superseded().stream().map(j -> j.item().id()).toList());
    assertEquals(
        Verdict.FAIL, judged(PHASED, Records.of(PHASED, true).with(LEFT, low())).overall());
  }

  @Test
  void adjustedMeansReadAgain() throws BadInput {
    assertEquals(
        Verdict.INCOMPLETE, judged(PHASED, Records.of(PHASED, true).without(LEFT)).overall());
    Report failed = judged(PHASED, Records.of(PHASED, true).with(FOUND, low()).without(LEFT));
    assertEquals(Verdict.FAIL, failed.overall());
  }

  @Test
  void aFailureThatNoAdjustmentAffectsStays() throws BadInput {
    String leak =
        PHASED.items().stream()
            .map(Item::id)
            .filter(id -> id.startsWith("other/"))
            .filter(id -> id.endsWith("/current"))
            .findFirst()
            .orElseThrow();
    Report report = judged(PHASED, Records.of(PHASED, true).with(leak, low()));
    assertEquals(Verdict.FAIL, report.overall());
  }

  @Test
  void whetherItWasAdjustedHasToBeSaid() throws BadInput {
    Report report = judged(PHASED, Records.of(PHASED, false).without("tune/adjusted"));
    assertEquals(Verdict.INCOMPLETE, report.overall());
    assertEquals(Verdict.NOT_DONE, of(report, "tune/adjusted").verdict());
  }

  @Test
  void thePhaseMayStandInItsOwnColumn() throws BadInput {
    Report report =
        judged(
            PHASED,
            "point,reading,unit,phase\n" + FOUND.replace("found/", "") + ",400.0,mA,found\n");
    assertEquals(Verdict.PASS, of(report, FOUND).verdict());
  }

  // ---- derived values ----

  private static final String CREST = "crest/bip/thin/20W/125ohm/crest-factor";

  private static Records crest(String peak, String rms, String written) {
    String place = CREST.substring(0, CREST.lastIndexOf('/'));
    return Records.of(SIMPLE, false)
        .with(place + "/peak-voltage", peak.isEmpty() ? "" : Records.reading(peak, "V"))
        .with(place + "/voltage", rms.isEmpty() ? "" : Records.reading(rms, "V"))
        .with(CREST, written.isEmpty() ? "" : Records.reading(written, ""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "300 | 150 | ''  | pass     | ''",
        "330 | 150 | ''  | pass     | ''",
        "331 | 150 | ''  | fail     | above 2.2",
        "300 | 150 | 2.0 | pass     | ''",
        "300 | 150 | 2.1 | pass     | ''",
        "300 | 150 | 2.5 | unclear  | but calculated as 2.0",
        "675 | 150 | 2.0 | fail     | above 2.2",
        "300 | ''  | ''  | not done | ''",
        "300 | ''  | 2.0 | unclear  | has no reading",
        "300 | -1  | ''  | unclear  | voltage: negative, which is impossible",
        "300 | 0   | ''  | unclear  | division by zero"
      })
  void aDerivedValueIsCalculatedNeverTyped(
      String peak, String rms, String written, String verdict, String why) throws BadInput {
    Judgement judgement = of(judged(SIMPLE, crest(peak, rms, written)), CREST);
    assertEquals(verdict, judgement.verdict().word(), judgement.why());
    assertTrue(judgement.why().contains(why), judgement.why());
  }

  /**
   * Two readings exchanged do not pass, whatever is calculated from them and however it is called.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "crest-factor | peak-voltage / voltage                  | at most 2.2",
        "ratio        | peak-voltage / voltage                  | at most 2.2",
        "ratio        | 1 / (voltage / peak-voltage)            | at most 2.2",
        "square       | (peak-voltage / voltage)^2              | at most 5",
        "form         | voltage / peak-voltage                  | at least 0.4",
        "half         | peak-voltage / (2 * voltage)            | at most 1.1",
        "greatest     | max(peak-voltage, voltage) / voltage    | at most 2.2",
        "root         | sqrt(peak-voltage / voltage)            | at most 2.2"
      })
  void aPeakBelowItsRmsValueIsUnclear(String name, String formula, String limits) throws BadInput {
    String source =
        Repository.text(Repository.ROOT.resolve("src/test/resources/judge/simple.pband"))
            .replace("accept crest-factor from 1.8 to 2.2", "accept " + name + " " + limits)
            .replace("derive crest-factor", "derive " + name)
            .replace("= peak-voltage / voltage,", "= " + formula + ",");
    ItemList list =
        Evidence.of(Examples.compile(source.getBytes(StandardCharsets.UTF_8)).plan()).list();
    String id = CREST.replace("crest-factor", name);
    for (String peak : List.of("150", "300", "149")) {
      String csv = crest(peak, "150", "").csv();
      Report report = judged(list, csv.replace(SIMPLE.source().digest(), list.source().digest()));
      Judgement judgement = of(report, id);
      boolean below = peak.equals("149");
      assertEquals(below ? Verdict.UNCLEAR : Verdict.PASS, judgement.verdict(), judgement.why());
      assertEquals(below, judgement.why().contains("peak-voltage is below voltage"));
    }
  }

  // ---- other formats ----

  @Test
  void theFormatBeforeIsReadAndNeverPasses() throws BadInput {
    String text =
        Repository.text(Repository.ROOT.resolve("src/test/resources/judge/limits-1.json"));
    ItemList list = LimitsReader.read(text);
    Report report = judged(list, Records.of(list, false));
    report.judgements().forEach(j -> assertEquals(Verdict.PASS, j.verdict(), j.toString()));
    assertEquals(Verdict.INCOMPLETE, report.overall());
    assertTrue(report.warnings().get(0).text().contains("format 1"), report.warnings().toString());
  }

  // ---- history ----

  private static History.Dated dated(ItemList list, int year, String reading, String serial)
      throws BadInput {
    Records records =
        Records.of(list, false)
            .with(CURRENT, Records.reading(reading, "mA"))
            .with("sheet/generator-serial", serial + ",,,1,record");
    return new History.Dated(LocalDate.of(year, 3, 1), Judge.judge(list, records.readings(), null));
  }

  private static History.Drift drift(History history) {
    return history.drifts().stream()
        .filter(d -> d.limit().id().equals(CURRENT))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aTrendThatWillCrossIsWarnedOf() throws BadInput {
    List<History.Dated> reports = new ArrayList<>();
    String[] readings = {"200.0", "206.0", "212.0"};
    for (int i = 0; i < 3; i++) {
      reports.add(dated(SIMPLE, 2024 + i, readings[i], "S 1"));
    }
    History.Drift year = drift(History.of(reports, 365));
    assertEquals(6, year.perYear(), 0.02);
    assertEquals(218, year.expected(), 0.02);
    assertTrue(!year.crosses());
    History longer = History.of(reports, 2 * 365);
    assertTrue(drift(longer).crosses());
    assertEquals(
        List.of(
            NAME
                + " is projected to reach 224 ± 0.2 mA before the next test (accepted: 178.9 to"
                + " 219.0 mA)"),
        longer.warnings(NAMES));
  }

  @Test
  void aHistoryIsATable() throws BadInput {
    History two =
        History.of(
            List.of(dated(SIMPLE, 2026, "206.0", "S 1"), dated(SIMPLE, 2025, "200.0", "S 1")), 365);
    assertEquals(List.of(LocalDate.of(2025, 3, 1), LocalDate.of(2026, 3, 1)), two.dates());
    String generator = SIMPLE.source().device() + " S 1";
    assertTrue(two.text(NAMES).startsWith(generator + ", dates: [2025-03-01, "), two.text(NAMES));
    assertTrue(HistoryPage.of(SIMPLE, two).contains("<h1>Drift: " + generator + "</h1>"));
    assertTrue(
        two.text(NAMES).contains(NAME + ": 200.0 206.0 mA, +6.004 per year, next 212"),
        two.text(NAMES));
    History falling =
        History.of(
            List.of(dated(SIMPLE, 2025, "206.0", "S 1"), dated(SIMPLE, 2026, "200.0", "S 1")), 365);
    assertTrue(falling.text(NAMES).contains(NAME + ": 206.0 200.0 mA, -6.004 per year"));
    Records missing =
        Records.of(SIMPLE, false).without(CURRENT).with("sheet/generator-serial", "S 1,,,1,record");
    History one =
        History.of(
            List.of(
                dated(SIMPLE, 2025, "200.0", "S 1"),
                new History.Dated(LocalDate.of(2026, 3, 1), judged(SIMPLE, missing))),
            365);
    assertTrue(one.text(NAMES).contains(NAME + ": 200.0 - mA\n"), one.text(NAMES));
  }

  /** What failed was read all the same; what is unclear was not. */
  @ParameterizedTest
  @CsvSource({"200.0, true", "900.0, true", "900, false", "-1.0, false"})
  void aHistoryHasEveryReadingThatCanBeTold(String reading, boolean shown) throws BadInput {
    History history =
        History.of(
            List.of(dated(SIMPLE, 2025, reading, "S 1"), dated(SIMPLE, 2026, "200.0", "S 1")), 365);
    History.Drift drift = drift(history);
    assertEquals(shown, drift.readings().get(0) != null, history.text(NAMES));
    assertEquals(drift.limit().limits(), drift.limits());
  }

  /** 219.0 mA are accepted: a line that ends there does not cross, one that ends above does. */
  @ParameterizedTest
  @CsvSource({
    "200.0, 209.5, false",
    "200.0, 209.6, true",
    "200.0, 189.5, false",
    "200.0, 189.4, true"
  })
  void onlyALineThatEndsOutsideCrosses(String first, String second, boolean crosses)
      throws BadInput {
    History history =
        History.of(
            List.of(dated(SIMPLE, 2025, first, "S 1"), dated(SIMPLE, 2026, second, "S 1")), 365);
    assertEquals(crosses, drift(history).crosses(), history.text(NAMES));
    assertEquals(crosses, history.text(NAMES).contains("warning: " + NAME));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-05-01, readings.csv, 2026-05-01",
    "2026-05-01, unit-2025-01-31.csv, 2026-05-01",
    "yesterday, unit-2025-01-31.csv, 2025-01-31",
    "'', unit-2025-01-31.csv, 2025-01-31",
    "'', unit-2025-13-31.csv, ''",
    "'', unit.csv, ''"
  })
  void theDateIsRecordedOrInTheName(String record, String file, String date) throws BadInput {
    Readings readings =
        Readings.parse(
            ("point,reading,unit,kind\nsheet/date," + record + ",,record\n")
                .getBytes(StandardCharsets.UTF_8));
    assertEquals(date.isEmpty() ? null : LocalDate.parse(date), History.date(readings, file));
  }

  /** A section may ask for something of the same name: that is no record of the sheet. */
  @ParameterizedTest
  @CsvSource({
    "'sheet/date,A,,1;alarm/date,B,,1', A, A",
    "'alarm/date,B,,1', '', ''",
    "'sheet/date,A,,2;sheet/date,B,,1', A, 'B, then A'",
    "'sheet/date,A,,1;sheet/date,B,,1', '', 'A, then B'",
    "'sheet/date,A,,2', '', A",
    "'sheet/date,,,1', '', ''"
  })
  void aRecordOfTheSheetIsItsLastAttempt(String rows, String last, String all) throws BadInput {
    String csv = "point,reading,unit,attempt,kind\n" + rows.replace(";", ",record\n") + ",record\n";
    Readings readings = Readings.parse(csv.getBytes(StandardCharsets.UTF_8));
    assertEquals(last.isEmpty() ? null : last, readings.record("date"));
    assertEquals(all, String.join(", then ", readings.records().getOrDefault("date", List.of())));
  }

  @Test
  void aHistoryIsOfOneGenerator() throws BadInput {
    List<History.Dated> two =
        List.of(dated(SIMPLE, 2025, "200.0", "S 1"), dated(SIMPLE, 2026, "200.0", "S 2"));
    assertTrue(
        assertThrows(BadInput.class, () -> History.of(two, 365))
            .getMessage()
            .contains("several generators: S 1, S 2"));
    List<History.Dated> none =
        List.of(dated(SIMPLE, 2025, "200.0", "S 1"), dated(SIMPLE, 2026, "200.0", "\"\""));
    assertTrue(
        assertThrows(BadInput.class, () -> History.of(none, 365))
            .getMessage()
            .contains("do not give the generator's serial number"));
  }

  /** Two generators whose plates cannot be read are two all the same. */
  @ParameterizedTest
  @ValueSource(strings = {"unknown", "n/a", "?", "000", "A\u00001"})
  void whatSaysNoSerialNumberIsNone(String filler) throws BadInput {
    List<History.Dated> two =
        List.of(dated(SIMPLE, 2025, "200.0", filler), dated(SIMPLE, 2026, "200.0", filler));
    assertThrows(BadInput.class, () -> History.of(two, 365));
  }

  /** Makers count their serial numbers for themselves. */
  @Test
  void aHistoryIsOfOneDevice() throws BadInput {
    ItemList.Source own = SIMPLE.source();
    ItemList.Source other =
        new ItemList.Source(
            own.procedure(),
            own.title(),
            own.revision(),
            own.date(),
            own.digest(),
            "another",
            own.instruments(),
            own.language(),
            own.released());
    ItemList list = new ItemList(other, SIMPLE.decision(), SIMPLE.phases(), SIMPLE.items());
    List<History.Dated> two =
        List.of(dated(SIMPLE, 2025, "200.0", "S 1"), dated(list, 2026, "200.0", "S 1"));
    assertEquals(
        "these are limits of several devices: another, " + own.device(),
        assertThrows(BadInput.class, () -> History.of(two, 365)).getMessage());
  }

  /** A later revision goes on where a point means the same, and starts anew where it does not. */
  @Test
  void aHistoryGoesOnAcrossRevisions() throws BadInput {
    ItemList later = fixture("simple-later.pband");
    History history =
        History.of(
            List.of(dated(SIMPLE, 2025, "200.0", "S 1"), dated(later, 2026, "206.0", "S 1")), 365);
    assertEquals(2, drift(history).readings().stream().filter(r -> r != null).count());
    History.Drift changed =
        history.drifts().stream()
            .filter(d -> d.limit().id().equals("output/bip/thin/20W/125ohm/current"))
            .findFirst()
            .orElseThrow();
    assertEquals(1, changed.readings().stream().filter(r -> r != null).count());
  }

  // ---- cells ----

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+x",
        "-x",
        "@sum",
        "'",
        "''",
        "'=1",
        "'text",
        "\t=1",
        "\r",
        "plain",
        "",
        "-5",
        "+3.2e-4",
        "=HYPERLINK(\"x\")",
        "12",
        "5-",
        "Ω"
      })
  void everyTextIsReadBackAndNoneIsAFormula(String text) {
    String written = Cell.written(text);
    assertEquals(text, Cell.read(written));
    boolean number = text.matches("[+-]?[0-9.]+(e-?[0-9]+)?");
    assertTrue(number || written.isEmpty() || "=+-@\t\r".indexOf(written.charAt(0)) < 0, written);
    assertTrue(!number || written.equals(text));
  }
}
