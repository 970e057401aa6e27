package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import passband.diff.PlanDiff;
import passband.plan.Plan;
import passband.render.DiffPage;
import passband.render.DiffReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/** What a change of a procedure costs or gains. */
class CatchChangeTest {
  private static final String TUSSOCK = "tussock-4/tussock-4-output.pband";

  private static Plan changed(String... changes) {
    Map<String, String> files = new TreeMap<>(Repository.texts(Repository.PROCEDURES));
    String source = files.get(TUSSOCK);
    for (int i = 0; i < changes.length; i += 2) {
      assertTrue(source.contains(changes[i]), changes[i]);
      source = source.replace(changes[i], changes[i + 1]);
    }
    files.put(TUSSOCK, source);
    return Snippet.compile(files, TUSSOCK, null).plans().get(0);
  }

  @Test
  void nothingIsSaidWhereNothingIsCaughtOtherwise() {
    assertEquals(List.of(), CatchChange.between(changed(), changed()));
    assertEquals(
        List.of(),
        CatchChange.between(changed(), changed("look each over", "look every one over")));
  }

  @Test
  void rowsThatGoCostAndComeBackAsGains() {
    Plan was = changed();
    Plan now = changed("slit  | 18 W, 68 W, 136 W", "slit  | 18 W");
    List<String> lost = texts(CatchChange.between(was, now));
    List<String> gained = texts(CatchChange.between(now, was));
    assertTrue(
        lost.stream()
            .anyMatch(line -> line.matches("slit mono-1 350 Ω: \\d+ % (low|high): caught .*")),
        lost.toString());
    assertTrue(
        lost.contains(
            "G11 setting not taken over: stays at the least tested: caught, now not read"),
        lost.toString());
    assertTrue(
        gained.contains(
            "G11 setting not taken over: stays at the least tested: not read, now caught"),
        gained.toString());
  }

  @Test
  void anOutletThatIsNoLongerReadIsSaidToBe() {
    List<String> lost =
        texts(
            CatchChange.between(
                changed(),
                changed(
                    "test slit-output \"Slit and Score output\" {\n    outlet mono-1, mono-2",
                    "test slit-output \"Slit and Score output\" {\n    outlet mono-1")));
    assertTrue(
        lost.stream().anyMatch(line -> line.matches("slit mono-2 350 Ω: .*, now not read")),
        lost.toString());
    assertTrue(lost.stream().noneMatch(line -> line.startsWith("slit mono-1")), lost.toString());
  }

  private static List<String> texts(List<CatchChange.Line> lines) {
    return lines.stream().map(CatchChange.Line::text).toList();
  }

  @Test
  void everyFormOfTheComparisonForPeopleSaysIt() {
    Plan now =
        changed(
            "or 3 W, whichever is greater, read as current\n    accept peak-voltage at most 3.6 kV\n    table {\n      mode | setting/W  | load/ohm\n      mist | 10, 25, 55",
            "or 3 W, whichever is greater, read as current\n    accept peak-voltage at most 3.6 kV\n    table {\n      mode | setting/W  | load/ohm\n      mist | 10");
    List<PlanDiff> diffs = PlanDiff.between(List.of(changed()), List.of(now));
    assertEquals(1, diffs.size());
    assertTrue(DiffReport.text(diffs, false).contains("What is caught (see passband detect)\n"));
    assertTrue(DiffReport.markdown(diffs, null).contains("\nWhat is caught:\n\n- mist mono-1 650"));
    assertTrue(DiffPage.of(diffs, null).contains("<h3>What is caught</h3>"));
    List<String> told = new ArrayList<>();
    JsonParser.parseString(DiffReport.json(diffs, null))
        .getAsJsonObject()
        .getAsJsonArray("compared")
        .get(0)
        .getAsJsonObject()
        .getAsJsonArray("caught")
        .forEach(
            one -> {
              JsonObject line = one.getAsJsonObject();
              told.add(
                  line.get("what").getAsString()
                      + ": "
                      + line.get("was").getAsString()
                      + ", now "
                      + line.get("now").getAsString());
            });
    assertEquals(texts(CatchChange.between(changed(), now)), told);
  }

  /**
   * A slip that cannot happen any more since its row is gone is not called caught by what stays.
   */
  @Test
  void aRowThatIsGoneCatchesNothing() {
    String row = "soft | 10        | 200";
    String more = "soft | 10, 20 | 200\n      hard | 20 | 200";
    passband.plan.Plan was = CatalogueTest.changed("thin.pband", row, more);
    passband.plan.Plan now = CatalogueTest.changed("thin.pband", row, "soft | 10, 20 | 200");
    List<CatchChange.Line> lines = CatchChange.between(was, now);
    List<String> mode = new ArrayList<>();
    for (CatchChange.Line line : lines) {
      if (line.what().startsWith("B05")) {
        mode.add(line.now());
      }
    }
    assertEquals(1, mode.size(), lines.toString());
    assertTrue(
        mode.get(0).equals("does not apply; the rows where it was missed are gone"), mode.get(0));
  }
}
