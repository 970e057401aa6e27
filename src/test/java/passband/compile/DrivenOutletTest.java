package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.testing.Repository;
import passband.testing.Snippet;

/** One outlet delivers while another is measured: the leakage of a neutral electrode. */
class DrivenOutletTest {
  private static final Path FOLDER = Repository.ROOT.resolve("procedures");
  private static final String MAIN = "sedge-170/sedge-170-full.pband";

  private static Snippet with(String from, String to) {
    Map<String, String> files = new TreeMap<>();
    for (Path file : Repository.files(FOLDER, ".pband")) {
      files.put(FOLDER.relativize(file).toString(), Repository.text(file));
    }
    String main = Objects.requireNonNull(files.get(MAIN));
    assertTrue(main.contains(from), from);
    files.put(MAIN, main.replace(from, to));
    return Snippet.compile(files, MAIN, null);
  }

  private static Stage.Run run(Snippet snippet) {
    return snippet.plan().runs().stream()
        .filter(run -> run.test().text().equals("plate-hf"))
        .findFirst()
        .orElseThrow();
  }

  /** The steps are about the one that delivers, the limit and the item about the measured one. */
  @Test
  void stepsAreOfTheOneAndLimitsOfTheOther() {
    Snippet snippet = with("plate-hf", "plate-hf");
    Stage.Run run = run(snippet);
    assertEquals("plate", Objects.requireNonNull(run.outlet()).name().text());
    assertEquals(2, run.points().size());
    for (Point point : run.points()) {
      List<String> selected = new ArrayList<>();
      for (PlanStep step : point.steps()) {
        if (step.act() instanceof Act.Select select) {
          selected.add(Objects.requireNonNull(select.outlet()).name().text());
        }
      }
      assertEquals(List.of("mono-1"), selected);
      assertTrue(point.id().contains("/plate/") && point.id().contains("/driven=mono-1"));
      assertEquals("Monopolar 1", point.extras().get("delivering"));
      assertEquals("130.0", point.limits().get(0).end(point.limits().get(0).printed().upper()));
    }
    for (Item item : Evidence.of(snippet.plan()).list().items()) {
      if (item instanceof Item.Reading reading && item.id().startsWith("plate-hf/")) {
        assertEquals("plate", reading.where().outlet());
        assertEquals("Monopolar 1", reading.where().extras().get("delivering"));
      }
    }
  }

  /** What is wrong with the outlet that delivers is said as of any other. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "mono-1.mode | mono-1.setting/W; mono-1.mode | mono-2.setting/W; missing-column",
        "mono-1.mode | mono-1.setting/W; mono-1.mode | mono-1.knob/W; unknown-column",
        "mono-1.mode | mono-1.setting/W; mono-3.mode | mono-3.setting/W; unknown-name",
        "mono-1.mode | mono-1.setting/W; bipolar.mode | bipolar.setting/W; missing-column",
        "slice       | 170              | open; slice       | 175              | open; setting-off-span",
        "slice       | 170              | open; pinch       | 20               | open; mode-not-on-outlet",
        "slice       | 170              | open        | foot.cut; slice | 170 | open | yellow; activation-open",
        "device.plate.half-a to rf.leak-in; device.plate.half-a to rf.load-high; circuit-open"
      })
  void faultsOfItAreSaid(String from, String to, String code) {
    Snippet snippet = with(from, to);
    assertTrue(
        snippet.diagnostics().stream().anyMatch(d -> d.code().id().equals(code)), snippet.report());
  }
}
