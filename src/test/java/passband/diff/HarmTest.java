package passband.diff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.plan.Plan;
import passband.render.DiffReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/** What a change is called by what it can do, and that the worse one comes first. */
class HarmTest {
  private static final String TEASEL = "teasel/teasel-output.pband";
  private static final String YARROW = "yarrow/yarrow-service.pband";

  /** The library with texts put in the place of others, each in the file that has it. */
  private static List<PlanDiff> compared(String main, String... edits) {
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    Map<String, String> edited = Repository.texts(Repository.LIBRARY);
    for (int i = 0; i < edits.length; i += 2) {
      String from = edits[i].replace("\\n", "\n");
      String to = edits[i + 1].replace("\\n", "\n");
      List<String> files = new ArrayList<>(edited.keySet());
      files.removeIf(file -> !edited.get(file).contains(from) || file.contains("sundew"));
      files.sort(Comparator.comparing(file -> !file.equals(main)));
      assertFalse(files.isEmpty(), from);
      edited.computeIfPresent(files.get(0), (file, text) -> text.replace(from, to));
    }
    edited.computeIfPresent(
        main, (file, text) -> text.replaceFirst("revision \"[AB]\"", "revision \"Z\""));
    Plan was = Snippet.compile(library, main, null).plan();
    Snippet now = Snippet.compile(edited, main, null);
    assertTrue(now.diagnostics().stream().noneMatch(d -> !d.code().allowable()), now.report());
    return PlanDiff.between(List.of(was), now.plans());
  }

  private static List<ChangeGroup> groups(List<PlanDiff> diffs) {
    List<ChangeGroup> groups = new ArrayList<>();
    diffs.forEach(diff -> groups.addAll(diff.groups()));
    groups.removeIf(group -> group.kind() == Kind.REVISION);
    return groups;
  }

  /** One edit: the worst kind of its first group, and how many changes are of that kind. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {
        // a caution weakened, wherever it stands
        "teasel!`  caution patient    \"Never with a patient connected. Keep people with pacemakers or other implants away.\"\\n`!``!caution removed!1",
        "teasel!Never with a patient!Better not with a patient!caution changed!1",
        // limits, acceptance and decision rule told apart
        "yarrow!decision guarded!decision simple!decision looser!1",
        "yarrow!decision guarded!decision guarded coverage 1.5!decision looser!1",
        "yarrow!decision guarded!decision guarded coverage 3!decision changed!1",
        "teasel!410 to 500!400 to 510!limits loosened!1",
        "teasel!`within 20 % of setting or 3 W, whichever is greater, read as current`!`within 15 % of setting or 3 W, whichever is greater, read as current`!limits tightened!4",
        "teasel!error      1 % of reading + 1 mA!error      2 % of reading + 1 mA!uncertainty more under the same limits!9",
        "teasel!error      1 % of reading + 1 mA!error      1 % of reading + 1 mA as u-shaped!uncertainty more under the same limits!9",
        "teasel!error      1 % of reading + 1 mA!error      1 % of reading + 1 mA as triangular!uncertainty less under the same limits!9",
        "yarrow!error      1 % of reading + 1 mA!error      0.5 % of reading + 1 mA!uncertainty less under the same limits!6",
        // a point, a mode, an outlet dropped
        "teasel!    outlet mono-1, mono-2\\n    setup  monopolar-load\\n    accept power within!    outlet mono-1\\n    setup  monopolar-load\\n    accept power within!test removed!1",
        "teasel!20 W, 70 W, 140 W!20 W, 140 W!point removed!2",
        "teasel!`      score | 20 W, 50 W, 100 W | 400 ohm\\n`!``!mode no longer tested!1",
        // checks and calculations
        "teasel!`    confirm \"The analyzer's calibration label is in date.\"\\n`!``!check removed!1",
        "teasel!is in date.!is there.!check changed!1",
        "yarrow!pass \"red\"!pass \"dark\"!check changed!1",
        "yarrow!peak-voltage / voltage,!peak-voltage / voltage * 0.9,!calculation changed!1",
        // what a lead bears, and what only its label says
        "teasel!`\"red test lead\",          rated 6 kV`!`\"red test lead\",          rated 5 kV`!lead changed!1",
        "teasel!colour white!colour grey!text changed!1",
        // profiles
        "teasel!peak-voltage at most 240 V!peak-voltage at most 340 V!limits loosened!1",
        "teasel!peak-voltage at most 240 V!peak-voltage at most 230 V!limits tightened!1",
      })
  void oneEdit(String procedure, String from, String to, String kind, int count) {
    String main = procedure.equals("teasel") ? TEASEL : YARROW;
    List<PlanDiff> diffs = compared(main, from, to == null ? "" : to);
    ChangeGroup first = groups(diffs).get(0);
    String said = DiffReport.text(diffs, true);
    assertEquals(kind, first.kind().word(), said);
    assertEquals(
        count, first.changes().stream().filter(c -> c.kind() == first.kind()).count(), said);
  }

  /** The tolerance stays where only the guard band goes; the rule's own edit has its own group. */
  @Test
  void aRuleTightenedAndAGuardBandGoneAreTwoThings() {
    List<PlanDiff> diffs =
        compared(
            YARROW,
            "decision guarded",
            "decision simple",
            "within 20 % of setting or 4 W",
            "within 19.9 % of setting or 4 W");
    List<ChangeGroup> groups = groups(diffs);
    String said = DiffReport.text(diffs, true);
    assertEquals(2, groups.size(), said);
    assertEquals(Kind.DECISION_LOOSER, groups.get(0).kind(), said);
    assertTrue(groups.get(0).counts().contains("guard band less"), said);
    assertTrue(groups.get(0).changes().stream().noneMatch(c -> c.kind() == Kind.TIGHTENED), said);
    assertEquals("limits tightened (4), rule changed (2)", groups.get(1).counts(), said);
  }

