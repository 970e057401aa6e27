package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.check.Coverage;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.render.DetectPage;
import passband.render.DetectReport;
import passband.render.DetectWords;
import passband.testing.Repository;
import passband.testing.Snippet;
import passband.words.Language;

/** The whole report: what is worked out of a sheet beside single faults. */
class DetectionTest {
  private static final String TUSSOCK = "tussock-4/tussock-4-output.pband";
  private static final String SEDGE = "sedge-170/sedge-170-full.pband";
  private static final String FESCUE = "fescue-3/fescue-3-service.pband";
  private static final List<Instance.Change> NONE = List.of();

  /** At the smallest error the power is 95 %, a little nearer it is less, on both sides. */
  @Test
  void smallestErrorIsWhereTheCurveReaches95Percent() {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(TUSSOCK));
    Kernel kernel = new Kernel();
    List<Gain> gains = Gain.of(lines, kernel, false);
    assertEquals(9, gains.size());
    for (Gain gain : gains) {
      List<SheetLine> some = new ArrayList<>(lines.output());
      some.removeIf(
          line ->
              !Place.of(line).equals(gain.place()) || !gain.load().equals(line.point().loadText()));
      for (double end : new double[] {gain.low(), gain.high()}) {
        assertTrue(Gain.power(some, kernel, end, false) >= 0.95, gain.toString());
        assertTrue(Gain.power(some, kernel, end * 0.999, false) < 0.95, gain.toString());
      }
      assertTrue(gain.low() < gain.toleranceLow() && gain.high() > gain.toleranceHigh());
    }
  }

  /**
   * What the check says is what the report says: the rows whose smallest error lies beyond the
   * tolerance with the reading's own error. With k = 1 instead of 2 that is more of them.
   */
  @Test
  void bluntRowsAreThoseThatTheReportShows() {
    for (String name : List.of(TUSSOCK, SEDGE, "keen", "worn", "fine")) {
      assertEquals(List.of(), BluntRows.of(CatalogueTest.plan(name)), name);
    }
    Map<String, String> sources = new TreeMap<>(Repository.texts(Repository.PROCEDURES));
    sources.computeIfPresent(
        TUSSOCK,
        (path, text) -> text.replace("\n  leads ", "\n  decision simple coverage 1\n  leads "));
    Plan plan = Snippet.compile(sources, TUSSOCK, null).plans().get(0);
    List<BluntRows> blunt = BluntRows.of(plan);
    assertFalse(blunt.isEmpty());
    List<Gain> gains = Gain.of(SheetLines.of(plan), new Kernel(), false);
    for (BluntRows rows : blunt) {
      Gain gain =
          gains.stream()
              .filter(g -> g.place().equals(rows.place()) && g.load().equals(rows.load()))
              .findFirst()
              .orElseThrow();
      assertEquals(rows.above() ? gain.high() : gain.low(), rows.caught());
      assertTrue(Math.abs(rows.caught()) > Math.abs(rows.expected()), rows.toString());
      assertTrue(Math.abs(rows.expected()) > Math.abs(rows.tolerance()), rows.toString());
    }
  }

  /**
   * A row says nothing of how little another may let pass: beside a row with a wide tolerance and a
   * great uncertainty the rows are as blunt as before.
   */
  @Test
  void aBluntRowDoesNotExcuseAnother() {
    Map<String, String> sources = new TreeMap<>(Repository.texts(Repository.PROCEDURES));
    sources.computeIfPresent(
        TUSSOCK,
        (path, text) -> text.replace("\n  leads ", "\n  decision simple coverage 1\n  leads "));
    Plan plan = Snippet.compile(sources, TUSSOCK, null).plans().get(0);
    Map<String, List<SheetLine>> groups = Gain.read(SheetLines.of(plan));
    List<BluntRows> blunt = BluntRows.of(plan);
    assertFalse(blunt.isEmpty());
    for (BluntRows rows : blunt) {
      int side = rows.above() ? 1 : -1;
      List<SheetLine> some = groups.get((rows.place().text() + " " + rows.load()).strip());
      double least = Double.POSITIVE_INFINITY;
      for (SheetLine line : some) {
        var limit = Gain.limit(line, rows.above());
        if (limit != null) {
          double own = Math.abs(line.factor(limit.doubleValue()) - 1);
          least = Math.min(least, own + line.doubtShare(limit.doubleValue()));
        }
      }
      assertEquals(side * least, rows.expected(), 1e-12, rows.toString());
      assertTrue(Gain.power(some, new Kernel(), rows.expected(), false) < 0.95, rows.toString());
    }
  }

  /**
   * A quarter over the tolerance is sure alone; with the next lower load the current rises by the
   * root of the ratio, and with the instrument three times its error high nothing is left of it. By
   * hand: 0.75 of the power into 300 Ω instead of 350 Ω reads as 0.75 · 350/300 = 0.875 of it.
   */
  @Test
  void aFaultOfTheBenchHidesWhatIsCaughtAlone() {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(TUSSOCK));
    Kernel kernel = new Kernel();
    List<Masked> masked = Masked.of(lines, Instances.of(lines), kernel);
    assertFalse(masked.isEmpty());
    Map<String, List<SheetLine>> groups = Gain.read(lines);
    for (Masked one : masked) {
      List<SheetLine> some = groups.get((one.place().text() + " " + one.load()).strip());
      assertTrue(Gain.power(some, kernel, one.gain(), false) >= 0.95, one.toString());
      assertTrue(one.power().value() < 0.95, one.toString());
      assertEquals("bench", one.bench().who());
    }
    List<Masked> slit =
        masked.stream()
            .filter(m -> m.place().text().equals("slit mono-1") && m.gain() < 0)
            .toList();
    assertTrue(
        slit.stream().anyMatch(m -> m.bench().id().equals("B02") && m.power().never()),
        slit.toString());
    assertTrue(slit.stream().noneMatch(m -> m.bench().id().equals("B01")), slit.toString());
  }

  /**
   * What a fault of the instrument makes of a generator that is off is worked out anew from the
   * true value: at the edge of its error the error is known and not drawn again; out of calibration
   * the share of the reading goes with the reading, what is fixed does not.
   */
  @Test
  void anInstrumentThatIsOffIsNotOffTwice() {
    int compared = 0;
    for (String name : List.of(TUSSOCK, SEDGE, "keen", "worn")) {
      SheetLines lines = SheetLines.of(CatalogueTest.plan(name));
      for (Instance one : Instances.of(lines)) {
        String effect = one.fault().effect();
        for (Instance.Change change : effect.startsWith("error-") ? one.changes() : NONE) {
          for (double gain : new double[] {-0.25, 0, 0.25}) {
            SheetLine line = change.line();
            double truth = line.scaled(1 + gain);
            var error = line.limit().uncertainty().error();
            double half = error.relative().doubleValue() * truth + error.absolute().doubleValue();
            Observation seen = change.of().apply(truth);
            double shown = truth + one.size().value() * half;
            assertEquals(shown, seen.truth(), 1e-12, line.limit().id());
            boolean edge = effect.equals("error-edge");
            assertEquals(edge ? 0 : half, seen.own().half(), 1e-12, line.limit().id());
            compared++;
          }
        }
      }
    }
    assertTrue(compared > 100, compared + " readings");
  }

  /** At the edge of its error an instrument hides nothing that lies well beyond the tolerance. */
  @Test
  void anInstrumentWithinItsErrorHidesOnlyWhatIsWithinItsError() {
    for (String name : List.of(TUSSOCK, SEDGE, "keen")) {
      SheetLines lines = SheetLines.of(CatalogueTest.plan(name));
      for (Masked one : Masked.of(lines, Instances.of(lines), new Kernel())) {
        if (one.bench().effect().equals("error-edge")) {
          List<SheetLine> rows =
              Gain.read(lines).get((one.place().text() + " " + one.load()).strip());
          for (SheetLine line : rows) {
            Observation seen = line.at(line.scaled(1 + one.gain()));
            double shown = seen.truth() + one.size().value() * seen.own().half();
            Observation fixed =
                new Observation(shown, seen.window(), Observation.NO_ERROR, seen.load());
            assertFalse(fixed.neverPasses(), one.toString());
          }
        }
      }
    }
  }

  /** Outlets that are tested alike are caught alike. */
  @Test
  void likeOutletsAreCaughtAlike() {
    Detection detection = Detection.of(CatalogueTest.plan(TUSSOCK));
    List<Gain> slit =
        detection.gains().stream().filter(gain -> gain.place().mode().equals("slit")).toList();
    assertEquals(2, slit.size());
    assertEquals(slit.get(0).low(), slit.get(1).low());
    assertEquals(slit.get(0).curve(), slit.get(1).curve());
  }

  /** One error common to a range leaves less to be caught than errors of their own would. */
  @Test
  void falseFailsGrowWithTheShareOfTheTolerance() {
    Detection detection = Detection.of(CatalogueTest.plan(TUSSOCK));
    double before = 0;
    for (Detection.FalseFail fail : detection.falseFails()) {
      assertTrue(fail.low().value() >= before, fail.toString());
      before = fail.low().value();
    }
    assertTrue(detection.falseFails().get(0).low().never());
    assertTrue(before > 0.5 && before < 1, "at the tolerance: " + before);
  }

  /** Taking out what adds nothing leaves every fault caught as before. */
  @Test
  void idleRowsMayGoTogether() {
    SheetLines lines = SheetLines.of(CatalogueTest.plan("keen"));
    Kernel kernel = new Kernel();
    List<Instance> instances = Instances.of(lines);
    List<Detection.IdleRow> idle = Idle.of(lines, instances, kernel);
    assertTrue(!idle.isEmpty(), "the closely spaced settings of 'keen'");
    List<String> gone = idle.stream().map(Detection.IdleRow::point).toList();
    for (Instance instance : instances) {
      if (instance.fault().over().equals("row")
          || instance.fault().effect().matches("error-.*|intermittent")) {
        continue;
      }
      double all = instance.failing(kernel).value();
      double rest =
          instance.only(line -> !gone.contains(line.point().id())).failing(kernel).value();
      assertTrue(all - rest <= Idle.NOTHING, instance.fault().id() + " " + instance.where());
    }
  }

  /** What adds nothing can go: the check that wants every part of a mode's span stays content. */
  @ParameterizedTest
  @ValueSource(strings = {TUSSOCK, SEDGE, FESCUE, "keen"})
  void noCheckWantsAnIdleRow(String name) {
    Plan plan = CatalogueTest.plan(name);
    SheetLines lines = SheetLines.of(plan);
    List<String> gone = new ArrayList<>();
    for (Detection.IdleRow row : Idle.of(lines, Instances.of(lines), new Kernel())) {
      gone.add(withoutPhase(row.point(), plan));
    }
    List<Stage> stages = new ArrayList<>();
    for (Stage stage : plan.stages()) {
      if (stage instanceof Stage.Run run) {
        Stage.Course course = run.course();
        List<Point> points = new ArrayList<>(course.points());
        points.removeIf(point -> gone.contains(withoutPhase(point.id(), plan)));
        stages.add(
            run.with(new Stage.Course(course.output(), course.before(), points, course.after())));
      } else {
        stages.add(stage);
      }
    }
    Plan rest =
        new Plan(
            plan.name(),
            plan.title(),
            plan.revision(),
            plan.bench(),
            plan.decision(),
            plan.cautions(),
            plan.phases(),
            stages,
            plan.allowed(),
            plan.made(),
            plan.source());
    assertEquals(missing(plan), missing(rest), gone.toString());
  }

  private static String withoutPhase(String id, Plan plan) {
    int last = id.lastIndexOf('/');
    return plan.phases().contains(id.substring(last + 1)) ? id.substring(0, last) : id;
  }

  private static List<String> missing(Plan plan) {
    List<String> missing = new ArrayList<>();
    for (Coverage.Cell cell : Coverage.cells(plan)) {
      missing.add(cell.mode().name() + " " + cell.outlet().name() + cell.missing());
    }
    return missing;
  }

  @Test
  void aProposedRowCatchesWhatWasMissed() {
    Detection detection = Detection.of(CatalogueTest.plan(TUSSOCK));
    Detection.Finding highLoad =
        detection.findings().stream().filter(f -> f.fault().id().equals("G05")).findFirst().get();
    assertEquals(Outcome.NOT_READ, highLoad.outcome());
    assertNotNull(highLoad.proposal());
    assertTrue(highLoad.proposal().words().contains("into 80 Ω"), highLoad.proposal().words());
    detection.findings().stream()
        .filter(f -> f.outcome() == Outcome.CAUGHT)
        .forEach(f -> assertNull(f.proposal()));
  }

  /** A fault that several places let through needs a row at each of them. */
  @ParameterizedTest
  @ValueSource(strings = {TUSSOCK, SEDGE, "thin"})
  void everyProposedRowIsPrinted(String name) {
    Detection detection = Detection.of(CatalogueTest.plan(name));
    String text = DetectReport.text(detection);
    String page = DetectPage.of(List.of(detection));
    int rows = 0;
    for (Detection.Finding finding : detection.findings()) {
      if (finding.proposal() != null) {
        assertTrue(text.contains(finding.proposal().text()), finding.proposal().text());
        assertTrue(page.contains(finding.proposal().text()), finding.proposal().text());
        rows++;
      }
    }
    assertTrue(rows > 0, "no row is proposed");
  }

  /** Rows into one more load are no reason to say that less is caught. */
  @Test
  void moreRowsDoNotWidenWhatTheSummarySays() {
    String curve =
        """
        test curve "Curve" {
          outlet one
          setup  loaded
          accept power within 9 W of setting, read as current
          allow  load-off-rated because "The curve is taken above the rated load."
          allow  rule-looser-than-mode because "So is the manual's."
          table {
            mode | setting/W | load/ohm
            soft | 10        | 250, 300
          }
        }
        test output""";
    Plan more = CatalogueTest.changed("thin.pband", "test output", curve);
    assertEquals(3, Detection.of(more).gains().size());
    assertEquals(smallest(CatalogueTest.plan("thin")), smallest(more));
  }

  private static String smallest(Plan plan) {
    String said = new DetectWords(Language.ENGLISH).summary(Detection.of(plan));
    return said.substring(said.indexOf("smallest gain error"));
  }

  /** Phases: what an adjustment mends does not count twice. */
  @Test
  void onlyTheFirstPhaseCounts() {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(SEDGE));
    assertTrue(lines.all().size() > 50);
    assertTrue(lines.all().stream().allMatch(line -> !"as-left".equals(line.run().phase())));
    for (SheetLine line : lines.all()) {
      for (WorkedOut value : line.uses()) {
        assertFalse(value.limit().id().contains("as-left"), value.limit().id());
      }
    }
  }

  @Test
  void reportSaysWhatIsMissedFirst() {
    Detection detection = Detection.of(CatalogueTest.plan(TUSSOCK));
    String text = DetectReport.text(detection);
    assertTrue(text.startsWith("tussock-4-output, revision B: 17 of 43 faults missed"), text);
    assertTrue(text.indexOf("Missed or not read") < text.indexOf("Partly caught"));
    assertTrue(text.contains("P04  nominal value written instead of the reading: missed, sure"));
    assertTrue(text.contains("if the ranges share their error"));
    String page = DetectPage.of(List.of(detection));
    assertTrue(page.contains("<svg"));
    assertTrue(page.contains("Content-Security-Policy"));
    String thin = DetectReport.text(Detection.of(CatalogueTest.plan("thin")));
    assertTrue(thin.contains("no output is read of hard two"), thin);
  }

  /** Whatever is missed has a number of the list of advice, a mode of which nothing is read too. */
  @ParameterizedTest
  @ValueSource(strings = {TUSSOCK, SEDGE, "thin"})
  void whateverIsMissedHasAdvice(String name) {
    Detection detection = Detection.of(CatalogueTest.plan(name));
    String page = DetectPage.of(List.of(detection));
    int from = page.indexOf("<h2>Missed or not read");
    String missed = page.substring(from, page.indexOf("</table>", from));
    int advice = page.indexOf("<ol class=\"advice\">");
    String list = page.substring(advice, page.indexOf("</ol>", advice));
    int items = list.split("<li>", -1).length - 1;
    List<String> rows = Arrays.asList(missed.split("<tr><td>"));
    assertTrue(rows.size() > 1, missed);
    for (String row : rows.subList(1, rows.size())) {
      String numbers = row.replaceFirst("(?s).*<td>([^<]*)</td></tr>.*", "$1");
      for (String number : numbers.split(", ")) {
        assertTrue(number.matches("[1-9]\\d*") && Integer.parseInt(number) <= items, row);
      }
    }
    for (String place : detection.untested()) {
      assertTrue(missed.contains("output of " + place), place);
      assertTrue(list.contains("output of " + place), place);
    }
  }

  /**
   * A row more makes no entry look worse: what is out of tolerance somewhere counts whether a row
   * reads it there or not. Not for what stays at the least tested setting, which is another fault
   * then.
   */
  @ParameterizedTest
  @CsvSource({
    "'18 W, 68 W, 136 W', '18 W, 136 W'",
    "'18 W, 68 W, 136 W', '68 W, 136 W'",
    "'18 W, 46 W, 92 W', '92 W'",
    "'mist | 10, 25, 55', 'mist | 55'",
    "'clasp | 4, 26, 52', 'clasp | 52'"
  })
  void aRowMoreMakesNothingWorse(String rows, String fewer) {
    Map<String, Detection.Finding> with = findings(rows, rows);
    int inside = 0;
    for (Map.Entry<String, Detection.Finding> less : findings(rows, fewer).entrySet()) {
      Detection.Finding more = with.get(less.getKey());
      if (more != null) {
        boolean worse = more.outcome().compareTo(less.getValue().outcome()) < 0;
        assertFalse(worse, less.getKey() + " " + less.getValue().outcome() + more.outcome());
        inside += more.outcome() == Outcome.INSIDE ? 1 : 0;
      }
    }
    assertTrue(inside > 5, inside + " inside");
  }

  private static Map<String, Detection.Finding> findings(String rows, String now) {
    Map<String, String> sources = new TreeMap<>(Repository.texts(Repository.PROCEDURES));
    assertTrue(sources.get(TUSSOCK).contains(rows), rows);
    sources.computeIfPresent(TUSSOCK, (path, text) -> text.replace(rows, now));
    Map<String, Detection.Finding> findings = new TreeMap<>();
    Plan plan = Snippet.compile(sources, TUSSOCK, null).plans().get(0);
    for (Detection.Finding one : Detection.asItIs(plan).findings()) {
      boolean rowsOwn = one.where().contains("/") || one.fault().effect().equals("stuck-least");
      if (!rowsOwn && one.fault().who().equals("generator")) {
        findings.put(one.fault().id() + " " + one.size().text() + " " + one.where(), one);
      }
    }
    return findings;
  }
}
