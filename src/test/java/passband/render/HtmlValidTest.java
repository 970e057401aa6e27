package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diff.PlanDiff;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.evidence.LimitsWriter;
import passband.judge.History;
import passband.judge.Judge;
import passband.judge.Readings;
import passband.judge.Report;
import passband.plan.Plan;
import passband.record.Fleet;
import passband.record.KeptFile;
import passband.record.RecordSummary;
import passband.record.VisitRecord;
import passband.testing.Records;
import passband.testing.Sheets;

/** The sheet by the Nu Html Checker. */
class HtmlValidTest {

  /**
   * The checker works out no hashes: it takes every inline style and script for blocked. That a
   * browser lets them in, and no other, is tested in a browser.
   */
  private static final String HASHES = "violates Content Security Policy (meta tag)";

  static List<Plan> demo() {
    return Sheets.demo();
  }

  private static String said(String html) throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.GNU);
    String all =
        validator.validate(new java.io.ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
    return all.lines().filter(l -> !l.contains(HASHES)).collect(Collectors.joining("\n"));
  }

  @ParameterizedTest
  @MethodSource("demo")
  void theSheetIsValid(Plan plan) throws Exception {
    assertEquals("", said(Checklist.of(plan)));
  }

  @Test
  void theCheckerFindsAFault() throws Exception {
    String html = Checklist.of(Sheets.YARROW);
    String bad = html.replaceFirst("<th scope=row>", "<th scope=\"rows\"><div></span>");
    assertTrue(!bad.equals(html) && said(bad).contains("error"), said(bad));
  }

  @Test
  void theReportsAreValid() throws Exception {
    Plan plan = Sheets.YARROW;
    Plan other = Sheets.TEASEL;
    assertEquals("", said(DiffPage.of(PlanDiff.between(List.of(plan), List.of(other)), null)));
    ItemList list = Evidence.of(plan).list();
    Readings readings = Records.of(list, false).readings();
    Report report = Judge.judge(list, readings, null);
    assertEquals("", said(JudgePage.of(report)));
    History history =
        History.of(
            List.of(
                new History.Dated(LocalDate.of(2025, 1, 31), report),
                new History.Dated(LocalDate.of(2026, 1, 31), report)),
            365);
    assertEquals("", said(HistoryPage.of(list, history)));
    KeptFile limits =
        KeptFile.of("limits.json", LimitsWriter.of(list).getBytes(StandardCharsets.UTF_8));
    KeptFile table =
        KeptFile.of("r.csv", Records.of(list, false).csv().getBytes(StandardCharsets.UTF_8));
    VisitRecord record = VisitRecord.of("1", null, Map.of(), limits, table);
    assertEquals("", said(RecordPage.of(record, "0".repeat(64), List.of("altered"))));
    byte[] json = RecordJson.of(record).getBytes(StandardCharsets.UTF_8);
    Fleet fleet =
        Fleet.of(
            List.of(RecordSummary.read("r.json", json)),
            List.of(new Fleet.LeftOut("x.json", "damaged")),
            365,
            LocalDate.of(2027, 1, 1));
    assertEquals("", said(FleetReport.html(fleet, LocalDate.of(2027, 1, 1))));
  }
}
