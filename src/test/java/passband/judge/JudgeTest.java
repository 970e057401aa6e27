package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.plan.Plan;
import passband.render.JudgePage;
import passband.render.JudgeReport;
import passband.render.LimitsCsv;
import passband.render.LimitsJson;
import passband.testing.Sheets;

/** Readings of the tests' library, judged. */
class JudgeTest {
  private static final Plan YARROW = Sheets.YARROW;
  private static final Plan TEASEL = Sheets.TEASEL;
  private static final String HEAD = "point,reading,unit,phase,attempt,kind,digest\n";
  private static final String FIRST = "bipolar-output/bipolar/thin/5W/125ohm/current";

  private static LimitTable table(Plan plan) throws BadInput {
    return LimitTable.parse(LimitsJson.of(plan));
  }

  /** A reading in the middle of every limit, but for one that is made by hand. */
  private static String sound(LimitTable table, Function<PointLimit, String> other) {
    StringBuilder csv = new StringBuilder(HEAD);
    for (PointLimit limit : table.points()) {
      String line = other.apply(limit);
      csv.append(line == null ? line(limit, middle(limit), table) : line);
    }
    return csv.toString();
  }

  private static String line(PointLimit limit, String reading, LimitTable table) {
    return limit.id() + "," + reading + "," + limit.unit() + ",,1,reading," + table.digest() + "\n";
  }

  private static String middle(PointLimit limit) {
    BigDecimal low = limit.acceptLower() == null ? limit.acceptUpper() : limit.acceptLower();
    BigDecimal high = limit.acceptUpper() == null ? limit.acceptLower() : limit.acceptUpper();
    return low.add(high)
        .divide(BigDecimal.valueOf(2))
        .setScale(limit.decimals(), java.math.RoundingMode.FLOOR)
        .toPlainString();
  }

  private static Report judged(Plan plan, Function<PointLimit, String> other) throws BadInput {
    LimitTable table = table(plan);
    return Judge.judge(table, Readings.parse(sound(table, other)), null);
  }

