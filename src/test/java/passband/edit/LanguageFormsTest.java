package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Explanations;
import passband.plan.PlanStep;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Every example of a form compiles, and each has points where it is one of a test. */
class LanguageFormsTest {
  private static final String TEST =
      """
        allow mode-untested because "One form is shown."
        allow outlet-untested because "One form is shown."
        allow setting-untested because "One form is shown."
        test t "T" {
          outlet bip
          setup  bipolar
          ACCEPT
          table {
            HEADING
            ROW
          }
          EACH
        }
      """;

  private static final String RULE =
      """
      rule bounds "Bounds" {
        accept power within 15 % of setting, read as current
      }
      rule wave "Wave" {
        derive crest "Crest factor" = peak-voltage / voltage, resolution 0.01
        accept crest from 1 to 2.5
      }
      """;

  static List<LanguageForm> all() {
    return LanguageForm.all();
  }

  @ParameterizedTest
  @MethodSource("all")
  void theExampleCompiles(LanguageForm form) {
    String example = form.example().replace("\\n", "\n").replace("\\\\n", "\\n");
    String[] parts = example.split(" [|] ");
    Map<String, String> row = new LinkedHashMap<>();
    row.put("mode", "thin");
    row.put("setting/W", "20");
    row.put("load/ohm", "100");
    String accept = "accept power from output, read as current";
    String bench = Explanations.bench();
    String end = "";
    String each = "";
    String setup = "to analyzer.key\n";
    switch (form.kind()) {
      case "accept" -> {
        accept = parts[0].replace("; ", "\n");
        for (int i = 1; i < parts.length; i++) {
          cell(row, parts[i]);
        }
      }
      case "column" -> {
        cell(row, example);
        accept = accept(example);
      }
      case "beside" -> {
        for (String one : parts) {
          row.put(one.split(" = ")[0], one.split(" = ")[1]);
        }
        setup = "to analyzer.key\n  connect footswitch at device.foot.pedal\n";
        bench = withPedal(bench);
      }
      case "mode" ->
          bench =
              bench.replaceFirst("setting power 1 W to 40 W step 1 W", example.replace("$", ""));
      case "action" -> bench = action(bench, "device gen", example);
      case "instrument" -> bench = action(bench, "analyzer meter", example);
      case "bound" -> bench = bench.replaceFirst("peak-voltage at most 250 V", example);
      case "each" -> each = example + "\n";
      case "file" -> end = example + "\n";
      default -> throw new IllegalArgumentException(form.kind());
    }
    String main =
        Examples.framed(
                    "test",
                    TEST.replace("ACCEPT", accept)
                        .replace("EACH\n", each)
                        .replace("HEADING", String.join(" | ", row.keySet()))
                        .replace("ROW", String.join(" | ", row.values())))
                .replace("to analyzer.key\n", setup)
            + RULE
            + end;
    Snippet snippet =
        Snippet.compile(Map.of("main.pband", main, "bench.pband", bench), "main.pband", null);
    List<Diagnostic> errors = snippet.diagnostics().stream().filter(Diagnostic::isError).toList();
    assertEquals(List.of(), errors, () -> snippet.report() + main);
    assertFalse(snippet.plan().limits().isEmpty());
  }

  /** Every step that a block may stand in the place of is there, in order. */
  @Test
  void everyStepOfAPointIsThere() {
    assertEquals(
        PlanStep.REPLACEABLE,
        LanguageForm.all().stream()
            .filter(form -> form.group().equals("Steps of a point"))
            .map(form -> form.form().split(" ")[2])
            .toList());
  }

  /** The bench with a pedal that activates the monopolar mode. */
  private static String withPedal(String bench) {
    return bench
        .replace(
            "  mode thin", "  outlet foot \"Foot\" {\n contact pedal \"pedal\"\n }\n  mode thin")
        .replace("activate by cut", "activate by cut, foot.pedal")
        .replace("  lead old", "  accessory footswitch \"footswitch\"\n  lead old");
  }

  /** A column for a tolerance or a target is there to be used. */
  private static String accept(String column) {
    return column.startsWith("target")
        ? "accept power within 10 % of target, read as current"
        : "accept power within 15 % of setting, read as current";
  }

  private static void cell(Map<String, String> row, String cell) {
    String[] sides = cell.split(" = ");
    assertEquals(2, sides.length, cell);
    String word = sides[0].replaceFirst("^(analyzer|bip)[.]", "").split("/")[0];
    List<String> headings = new ArrayList<>(row.keySet());
    List<String> cells = new ArrayList<>(row.values());
    int at = headings.stream().map(h -> h.split("/")[0]).toList().indexOf(word);
    if (at < 0) {
      headings.add(sides[0]);
      cells.add(sides[1]);
    } else {
      headings.set(at, sides[0]);
      cells.set(at, sides[1]);
    }
    row.clear();
    for (int i = 0; i < headings.size(); i++) {
      row.put(headings.get(i), cells.get(i));
    }
  }

  /** The bench with an action of a device or an instrument in the place of the one it has. */
  private static String action(String bench, String owner, String action) {
    String name = action.split(" ")[1];
    int start = bench.indexOf(owner);
    int end = bench.indexOf("\n}", start);
    assertTrue(start >= 0 && end > start, owner);
    String block = bench.substring(start, end);
    String without = block.replaceAll("\n  action +" + name + " [^\n]*", "");
    return bench.substring(0, start) + without + "\n  " + action + bench.substring(end);
  }
}
