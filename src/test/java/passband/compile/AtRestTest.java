package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.Stage;
import passband.testing.Examples;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Settings at their rest positions: in a blank cell, and in a state of the generator. */
class AtRestTest {
  private static final String TEST =
      """
      test t "T" {
        outlet bip
        setup  bipolar
        accept power from output, read as current
        table {
          mode | setting/W | load/ohm | %s
          thin | 20        | 100      | %s
          thin | 30        | 100      | %s
        }
      }
      """;

  @ParameterizedTest
  @CsvSource({"ramp, fast, slow", "delay/s, 2, 0"})
  void aBlankCellIsTheRestPosition(String column, String other, String rest) {
    Snippet blank = Examples.compile("test", TEST.formatted(column, other, ""));
    Snippet said = Examples.compile("test", TEST.formatted(column, other, rest));
    assertFalse(blank.codes().contains("blank-cell"), blank.report());
    assertEquals(said.plan().digest(), blank.plan().digest());
  }

  @Test
  void whatHasNoRestPositionIsSaid() {
    String bench = Repository.text(BENCH).replace(" leave slow", "");
    String main = Examples.framed("test", TEST.formatted("ramp", "fast", ""));
    Snippet snippet =
        Snippet.compile(Map.of("main.pband", main, "bench.pband", bench), "main.pband", null);
    assertTrue(snippet.codes().contains("blank-cell"), snippet.report());
  }

  private static final Path BENCH =
      Repository.ROOT.resolve("src/main/resources/passband/explain/bench.pband");

  /**
   * A generator that is switched off has no panel to set anything at; an instrument has. What the
   * state may have moved is brought to rest when it is left.
   */
  @Test
  void inAStateWithoutOutputTheGeneratorIsNotSet() {
    Path folder = Repository.ROOT.resolve("procedures");
    Map<String, String> files = new TreeMap<>();
    for (Path file : Repository.files(folder, ".pband")) {
      files.put(folder.relativize(file).toString(), Repository.text(file));
    }
    files.computeIfPresent(
        "sedge-170/sedge-170.pband",
        (name, text) ->
            text.replace(
                "  state switched-off",
                "  setting volume \"Tone volume\" one of low, high leave high\n"
                    + "  action volume \"Touch VOLUME until it shows {volume}.\"\n"
                    + "  state switched-off"));
    Snippet snippet = Snippet.compile(files, "sedge-170/sedge-170-full.pband", null);
    assertEquals("", snippet.report());
    Stage.Run run =
        snippet.plan().runs().stream().filter(Stage.Run::isStateAlone).findFirst().orElseThrow();
    List<String> inside = new ArrayList<>(set(run.before()));
    run.points().forEach(point -> inside.addAll(set(point.steps())));
    assertFalse(inside.contains("device.volume"), inside.toString());
    assertTrue(inside.contains("safety.supply"), run.before().toString());
    assertTrue(set(run.after()).contains("device.volume"), run.after().toString());
  }

  private static List<String> set(List<PlanStep> steps) {
    List<String> ids = new ArrayList<>();
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Set set) {
        ids.add(set.id());
      }
    }
    return ids;
  }
}
