package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.check.Coverage;
import passband.plan.Plan;

/**
 * What a procedure tests of its device: modes on their outlets, low, middle and high, as a table in
 * text and as JSON in the form of {@code coverage.schema.json}.
 */
public record CoverageReport(String procedure, String device, List<Coverage.Cell> cells) {
  private static final List<String> HEAD = List.of("mode", "outlet", "low", "middle", "high");

  /** Of a procedure. */
  public static CoverageReport of(Plan plan) {
    return new CoverageReport(
        plan.name().text(), plan.device().name().text(), Coverage.cells(plan));
  }

  /** For other programs. */
  public static String json(List<CoverageReport> reports) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value("passband-coverage/1");
      json.name("procedures").beginArray();
      for (CoverageReport report : reports) {
        report.write(json);
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private void write(JsonWriter json) throws IOException {
    json.beginObject();
    json.name("procedure").value(procedure);
    json.name("device").value(device);
    json.name("modes").beginArray();
    for (Coverage.Cell cell : cells) {
      json.beginObject();
      json.name("mode").value(cell.mode().name().text());
      json.name("outlet").value(cell.outlet().name().text());
      json.name("tested").value(cell.tested());
      settings(json, "low", cell.low());
      settings(json, "middle", cell.middle());
      settings(json, "high", cell.high());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  private static void settings(JsonWriter json, String name, @Nullable List<String> settings)
      throws IOException {
    json.name(name);
    if (settings == null) {
      json.nullValue();
      return;
    }
    json.beginArray();
    for (String setting : settings) {
      json.value(setting);
    }
    json.endArray();
  }

  /** For a terminal. */
  public String text() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(HEAD);
    for (Coverage.Cell cell : cells) {
      rows.add(
          List.of(
              cell.mode().name().text(),
              cell.outlet().name().text(),
              text(cell, cell.low()),
              text(cell, cell.middle()),
              text(cell, cell.high())));
    }
    StringBuilder out = new StringBuilder(procedure + ": coverage of " + device + "\n");
    int[] widths = new int[rows.get(0).size()];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = width(rows, i);
    }
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder("  ");
      for (int i = 0; i < row.size(); i++) {
        line.append(row.get(i)).append(" ".repeat(widths[i] - row.get(i).length() + 2));
      }
      out.append(line.toString().stripTrailing()).append('\n');
    }
    return out.toString();
  }

  private static String text(Coverage.Cell cell, @Nullable List<String> settings) {
    if (!cell.tested()) {
      return "MISSING";
    }
    return settings == null
        ? "tested"
        : settings.isEmpty() ? "MISSING" : String.join(", ", settings);
  }

  private static int width(List<List<String>> rows, int column) {
    return rows.stream().mapToInt(r -> r.get(column).length()).max().orElse(0);
  }
}
