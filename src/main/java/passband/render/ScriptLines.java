package passband.render;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the script of the sheet shows beside one line at a time: the kinds of the steps of each
 * group and at which of them its boxes are written, and of each line its times and the steps that
 * are not worded as those of the group.
 */
final class ScriptLines {
  private final JsonWriter json;

  ScriptLines(JsonWriter json) {
    this.json = json;
  }

  /** The groups in the order of the sheet. */
  void groups(Sheet sheet) throws IOException {
    json.name("groups").beginArray();
    for (Sheet.Block block : sheet.blocks()) {
      if (block.run() != null) {
        for (Sheet.Group group : block.run().groups()) {
          group(group);
        }
      }
    }
    json.endArray();
  }

  private void group(Sheet.Group group) throws IOException {
    json.beginObject();
    json.name("kinds").beginArray();
    for (Sheet.StepLine step : group.steps()) {
      json.value(step.kind());
    }
    json.endArray();
    json.name("at").beginArray();
    for (int place : group.writtenAt()) {
      json.value(place);
    }
    json.endArray();
    json.name("lines").beginArray();
    for (Sheet.Line line : group.lines()) {
      json.beginObject();
      seconds("on", line.on());
      steps(group.steps(), line.steps());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  /** By place, from 0. */
  private void steps(List<Sheet.StepLine> shared, List<String> own) throws IOException {
    json.name("steps").beginObject();
    for (int i = 0; i < own.size(); i++) {
      if (!own.get(i).equals(shared.get(i).text())) {
        json.name(Integer.toString(i)).value(own.get(i));
      }
    }
    json.endObject();
  }

  /** Left out where there are none. */
  private void seconds(String name, @Nullable String printed) throws IOException {
    if (printed != null) {
      json.name(name).jsonValue(printed.substring(0, printed.indexOf(' ')));
    }
  }
}