  @Test
  void anUncertaintyUnderTheSameLimitSaysBoth() {
    List<PlanDiff> diffs =
        compared(
            TEASEL, "error      1 % of reading + 0.3 mA", "error      2 % of reading + 0.3 mA");
    String said = DiffReport.text(diffs, true);
    assertTrue(said.contains("was  410.0 to 500.0 mA, U = "), said);
    assertEquals(1, groups(diffs).size(), said);
  }

  @Test
  void anOutletDroppedIsSaidOnce() {
    List<PlanDiff> diffs = compared(TEASEL, "    outlet mono-1, mono-2\n", "    outlet mono-1\n");
    ChangeGroup first = groups(diffs).get(0);
    String said = DiffReport.text(diffs, true);
    assertEquals(Kind.OUTLET_UNTESTED, first.kind(), said);
    assertEquals("outlet mono-2", first.changes().get(0).subject());
    assertEquals("9 points", first.changes().get(0).was());
  }

  /** A caution at a step is a caution, whether it goes, is reworded or comes too late. */
  @Test
  void aCautionAtAStepIsOne() {
    String step = "    do      \"Adjust the output as the maker's service manual describes.\"\n";
    String caution = "    caution hot \"The heat sink burns.\"\n";
    assertEquals(Kind.CAUTION_ADDED, worst(step, caution + step));
    assertEquals(Kind.CAUTION_REMOVED, back(step, caution + step));
    assertEquals(
        Kind.CAUTION_CHANGED,
        between(step, caution + step, caution.replace("burns", "is warm") + step));
    assertEquals(Kind.CAUTION_CHANGED, between(step, caution + step, step + caution));
    assertEquals(Kind.ORDER, between(step, step + caution, caution + step));
  }

  private static Kind worst(String from, String to) {
    return groups(compared(YARROW, from, to)).get(0).kind();
  }

  private static Kind back(String from, String to) {
    return between(from, to, from);
  }

  /** From one text in the place of another to a third. */
  private static Kind between(String place, String was, String now) {
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    library.computeIfPresent(YARROW, (file, text) -> text.replace(place, was));
    Plan old = Snippet.compile(library, YARROW, null).plan();
    library.computeIfPresent(YARROW, (file, text) -> text.replace(was, now));
    library.computeIfPresent(YARROW, (file, text) -> text.replace("\"A\" on", "\"Z\" on"));
    Plan fresh = Snippet.compile(library, YARROW, null).plan();
    List<Change> changes = PlanDiff.between(List.of(old), List.of(fresh)).get(0).changes();
    return changes.get(0).kind();
  }

  /** Tests that change places in one state are no harm; across a gate, a section or a state. */
  @Test
  void anOrderIsWorseAcrossAState() {
    assertEquals(Kind.ORDER, swapped("slit-output", "flare-output"));
    assertEquals(Kind.ORDER_ACROSS, swapped("tack-output", "slit-output"));
    assertEquals(Kind.ORDER_ACROSS, swapped("flare-output", null));
  }

  /** Two blocks of the procedure change places: two tests, or a test and the section after it. */
  private static Kind swapped(String one, String other) {
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    library.computeIfPresent(
        TEASEL, (name, was) -> was.replace("decision simple", "decision simple\n  order by test"));
    Plan old = Snippet.compile(library, TEASEL, null).plan();
    String text = library.get(TEASEL).replace("\"B\" on", "\"Z\" on");
    int first = text.indexOf("  test " + one);
    int second =
        other == null ? text.indexOf("  section closing") : text.indexOf("  test " + other);
    int end = text.indexOf("\n  }\n", second) + 5;
    library.put(
        TEASEL,
        text.substring(0, first)
            + text.substring(second, end)
            + text.substring(first, second)
            + text.substring(end));
    Plan fresh = Snippet.compile(library, TEASEL, null).plan();
    return PlanDiff.between(List.of(old), List.of(fresh)).get(0).changes().get(0).kind();
  }

  /** Seven edits of mixed harm: a group each, and the order is by what they can do. */
  @Test
  void theWorstOfSevenComesFirst() {
    List<PlanDiff> diffs =
        compared(
            TEASEL,
            "colour white",
            "colour grey",
            "410 to 500",
            "400 to 500",
            "522 to 606",
            "530 to 600",
            "Never with a patient connected. Keep",
            "Keep",
            "20 W, 70 W, 140 W",
            "20 W, 140 W",
            "\"Slit and score output\"",
            "\"Slit, score\"",
            "error      3 % of reading + 20 V",
            "error      4 % of reading + 20 V");
    List<String> kinds = groups(diffs).stream().map(group -> group.kind().word()).toList();
    assertEquals(
        List.of(
            "caution changed",
            "point removed",
            "limits loosened",
            "uncertainty more under the same limits",
            "limits tightened",
            "text changed",
            "text changed"),
        kinds,
        DiffReport.text(diffs, true));
  }
}
