package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;
import passband.testing.Sheets;

/**
 * What {@code build} wrote for the demo library, read back by other tools than those that wrote it.
 */
class OutputFormatsTest {
  /** What a table has no room for. */
  private static final Set<String> ONLY_JSON = Set.of("derived", "budget");

  private static final Path OUT = Repository.ROOT.resolve("out");

  private static Schema schema() throws IOException {
    try (var in =
        OutputFormatsTest.class.getResourceAsStream("/passband/render/limits.schema.json")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(text, InputFormat.JSON);
    }
  }

  @Test
  void limitsJsonFitsItsSchema() throws IOException {
    List<Path> files = Repository.files(OUT, "limits.json");
    assertTrue(files.size() >= 2);
    for (Path file : files) {
      assertEquals(
          List.of(), schema().validate(Repository.text(file), InputFormat.JSON), file.toString());
    }
  }

  @Test
  void theSchemaRefusesWhatItShould() throws IOException {
    String good = LimitsJson.of(Sheets.TEASEL);
    for (String bad :
        List.of(
            good.replace("passband-limits/1", "passband-limits/2"),
            good.replaceFirst("\"resolution\": [0-9.]+", "\"resolution\": 0"),
            good.replaceFirst("\"source\": \"[a-z]+\"", "\"source\": \"guess\""),
            good.replaceFirst("\"upper\": [0-9.]+", "\"upper\": \"12\""),
            good.replaceFirst("\"unit\"", "\"units\""))) {
      assertFalse(bad.equals(good));
      assertFalse(schema().validate(bad, InputFormat.JSON).isEmpty());
    }
  }

  @Test
  void csvAndJsonSayTheSame() {
    for (Path csv : Repository.files(OUT, "limits.csv")) {
      JsonObject json =
          JsonParser.parseString(Repository.text(csv.resolveSibling("limits.json")))
              .getAsJsonObject();
      JsonArray points = json.getAsJsonArray("points");
      List<NamedCsvRecord> rows =
          CsvReader.builder().ofNamedCsvRecord(Repository.text(csv)).stream().toList();
      assertEquals(points.size(), rows.size());
      for (int i = 0; i < rows.size(); i++) {
        NamedCsvRecord row = rows.get(i);
        assertEquals(LimitsCsv.COLUMNS, row.getHeader());
        assertEquals(json.get("digest").getAsString(), row.getField("digest"));
        points.get(i).getAsJsonObject().entrySet().stream()
            .filter(e -> !ONLY_JSON.contains(e.getKey()))
            .forEach(e -> assertSame(e.getKey(), e.getValue(), row));
      }
    }
  }

  private static void assertSame(String name, JsonElement value, NamedCsvRecord row) {
    String cell = row.getField(name);
    if (value.isJsonNull()) {
      assertEquals("", cell, name);
    } else if (value.getAsJsonPrimitive().isNumber()) {
      assertEquals(0, new BigDecimal(cell).compareTo(value.getAsBigDecimal()), name);
    } else {
      assertEquals(cell, value.getAsString(), name);
    }
  }

  /**
   * W3C, Model for Tabular Data and Metadata on the Web (2015): cells are valid by their column's
   * datatype, the primary key is unique.
   */
  @Test
  void csvFitsItsMetadata() {
    for (Path csv : Repository.files(OUT, "limits.csv")) {
      JsonObject metadata =
          JsonParser.parseString(Repository.text(csv.resolveSibling("limits.csv-metadata.json")))
              .getAsJsonObject();
      assertEquals("http://www.w3.org/ns/csvw", metadata.get("@context").getAsString());
      assertEquals("limits.csv", metadata.get("url").getAsString());
      JsonObject schema = metadata.getAsJsonObject("tableSchema");
      List<String> names = new ArrayList<>();
      schema
          .getAsJsonArray("columns")
          .forEach(c -> names.add(c.getAsJsonObject().get("name").getAsString()));
      assertEquals(LimitsCsv.COLUMNS, names);
      Set<String> keys = new HashSet<>();
      for (NamedCsvRecord row : CsvReader.builder().ofNamedCsvRecord(Repository.text(csv))) {
        assertTrue(keys.add(row.getField(schema.get("primaryKey").getAsString())), row.toString());
        schema.getAsJsonArray("columns").forEach(c -> assertCell(c.getAsJsonObject(), row));
      }
    }
  }

  private static void assertCell(JsonObject column, NamedCsvRecord row) {
    String cell = row.getField(column.get("name").getAsString());
    boolean required = column.has("required") && column.get("required").getAsBoolean();
    assertFalse(required && cell.isEmpty(), column + " of " + row);
    if (column.get("datatype").getAsString().equals("decimal") && !cell.isEmpty()) {
      assertTrue(cell.matches("-?[0-9]+(\\.[0-9]+)?"), cell);
    }
  }

  @Test
  void theReviewerReadsEveryAllowWithItsReason() {
    String sheet = Checklist.of(Sheets.YARROW);
    String part = sheet.substring(sheet.indexOf("id=\"allowed\""));
    assertTrue(part.contains("[load-off-rated]"), part);
    assertTrue(part.contains("carve-curve"), part);
    assertTrue(part.contains("taken on both sides of the rated load"), part);
    assertFalse(
        Checklist.of(Sheets.TEASEL).contains("id=\"allowed\""),
        "a sheet without any says nothing of them");
  }
}
