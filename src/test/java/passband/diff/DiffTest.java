package passband.diff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.plan.Plan;
import passband.render.DiffPage;
import passband.render.DiffReport;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Differences of meaning: what is never missed, what is never reported, and the laws. */
class DiffTest {
  private static final String TEASEL = "teasel/teasel-output.pband";
  private static final String YARROW = "yarrow/yarrow-service.pband";

  private static Map<String, String> library() {
    return Repository.texts(Repository.LIBRARY);
  }

  private static Plan plan(Map<String, String> files, String main) {
    return Snippet.compile(files, main, null).plan();
  }

  /** The library with one text of one file replaced, its revision changed. */
  private static Plan edited(String main, String file, String from, String to) {
    Map<String, String> files = library();
    String text = files.get(file);
    assertTrue(text.contains(from), from);
    files.put(
        file,
        text.replaceFirst(
            java.util.regex.Pattern.quote(from), java.util.regex.Matcher.quoteReplacement(to)));
    files.computeIfPresent(main, (k, v) -> v.replaceFirst("revision \"[AB]\"", "revision \"Z\""));
    return plan(files, main);
  }

  private static List<Change> changes(Plan was, Plan now) {
    List<PlanDiff> diffs = PlanDiff.between(List.of(was), List.of(now));
    return diffs.isEmpty() ? List.of() : diffs.get(0).changes();
  }

  private static List<Change> found(String main, String file, String from, String to) {
    List<Change> changes =
        new ArrayList<>(changes(plan(library(), main), edited(main, file, from, to)));
    changes.removeIf(c -> c.kind() == Kind.REVISION);
    return changes;
  }

