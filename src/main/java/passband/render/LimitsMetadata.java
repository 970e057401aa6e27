package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;
import passband.plan.Plan;

/**
 * {@code limits.csv-metadata.json}: what the columns of {@code limits.csv} hold (W3C, Metadata
 * Vocabulary for Tabular Data, 2015).
 */
public final class LimitsMetadata {
  private static final Map<String, String> DATATYPES =
      Map.of(
          "setting", "decimal",
          "load", "decimal",
          "nominal", "decimal",
          "lower", "decimal",
          "upper", "decimal",
          "accept_lower", "decimal",
          "accept_upper", "decimal",
          "resolution", "decimal",
          "uncertainty", "decimal",
          "accuracy_ratio", "decimal");

  private static final Map<String, String> TITLES =
      Map.ofEntries(
          Map.entry("procedure", "Procedure"),
          Map.entry("revision", "Revision"),
          Map.entry("point", "Identity of the test point"),
          Map.entry("test", "Test"),
          Map.entry("outlet", "Outlet"),
          Map.entry("mode", "Mode"),
          Map.entry("setting", "Setting"),
          Map.entry("setting_unit", "Unit of the setting (UCUM)"),
          Map.entry("load", "Load"),
          Map.entry("load_unit", "Unit of the load (UCUM)"),
          Map.entry("quantity", "Quantity read"),
          Map.entry("unit", "Unit of the reading (UCUM)"),
          Map.entry("nominal", "Nominal value, six significant digits"),
          Map.entry("lower", "Lower tolerance limit, rounded inward"),
          Map.entry("upper", "Upper tolerance limit, rounded inward"),
          Map.entry("accept_lower", "Lower acceptance limit"),
          Map.entry("accept_upper", "Upper acceptance limit"),
          Map.entry("resolution", "Resolution of the reading"),
          Map.entry(
              "uncertainty", "Expanded uncertainty of the reading, the larger of the two ends"),
          Map.entry("accuracy_ratio", "Accuracy ratio"),
          Map.entry("decision", "Decision rule"),
          Map.entry("source", "Where the limits come from"),
          Map.entry("digest", "Digest of the compiled procedure (SHA-256)"));

  private LimitsMetadata() {}

  /** The whole file. */
  public static String of(Plan plan) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("@context").value("http://www.w3.org/ns/csvw");
      json.name("url").value("limits.csv");
      json.name("dc:title").value(plan.title() + ": limits");
      json.name("dialect").beginObject();
      json.name("encoding").value("utf-8");
      json.name("lineTerminators").value("\n");
      json.name("header").value(true);
      json.endObject();
      json.name("tableSchema").beginObject();
      json.name("columns").beginArray();
      for (String column : LimitsCsv.COLUMNS) {
        column(json, column);
      }
      json.endArray();
      json.name("primaryKey").value("point");
      json.endObject();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void column(JsonWriter json, String name) throws IOException {
    json.beginObject();
    json.name("name").value(name);
    json.name("titles").value(name);
    json.name("dc:description").value(TITLES.get(name));
    json.name("datatype").value(DATATYPES.getOrDefault(name, "string"));
    if (name.equals("point")
        || name.equals("quantity")
        || name.equals("digest")
        || name.equals("procedure")) {
      json.name("required").value(true);
    }
    json.endObject();
  }
}
