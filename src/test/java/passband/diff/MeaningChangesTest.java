package passband.diff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Snippet;

/** What an author may write otherwise: with another meaning it is told, with the same it is not. */
class MeaningChangesTest {
  private static final Path FOLDER = Repository.ROOT.resolve("src/test/resources/meaning");

  private static List<Plan> compiled(String from, String to) {
    Map<String, String> files = new TreeMap<>();
    boolean found = false;
    for (Path file : Repository.files(FOLDER, ".pband")) {
      String text = Repository.text(file);
      found |= text.contains(from);
      files.put(FOLDER.relativize(file).toString(), text.replace(from, to));
    }
    assertTrue(found, from);
    Snippet snippet = Snippet.compile(files, "all.pband", null);
    assertTrue(
        snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable()), snippet.report());
    return snippet.plans();
  }

  private static Plan plan(String from, String to) {
    return compiled(lines(from), lines(to)).stream()
        .filter(p -> p.name().text().equals("outputs"))
        .findFirst()
        .orElseThrow();
  }

  private static Plan plan() {
    return plan("Procedures", "Procedures");
  }

  private static String lines(String text) {
    return text.replace("\\n", "\n");
  }

  /** Every change but that of a revision reused. */
  private static List<Change> changes(Plan was, Plan now) {
    List<Change> changes = new ArrayList<>();
    PlanDiff.between(List.of(was), List.of(now)).forEach(d -> changes.addAll(d.changes()));
    changes.removeIf(c -> c.kind() == Kind.SAME_REVISION);
    return changes;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`  caution  burn  \"Burns.\"\\n  caution  sharp \"The pins are sharp.\"`|`  caution  sharp \"The pins are sharp.\"\\n  caution  burn  \"Burns.\"`|order changed|the order of the cautions",
        "`  lead red   \"red lead\",   rated 2 kV, colour red\\n  lead black \"black lead\", rated 2 kV\\n`|`  lead black \"black lead\", rated 2 kV\\n  lead red   \"red lead\",   rated 2 kV, colour red\\n`|order changed|the order of the leads to collect",
        "`decision risk 5 % coverage 2.5`|`decision risk 5 % coverage 3`|decision changed|the decision rule",
        "`decision risk 5 % coverage 2.5`|`decision risk 5 %`|decision changed|the decision rule",
        "`\"Soft\" renamed from mild-output`|`\"Soft\"`|renamed|test soft-output",
        "`\"Soft\" on twin renamed from mild`|`\"Soft\" on twin`|renamed|mode soft",
        "`\"Twin\" renamed from pair`|`\"Twin\"`|renamed|outlet twin",
        "`    allow   accuracy-ratio-low because \"The maker has no better one.\"\\n`|``|warning allowed|accuracy-ratio-low in test soft-output",
        "`phases   as-found, as-left`|`phases   as-left, as-found`|condition changed|the phases",
        "`    derive crest  \"Crest factor\" = peak-voltage / voltage, resolution 0.1\\n    derive spread \"Spread\"       = max(peak-voltage, voltage), resolution 0.1 V\\n`|`    derive spread \"Spread\"       = max(peak-voltage, voltage), resolution 0.1 V\\n    derive crest  \"Crest factor\" = peak-voltage / voltage, resolution 0.1\\n`|order changed|order of the derived values",
        "`    accept crest at most 2.5\\n    accept spread from 1 V to 2 kV\\n`|`    accept spread from 1 V to 2 kV\\n    accept crest at most 2.5\\n`|order changed|order of the readings",
        "`    connect red   from outlet.left   to analyzer.high\\n    connect black from outlet.right  to analyzer.low\\n`|`    connect black from outlet.right  to analyzer.low\\n    connect red   from outlet.left   to analyzer.high\\n`|order changed|order of the leads",
        "`  gate sound \"All before has passed.\"\n`|``|gate removed|gate sound/as-found",
        "`All before has passed.`|`All before.`|gate changed|gate sound/as-found",
        "`    when   page is \"one\"\n`|``|condition changed|test short on ",
        "`when   page is \"one\"`|`when   page is \"two\"`|condition changed|test short on ",
        "`when    page is \"two\"`|`when    page is \"one\"`|condition changed|section second, when",
        "`    when    page is \"two\", \"three\"\n`|``|condition changed|section second, when",
        "`at least 2.7 V`|`at least 2.6 V`|limits loosened|section first, steps, record cell",
        "`at least 2.7 V`|`at least 2.8 V`|limits tightened|section first, steps, record cell",
        "`from 15 degC to 30 degC`|`from 16 degC to 31 degC`|limits shifted|section first, steps, record heat",
        "`from 15 degC to 30 degC`|`at least 15 degC`|limit removed|section first, steps, record heat",
        "`| 1, 2`|`| 1 to 3 step 1`|point added|firm-output/single/firm/20W/350ohm/repeat=3",
        "`rise(voltage) over setting`|`rise(voltage) over repeat`|calculation changed|test firm-output on single, as-found, steps",
        "`max(voltage) - min(voltage) over repeat`|`max(voltage) - mean(voltage) over repeat`|calculation changed|test firm-output on single, as-found, repeats",
        "` at most 2\n`|`\n`|limit removed|section first, steps, record shots",
        "`\"Serial number\"\n`|`\"Serial number\" at most 3\n`|limits tightened|section first, steps, record serial",
        "`  reads in 1 s\\n`|``|duty or times changed|the analyzer's time to read",
        "`620 to 710`|`619.99 to 710`|rule changed|soft-output/twin/soft/40W/90ohm",
        "`  jack high \"HIGH\"\\n  jack low  \"LOW\" holds 2\\n`|`  jack low  \"LOW\" holds 2\\n  jack high \"HIGH\"\\n`|order changed|order of the terminals"
      })
  void whatWasSilentIsTold(String from, String to, String kind, String subject) {
    Plan was = plan();
    Plan now = plan(from, to == null ? "" : to);
    assertNotEquals(was.digest(), now.digest());
    List<Change> changes = changes(was, now);
    assertTrue(
        changes.stream()
            .anyMatch(c -> c.kind().word().equals(kind) && c.subject().contains(subject)),
        changes.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`on single, twin through`|`on twin, single through`",
        "`one of slow, fast`|`one of fast, slow`",
        "`load    90 ohm, 180 ohm`|`load    90 ohm, 0.18 kohm`",
        "`  action select \"Press {mode}.\"\\n  action adjust \"Turn the {outlet} knob to {setting}.\"\\n`|`  action adjust \"Turn the {outlet} knob to {setting}.\"\\n  action select \"Press {mode}.\"\\n`",
        "`  mode bare \"Bare\" on twin {\\n    load 90 ohm\\n    peak-voltage at most 100 V\\n    duty continuous\\n    activate unknown because \"Nobody has found the contact.\"\\n  }\\n  setting ramp  \"Ramp\" one of slow, fast leave slow\\n`|`  setting ramp  \"Ramp\" one of slow, fast leave slow\\n  mode bare \"Bare\" on twin {\\n    load 90 ohm\\n    peak-voltage at most 100 V\\n    duty continuous\\n    activate unknown because \"Nobody has found the contact.\"\\n  }\\n`",
        "`  lead spare \"spare lead\", rated 2 kV\\n  lead pale  \"pale lead\"\\n`|`  lead pale  \"pale lead\"\\n  lead spare \"spare lead\", rated 2 kV\\n`",
        "`    allow   accuracy-ratio-low because \"The only meter there is.\"\\n    allow   accuracy-ratio-low because \"The maker has no better one.\"\\n`|`    allow   accuracy-ratio-low because \"The maker has no better one.\"\\n    allow   accuracy-ratio-low because \"The only meter there is.\"\\n`",
        "`ramp | filter | delay/s | stated current/mA | stated power/W\\n      soft | 5, 20     | 90       | slow | wide   | 0.5     |                   |\\n      soft | 40        | 90       | fast | narrow | 1       |`|`filter | ramp | delay/s | stated current/mA | stated power/W\\n      soft | 5, 20     | 90       | wide   | slow | 0.5     |                   |\\n      soft | 40        | 90       | narrow | fast | 1       |`",
        "`stated current/mA | stated power/W\\n      soft | 5, 20     | 90       | slow | wide   | 0.5     |                   |\\n      soft | 40        | 90       | fast | narrow | 1       | 620 to 710        | at least 35`|`stated power/W | stated current/mA\\n      soft | 5, 20     | 90       | slow | wide   | 0.5     |                   |\\n      soft | 40        | 90       | fast | narrow | 1       | at least 35        | 620 to 710`",
        "`stated current/mA | stated power/W\\n      soft | 5, 20     | 90       | slow | wide   | 0.5     |                   |\\n      soft | 40        | 90       | fast | narrow | 1       | 620 to 710`|`stated current/A | stated power/W\\n      soft | 5, 20     | 90       | slow | wide   | 0.5     |                   |\\n      soft | 40        | 90       | fast | narrow | 1       | 0.620 to 0.710`",
        "`power  200 W for 20 s, 50 W continuous`|`power  50 W continuous, 0.2 kW for 20 s`"
      })
  void anOrderThatSaysNothingIsNoChange(String from, String to) {
    Plan was = plan();
    Plan now = plan(from, to);
    assertEquals(List.of(), changes(was, now));
    assertEquals(was.digest(), now.digest());
  }

  /** What was renamed is paired in both directions, and told once. */
  @Test
  void aRenameIsToldOnceEachWay() {
    Plan was = plan();
    Plan now =
        plan("test firm-output \"Firm\"", "test stout-output \"Firm\" renamed from firm-output");
    List<Change> there = changes(was, now);
    List<Change> back = changes(now, was);
    assertEquals(List.of(Kind.RENAMED), there.stream().map(Change::kind).toList());
    assertEquals("\"Firm\"", there.get(0).was());
    assertEquals("\"Firm\", stout-output renamed from firm-output", there.get(0).now());
    assertEquals(1, back.size());
    assertEquals(there.get(0).was(), back.get(0).now());
    assertEquals(there.get(0).now(), back.get(0).was());
  }
}