  /** Each seeded alone; the first of what is found is the seed's own kind. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "teasel/teasel-output.pband | 20 W, 70 W, 140 W | 20 W, 140 W | point removed | slit-output/mono-1/slit/70W/400ohm",
        "teasel/teasel-output.pband | outlet mono-1, mono-2\\n    setup  monopolar-load\\n    accept power from output | outlet mono-1\\n    setup  monopolar-load\\n    accept power from output | point removed | slit-output/mono-2",
        "teasel/teasel-output.pband | accept peak-voltage at most 3.8 kV | accept peak-voltage at most 3.7 kV | limits tightened | peak-voltage",
        "teasel/teasel-output.pband | accept power from output, read as current | accept power within 12 % of setting, read as current | limits tightened | slit-output",
        "teasel/teasel-output.pband | 1350 to 1650 | at most 1650 | limit removed | tack-output/bipolar/tack/5",
        "teasel/teasel-output.pband | 410 to 500 | 400 to 500 | limits loosened | tack-output/bipolar/tack/1",
        "teasel/teasel-output.pband | 410 to 500 | 420 to 510 | limits shifted | tack-output/bipolar/tack/1",
        "teasel/teasel-output.pband | 410 to 500 | 420 to 490 | limits tightened | tack-output/bipolar/tack/1",
        "teasel/teasel-output.pband |   caution patient    \"Never with a patient connected. Keep people with pacemakers or other implants away.\"\\n | | caution removed | patient",
        "teasel/teasel-output.pband | Never with a patient connected. | Better without a patient. | caution changed | patient",
        "teasel/teasel-output.pband | connect red   from outlet.left   to analyzer.load-high\\n    connect black from outlet.right  to analyzer.load-low | connect red   from outlet.right   to analyzer.load-high\\n    connect black from outlet.left  to analyzer.load-low | connection changed | red test lead",
        "teasel/teasel-output.pband | link    jumper from analyzer.load-low         to analyzer.reference\\n | | connection changed | shorting jumper",
        "teasel/teasel-output.pband | on-time 3 s | on-time 4 s | duty or times changed | tack-output",
        "teasel/teasel-output.pband | 5, 30, 60 | 5, 30, 50, 60 | point added | thick/50W",
        "teasel/teasel.pband | Leave the service page, then switch the generator off and on again. | Leave the service page. | state changed | leave",
        "teasel/teasel.pband | activate by coag-switch | activate by cut-switch | activation changed | flare",
        "teasel/teasel.pband | duty     10 s on, 30 s off\\n    activate by coag-switch | duty     10 s on, 40 s off\\n    activate by coag-switch | duty or times changed | flare",
        "leads.pband | lead red    \"red test lead\",          rated 6 kV | lead red    \"red test lead\",          rated 5 kV | lead changed | red",
        "analyzers/shale.pband | error      1.5 % of reading + 2 V | error      1.6 % of reading + 2 V | analyzer changed | voltage, range 1",
        "analyzers/shale.pband | error      3 % of reading + 20 V | error      4 % of reading + 20 V | analyzer changed | peak-voltage",
        "analyzers/shale.pband | resolution 10 V | resolution 20 V | analyzer changed | peak-voltage",
        "analyzers/shale.pband | 400 W for 15 s | 400 W for 20 s | analyzer changed | power",
        "analyzers/shale.pband | range 0.4 A to 3 A | range 0.4 A to 2.5 A | analyzer changed | current, range 2",
        "analyzers/shale.pband | Press RUN again; check that the RF lamp is out. | Press RUN again. | stop step changed | stop",
        "analyzers/shale.pband | Turn the LOAD dial to {load}. | Set {load}. | analyzer changed | set-load"
      })
  void neverMissed(String file, String from, String to, String kind, String subject) {
    List<Change> found =
        found(TEASEL, file, from.replace("\\n", "\n"), to == null ? "" : to.replace("\\n", "\n"));
    assertFalse(found.isEmpty());
    assertTrue(
        found.stream().anyMatch(c -> c.kind().word().equals(kind) && c.subject().contains(subject)),
        DiffReport.text(
            PlanDiff.between(
                List.of(plan(library(), TEASEL)),
                List.of(
                    edited(
                        TEASEL,
                        file,
                        from.replace("\\n", "\n"),
                        to == null ? "" : to.replace("\\n", "\n")))),
            true));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "decision guarded | decision simple | decision looser",
        "decision guarded | decision risk 10 % | decision looser",
        "decision guarded | decision risk 1 % | decision changed",
        "decision guarded | decision guarded coverage 1.5 | decision looser",
        "allow  load-off-rated because | allow  load-off-rated because \"Other.\" # | warning allowed",
        "'test mains-leakage' | 'test mains-leak' | point removed"
      })
  void looserDecisionsAndAllows(String from, String to, String kind) {
    Map<String, String> files = library();
    String text = files.get(YARROW).replace("revision \"A\"", "revision \"Z\"");
    files.put(YARROW, text.replace(from.replace("'", ""), to.replace("'", "")));
    Plan now = Snippet.compile(files, YARROW, null).plan();
    List<Change> changes = changes(plan(library(), YARROW), now);
    assertTrue(changes.stream().anyMatch(c -> c.kind().word().equals(kind)), changes.toString());
  }

  @Test
  void aNewAllowIsSeen() {
    List<Change> found =
        found(
            YARROW,
            YARROW,
            "allow  load-off-rated because \"The manual's load curve is taken on both sides of the rated load.\"",
            "");
    assertEquals(Kind.ALLOW_REMOVED, found.get(0).kind());
  }

  @Test
  void anOrderThatMovesAcrossAStateIsSeen() {
    Map<String, String> files = library();
    files.computeIfPresent(
        TEASEL, (name, was) -> was.replace("decision simple", "decision simple\n  order by test"));
    Plan before = plan(files, TEASEL);
    String text = files.get(TEASEL).replace("revision \"B\"", "revision \"Z\"");
    int tack = text.indexOf("  test tack-output");
    int slit = text.indexOf("  test slit-output");
    int flare = text.indexOf("  test flare-output");
    files.put(
        TEASEL,
        text.substring(0, tack)
            + text.substring(slit, flare)
            + text.substring(tack, slit)
            + text.substring(flare));
    List<Change> changes = changes(before, plan(files, TEASEL));
    assertTrue(changes.stream().anyMatch(c -> c.kind() == Kind.ORDER_ACROSS), changes.toString());
  }

  @Test
  void theSameRevisionWithAnotherMeaningComesFirst() {
    Map<String, String> files = library();
    files.computeIfPresent(TEASEL, (k, v) -> v.replace("410 to 500", "420 to 490"));
    Change first = changes(plan(library(), TEASEL), plan(files, TEASEL)).get(0);
    assertEquals(Kind.SAME_REVISION, first.kind());
  }

  @Test
  void aRenamedTestIsPaired() {
    Map<String, String> files = library();
    files.computeIfPresent(
        TEASEL,
        (k, v) ->
            v.replace("revision \"B\"", "revision \"Z\"")
                .replace(
                    "test tack-output \"Tack output\"",
                    "test tack \"Tack output\" renamed from tack-output"));
    List<Change> changes = new ArrayList<>(changes(plan(library(), TEASEL), plan(files, TEASEL)));
    changes.removeIf(c -> c.kind() == Kind.REVISION);
    assertTrue(
        changes.stream()
            .noneMatch(c -> c.kind() == Kind.POINT_REMOVED || c.kind() == Kind.POINT_ADDED),
        changes.toString());
  }

  // ---- never reported ----

  @Test
  void layoutCommentsUnitsAndFilesAreNoChange() {
    Plan was = plan(library(), TEASEL);
    Map<String, String> laid = library();
    laid.replaceAll(
        (name, text) ->
            name.endsWith(".pband")
                ? Formatter.format(
                        new SourceFile(name, text.replaceAll("(?m)^ +", "")), new Diagnostics())
                    + "# the end\n"
                : text);
    assertEquals(List.of(), PlanDiff.between(List.of(was), List.of(plan(laid, TEASEL))));
    Map<String, String> units = library();
    units.computeIfPresent(
        "teasel/teasel.pband",
        (k, v) ->
            v.replace("peak-voltage at most 3800 V", "peak-voltage at most 3.8 kV")
                .replace("125 ohm", "0.125 kohm"));
    units.computeIfPresent(
        TEASEL,
        (k, v) ->
            v.replace("at most 3.8 kV", "at most 3800 V")
                .replace("20 W, 70 W, 140 W", "0.02 kW, 70 W, 140 W"));
    assertEquals(List.of(), PlanDiff.between(List.of(was), List.of(plan(units, TEASEL))));
    Map<String, String> rows = library();
    rows.computeIfPresent(
        TEASEL,
        (k, v) ->
            v.replace(
                "slit  | 20 W, 70 W, 140 W | 400 ohm",
                "slit | 20 W | 400 ohm\n      slit | 70 W, 140 W | 400 ohm"));
    assertEquals(List.of(), PlanDiff.between(List.of(was), List.of(plan(rows, TEASEL))));
    Map<String, String> split = library();
    String all =
        split.get(TEASEL).replaceAll("(?m)^use .*$", "")
            + split.get("teasel/teasel.pband")
            + split.get("analyzers/shale.pband")
            + split.get("leads.pband");
    split.put(TEASEL, all);
    assertEquals(List.of(), PlanDiff.between(List.of(was), List.of(plan(split, TEASEL))));
  }

  // ---- laws ----

  /**
   * Every number and quoted word of the library changed by itself: what differs is never silent.
   */
  @Test
  void anotherDigestIsNeverSilentAndTheOtherWayIsTheMirror() {
    int tried = 0;
    for (String main : List.of(TEASEL, YARROW)) {
      Map<String, String> library = library();
      Plan was = plan(library, main);
      assertEquals(List.of(), PlanDiff.between(List.of(was), List.of(plan(library, main))));
      for (String file : library.keySet()) {
        java.util.regex.Matcher number =
            java.util.regex.Pattern.compile("(?<![-\\w.\"#])\\d+(?![-\\w.])|(?<=[a-z])\\.\"")
                .matcher(library.get(file));
        while (number.find()) {
          Map<String, String> changed = new TreeMap<>(library);
          String text = library.get(file);
          String other = number.group().endsWith("\"") ? "!\"" : number.group() + "0";
          changed.put(
              file, text.substring(0, number.start()) + other + text.substring(number.end()));
          Snippet snippet = Snippet.compile(changed, main, null);
          boolean sound =
              snippet.plans().size() == 1
                  && snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable());
          if (sound) {
            tried += mirrored(was, snippet.plans().get(0));
          }
        }
      }
    }
    assertTrue(tried > 60, tried + " changes");
  }

  private static int mirrored(Plan was, Plan now) {
    if (was.digest().equals(now.digest())) {
      return 0;
    }
    List<Change> there = changes(was, now);
    List<Change> back = changes(now, was);
    assertTrue(there.size() > 1, "more than the reused revision");
    List<String> forth =
        there.stream().map(c -> c.subject() + "\n" + c.was() + "\n" + c.now()).sorted().toList();
    List<String> mirror =
        back.stream().map(c -> c.subject() + "\n" + c.now() + "\n" + c.was()).sorted().toList();
    assertEquals(forth, mirror);
    for (Change change : there) {
      Change other =
          back.stream()
              .filter(
                  c ->
                      c.subject().equals(change.subject())
                          && String.valueOf(c.was()).equals(String.valueOf(change.now())))
              .findFirst()
              .orElseThrow();
      if (change.kind() == Kind.LOOSENED) {
        assertEquals(Kind.TIGHTENED, other.kind());
      } else if (change.kind() == Kind.SHIFTED) {
        assertEquals(Kind.SHIFTED, other.kind());
      } else if (change.kind() == Kind.POINT_REMOVED) {
        assertEquals(Kind.POINT_ADDED, other.kind());
      }
    }
    return 1;
  }

  // ---- forms ----

  @Test
  void everyFormSaysTheSame() {
    List<PlanDiff> diffs =
        PlanDiff.between(
            List.of(plan(library(), TEASEL)),
            List.of(edited(TEASEL, TEASEL, "410 to 500", "400 to 500")));
    String text = DiffReport.text(diffs, true);
    assertTrue(text.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), text);
    assertTrue(text.contains("was  410.0 to 500.0 mA"), text);
    assertTrue(text.contains("now  400.0 to 500.0 mA"), text);
    assertTrue(text.contains(TEASEL + ":64: tack | 1       | 40       | 400 to 500"), text);
    assertTrue(
        DiffReport.markdown(diffs, null)
            .contains("| **limits loosened** tack-output/bipolar/tack/1/40ohm/current |"));
    JsonObject json = JsonParser.parseString(DiffReport.json(diffs, null)).getAsJsonObject();
    assertEquals("passband-diff/7", json.get("format").getAsString());
    JsonObject change =
        json.getAsJsonArray("compared")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("causes")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("changes")
            .get(0)
            .getAsJsonObject();
    assertEquals("limits loosened", change.get("kind").getAsString());
    assertEquals(
        "{\"text\":\"410.0 to 500.0 mA, read to 0.1 mA\",\"limits\":[{\"quantity\":\"current\",\"unit\":\"mA\","
            + "\"lower\":410.0,\"upper\":500.0,\"accept_lower\":410.0,\"accept_upper\":500.0}]}",
        change.get("was").toString());
    assertEquals(
        new BigDecimal("400.0"),
        change
            .getAsJsonObject("now")
            .getAsJsonArray("limits")
            .get(0)
            .getAsJsonObject()
            .get("accept_lower")
            .getAsBigDecimal());
    String page = DiffPage.of(diffs, null);
    assertTrue(page.contains("<b>limits loosened</b><small>tack-output"), page);
    assertTrue(page.contains("Reviewed by"));
  }

  @Test
  void aProcedureThatIsNewOrGoneIsSaid() {
    Plan plan = plan(library(), TEASEL);
    assertTrue(
        DiffReport.text(PlanDiff.between(List.of(), List.of(plan)), true)
            .contains("new, revision B"));
    assertTrue(
        DiffReport.text(PlanDiff.between(List.of(plan), List.of()), true)
            .contains("removed, was revision B"));
  }
}
