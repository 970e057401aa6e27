package passband.render;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the script of the sheet shows beside one line at a time: the kinds of the steps of each
 * group and at which of them its boxes are written, and of each line its times and the steps that
 * are not worded as those of the group. Each text stands once, and its place wherever it is meant.
 */
final class ScriptLines {
  private final ScriptJson json;
  private final Map<String, Integer> texts = new LinkedHashMap<>();

  ScriptLines(ScriptJson json) {
    this.json = json;
  }

  /** The groups in the order of the sheet. */
  void groups(Sheet sheet) throws IOException {
    json.writer().name("groups").beginArray();
    for (Sheet.Block block : sheet.blocks()) {
      if (block.run() != null) {
        for (Sheet.Group group : block.run().groups()) {
          group(group);
        }
      }
    }
    json.writer().endArray();
    json.texts("texts", List.copyOf(texts.keySet()));
  }

  private int placeOf(String text) {
    texts.putIfAbsent(text, texts.size());
    return texts.get(text);
  }

  private void group(Sheet.Group group) throws IOException {
    json.writer().beginObject();
    List<String> kinds = group.steps().stream().map(Sheet.StepLine::kind).toList();
    json.number("kinds", placeOf(String.join(" ", kinds)));
    json.numbers("at", group.writtenAt());
    json.writer().name("lines").beginArray();
    for (Sheet.Line line : group.lines()) {
      json.writer().beginObject();
      seconds("on", line.on());
      steps(group.steps(), line.steps());
      json.writer().endObject();
    }
    json.writer().endArray();
    json.writer().endObject();
  }

  /** In turn the place of a step, from 0, and that of its text; left out where there are none. */
  private void steps(List<Sheet.StepLine> shared, List<String> own) {
    List<Integer> steps = new ArrayList<>();
    for (int i = 0; i < own.size(); i++) {
      if (!own.get(i).equals(shared.get(i).text())) {
        steps.add(i);
        steps.add(placeOf(own.get(i)));
      }
    }
    if (!steps.isEmpty()) {
      json.numbers("steps", steps);
    }
  }

  /** Left out where there are none. */
  private void seconds(String name, @Nullable String printed) throws IOException {
    if (printed != null) {
      json.writer().name(name).jsonValue(printed.substring(0, printed.indexOf(' ')));
    }
  }
}