  private static Judgement of(Report report, String id) {
    return report.judgements().stream()
        .filter(j -> j.limit().id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyReadingInsidePasses() throws BadInput {
    Report report = judged(TEASEL, limit -> null);
    assertEquals(Verdict.PASS, report.overall());
    assertEquals(33, report.judgements().size());
    assertEquals(List.of(), report.warnings());
    report.judgements().forEach(j -> assertEquals(Verdict.PASS, j.verdict(), j.limit().id()));
  }

  /** 179.0 to 219.0 mA, the limits included. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "179.0  | mA | pass     | ''",
        "219.0  | mA | pass     | ''",
        "200.00 | mA | pass     | ''",
        "178.9  | mA | fail     | below 179.0",
        "219.1  | mA | fail     | above 219.0",
        "219.00000000000000000001 | mA | fail | above 219.0",
        "200    | mA | unclear  | fewer decimals",
        "0.2000 | A  | unclear  | it is in A",
        "200.0  | W  | unclear  | it is in W",
        "200.0  | '' | unclear  | no unit",
        "abc    | mA | unclear  | no number",
        "1e2    | mA | unclear  | no number",
        "''     | mA | not done | ''"
      })
  void oneReading(String reading, String unit, String verdict, String why) throws BadInput {
    LimitTable table = table(TEASEL);
    Report report =
        judged(
            TEASEL,
            limit ->
                limit.id().equals(FIRST)
                    ? FIRST + "," + reading + "," + unit + ",,1,reading," + table.digest() + "\n"
                    : null);
    Judgement judgement = of(report, FIRST);
    assertEquals(verdict, judgement.verdict().word());
    assertTrue(judgement.why().contains(why), judgement.why());
    assertEquals(
        verdict.equals("pass")
            ? Verdict.PASS
            : verdict.equals("fail") ? Verdict.FAIL : Verdict.INCOMPLETE,
        report.overall());
  }

  @Test
  void aDecimalCommaIsUnclear() throws BadInput {
    Report report =
        judged(TEASEL, l -> l.id().equals(FIRST) ? FIRST + ",\"200,0\",mA,,1,reading,\n" : null);
    assertEquals("the decimal point is a point", of(report, FIRST).why());
  }

  @Test
  void aMissingReadingIsNeverAPass() throws BadInput {
    Report report = judged(TEASEL, limit -> limit.id().equals(FIRST) ? "" : null);
    assertEquals(Verdict.NOT_DONE, of(report, FIRST).verdict());
    assertEquals(Verdict.INCOMPLETE, report.overall());
    Report none = Judge.judge(table(TEASEL), Readings.parse(HEAD), null);
    assertEquals(Verdict.INCOMPLETE, none.overall());
  }

  @Test
  void retestsAreKept() throws BadInput {
    LimitTable table = table(TEASEL);
    Report report =
        judged(
            TEASEL,
            limit ->
                limit.id().equals(FIRST)
                    ? line(limit, "100.0", table) + line(limit, "200.0", table)
                    : null);
    Judgement judgement = of(report, FIRST);
    assertEquals(List.of("100.0", "200.0"), judgement.readings());
    assertEquals(Verdict.PASS, judgement.verdict());
    assertEquals("attempt 2, the first was 100.0", judgement.why());
  }

  @Test
  void anotherDigestOrPointIsRefused() throws BadInput {
    LimitTable table = table(TEASEL);
    String csv = sound(table, limit -> null);
    String other = csv.replace(table.digest(), "0".repeat(64));
    assertTrue(
        assertThrows(BadInput.class, () -> Judge.judge(table, Readings.parse(other), null))
            .getMessage()
            .contains("another procedure or revision"));
    assertThrows(
        BadInput.class,
        () ->
            Judge.judge(
                table, Readings.parse(csv + "no/such/point/at/all/x,1,V,,1,reading,\n"), null));
    assertThrows(BadInput.class, () -> Readings.parse("point,reading\nx,1\n"));
    assertThrows(BadInput.class, () -> LimitTable.parse("{\"format\":\"other\"}"));
    assertThrows(BadInput.class, () -> LimitTable.parse("{}["));
    assertThrows(BadInput.class, () -> LimitTable.parse("a,b\n1,2\n"));
  }

  @Test
  void readingsWithoutADigestAreJudgedWithAWarning() throws BadInput {
    Report report =
        Judge.judge(
            table(TEASEL), Readings.parse("point,reading,unit\n" + FIRST + ",200.0,mA\n"), null);
    assertEquals(Verdict.PASS, of(report, FIRST).verdict());
    assertTrue(report.warnings().get(0).contains("do not say"));
  }

  @Test
  void csvAndJsonLimitsGiveTheSameVerdicts() throws BadInput {
    LimitTable csv = LimitTable.parse(LimitsCsv.of(TEASEL));
    String readings = sound(csv, l -> l.id().equals(FIRST) ? line(l, "100.0", csv) : null);
    Report a = Judge.judge(csv, Readings.parse(readings), null);
    Report b = Judge.judge(table(TEASEL), Readings.parse(readings), null);
    assertEquals(
        b.judgements().stream().map(Judgement::verdict).toList(),
        a.judgements().stream().map(Judgement::verdict).toList());
    assertEquals(Verdict.FAIL, a.overall());
  }

  // ---- phases and derived quantities ----

  private static String yarrow(LimitTable table, Function<PointLimit, String> other) {
    String csv =
        sound(
            table,
            limit -> {
              String made = other.apply(limit);
              return made != null ? made : limit.derived() != null ? "" : null;
            });
    StringBuilder all = new StringBuilder(csv);
    for (PointLimit reading : table.readings()) {
      String value = reading.quantity().equals("voltage") ? "150" : "300";
      all.append(line(reading, value, table));
    }
    return all.toString();
  }

  private static boolean asLeft(PointLimit limit) {
    return limit.id().contains("/as-left/");
  }

  private static final String FOUND = "carve-output/hand/carve/90W/250ohm/as-found/current";

  @Test
  void asFoundAloneDecidesWhereNothingWasAdjusted() throws BadInput {
    LimitTable table = table(YARROW);
    Report report =
        Judge.judge(table, Readings.parse(yarrow(table, l -> asLeft(l) ? "" : null)), null);
    assertEquals(Verdict.PASS, report.phases().get("as-found"));
    assertEquals(Verdict.INCOMPLETE, report.phases().get("as-left"));
    assertEquals(Verdict.PASS, report.overall());
  }

  @Test
  void asLeftDecidesWhereItWasRead() throws BadInput {
    LimitTable table = table(YARROW);
    String csv = yarrow(table, l -> l.id().equals(FOUND) ? line(l, "500", table) : null);
    Report report = Judge.judge(table, Readings.parse(csv), null);
    assertEquals(Verdict.FAIL, report.phases().get("as-found"));
    assertEquals(Verdict.PASS, report.phases().get("as-left"));
    assertEquals(Verdict.PASS, report.overall());
    String half =
        yarrow(
            table,
            l ->
                l.id().equals(FOUND)
                    ? line(l, "500", table)
                    : l.id().equals(FOUND.replace("as-found", "as-left")) ? "" : null);
    assertEquals(Verdict.INCOMPLETE, Judge.judge(table, Readings.parse(half), null).overall());
  }

  @Test
  void thePhaseMayStandInItsOwnColumn() throws BadInput {
    Report report =
        Judge.judge(
            table(YARROW),
            Readings.parse(
                "point,reading,unit,phase\n"
                    + FOUND.replace("as-found/", "")
                    + ",600,mA,as-found\n"),
            null);
    assertEquals(Verdict.PASS, of(report, FOUND).verdict());
  }

  private static final String CREST = "carve-crest/hand/carve/90W/250ohm/as-found/crest-factor";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "300 | 150 | ''  | pass     | ''",
        "330 | 150 | ''  | pass     | ''",
        "340 | 150 | ''  | fail     | above 2.2",
        "300 | 150 | 2.0 | pass     | ''",
        "300 | 150 | 2.5 | unclear  | comes to 2",
        "300 | ''  | ''  | not done | ''",
        "300 | ''  | 2.0 | unclear  | not read",
        "300 | 0   | ''  | not done | ''"
      })
  void crestFactorIsWorkedOut(String peak, String rms, String written, String verdict, String why)
      throws BadInput {
    String place = CREST.substring(0, CREST.lastIndexOf('/'));
    String csv =
        "point,reading,unit\n"
            + place
            + "/peak-voltage,"
            + peak
            + ",V\n"
            + place
            + "/voltage,"
            + rms
            + ",V\n"
            + CREST
            + ","
            + written
            + ",\n";
    Judgement judgement = of(Judge.judge(table(YARROW), Readings.parse(csv), null), CREST);
    assertEquals(verdict, judgement.verdict().word(), judgement.why());
    assertTrue(judgement.why().contains(why), judgement.why());
  }

  /** Guarded, k = 2: a reading in the guard band fails, and is said to be inside the tolerance. */
  @Test
  void theGuardBandIsNamed() throws BadInput {
    LimitTable table = table(YARROW);
    PointLimit limit =
        table.points().stream().filter(l -> l.id().equals(FOUND)).findFirst().orElseThrow();
    String between = limit.acceptLower().subtract(limit.resolution()).toPlainString();
    Judgement judgement =
        of(
            Judge.judge(
                table,
                Readings.parse("point,reading,unit\n" + FOUND + "," + between + ",mA\n"),
                null),
            FOUND);
    assertEquals(Verdict.FAIL, judgement.verdict());
    assertTrue(judgement.why().contains("outside the guard band"), judgement.why());
    assertTrue(judgement.conformity() > 0.9 && judgement.conformity() < 0.99, judgement.toString());
  }

  /** An accepted reading's probability of not conforming is no more than the rule's risk. */
  @Test
  void guardedAcceptanceKeepsItsRisk() throws BadInput {
    LimitTable table = table(YARROW);
    for (PointLimit limit : table.points()) {
      if (limit.derived() == null && limit.acceptUpper() != null) {
        String csv =
            "point,reading,unit\n"
                + limit.id()
                + ","
                + limit.acceptUpper().setScale(limit.decimals())
                + ","
                + limit.unit()
                + "\n";
        Judgement judgement = of(Judge.judge(table, Readings.parse(csv), null), limit.id());
        assertEquals(Verdict.PASS, judgement.verdict());
        double exactRisk = 1 - judgement.conformity();
        assertTrue(
            exactRisk <= Budget.risk(2) * 1.35,
            limit.id()
                + " "
                + exactRisk
                + ": the printed tolerance is rounded inward by up to a step");
      }
    }
  }

  // ---- reports ----

  @Test
  void everyFormSaysTheSame() throws BadInput {
    LimitTable table = table(YARROW);
    String csv =
        yarrow(table, l -> l.id().equals(FOUND) ? line(l, "500", table) : null)
            + "generator-serial,\"A <7>\",,,1,record,\n"
            + "analyzer-serial-and-due,\"S 12, due 2026-01-31\",,,1,record,\n";
    Report report = Judge.judge(table, Readings.parse(csv), "2026-11-25");
    String text = JudgeReport.text(report);
    assertTrue(text.contains("FAIL  " + FOUND + ": 500 mA"), text);
    assertTrue(text.contains("warning: the analyzer's calibration was due on 2026-01-31"), text);
    assertTrue(text.contains("wrongly accepted with a probability of up to 2.3 %"), text);
    var json = JsonParser.parseString(JudgeReport.json(report)).getAsJsonObject();
    assertEquals("pass", json.get("overall").getAsString());
    assertEquals("fail", json.getAsJsonObject("phases").get("as-found").getAsString());
    assertEquals(table.points().size(), json.getAsJsonArray("points").size());
    String page = JudgePage.of(report);
    assertTrue(page.contains("A &lt;7&gt;"), page);
    assertTrue(page.contains("analyzer error: \u00b1(1 % of reading + 1 mA), rectangular"), page);
    assertTrue(!page.contains("not recorded"), page);
    String bare = JudgePage.of(Judge.judge(table, Readings.parse(HEAD), null));
    assertEquals(3, bare.split("not recorded", -1).length - 1);
    assertTrue(page.contains("decision rule") || page.contains("Decision rule"), page);
  }

  @Test
  void everyRuleSaysItsRisk() throws BadInput {
    assertTrue(JudgeReport.rule(table(TEASEL)).contains("up to 50 %"));
    LimitTable risk =
        LimitTable.parse(LimitsJson.of(YARROW).replace("\"guarded\"", "\"risk 1 %\""));
    assertTrue(JudgeReport.rule(risk).contains("up to 1 %"));
  }

  // ---- history ----

  @Test
  void aTrendThatWillCrossIsWarnedOf() throws BadInput {
    LimitTable table = table(TEASEL);
    List<History.Dated> dated = new ArrayList<>();
    String[] readings = {"200.0", "206.0", "212.0"};
    for (int i = 0; i < 3; i++) {
      String csv = "point,reading,unit\n" + FIRST + "," + readings[i] + ",mA\n";
      dated.add(
          new History.Dated(
              LocalDate.of(2024 + i, 3, 1), Judge.judge(table, Readings.parse(csv), null)));
    }
    History year = History.of(dated, 365);
    History.Drift drift = year.drifts().get(0);
    assertEquals(6, drift.perYear(), 0.02);
    assertEquals(218, drift.expected(), 0.02);
    assertTrue(!drift.crosses());
    History longer = History.of(dated, 2 * 365);
    assertTrue(longer.drifts().get(0).crosses());
    assertTrue(longer.text().contains("warning: " + FIRST), longer.text());
    assertEquals(
        LocalDate.of(2026, 1, 31), History.date(Readings.parse(HEAD), "readings-2026-01-31.csv"));
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
