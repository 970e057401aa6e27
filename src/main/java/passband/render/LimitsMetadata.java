package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import passband.evidence.ItemList;

/**
 * {@code limits.csv-metadata.json}: what {@code limits.csv} and its columns hold (W3C, Metadata
 * Vocabulary for Tabular Data, 2015).
 */
public final class LimitsMetadata {
  private LimitsMetadata() {}

  /** The whole file. */
  public static String of(ItemList list) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("@context").value("http://www.w3.org/ns/csvw");
      json.name("url").value("limits.csv");
      json.name("dc:title").value(list.source().title() + ": limits");
      json.name("dc:description").beginArray();
      for (String note : LimitColumn.notes(list)) {
        json.value(note);
      }
      json.endArray();
      json.name("dialect").beginObject();
      json.name("encoding").value("utf-8");
      json.name("lineTerminators").value("\n");
      json.name("delimiter").value(",");
      json.name("header").value(true);
      json.endObject();
      json.name("null").value("");
      json.name("tableSchema").beginObject();
      json.name("columns").beginArray();
      for (LimitColumn column : LimitColumn.ALL) {
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

  private static void column(JsonWriter json, LimitColumn column) throws IOException {
    json.beginObject();
    json.name("name").value(column.name());
    json.name("titles").value(column.name());
    json.name("dc:description").value(column.description());
    if (!column.unit().isEmpty()) {
      json.name("schema:unitText").value(column.unit());
    }
    datatype(json, column.type());
    if (column.required()) {
      json.name("required").value(true);
    }
    json.endObject();
  }

  /** Decimals have a point and no grouping, whatever a reader's own locale has. */
  private static void datatype(JsonWriter json, LimitColumn.Type type) throws IOException {
    json.name("datatype");
    if (type != LimitColumn.Type.DECIMAL) {
      json.value(type.datatype());
      return;
    }
    json.beginObject();
    json.name("base").value(type.datatype());
    json.name("format").beginObject();
    json.name("decimalChar").value(".");
    json.endObject();
    json.endObject();
  }
}
