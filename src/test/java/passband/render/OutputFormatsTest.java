package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.evidence.LimitsWriter;
import passband.testing.Repository;
import passband.testing.Sheets;

/**
 * What {@code build} wrote for the demo library, read back by other tools than those that wrote it.
 */
class OutputFormatsTest {
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
    String good = LimitsWriter.of(Evidence.of(Sheets.TEASEL).list());
    for (String bad :
        List.of(
            good.replace("passband-limits/7", "passband-limits/8"),
            good.replaceFirst("\"resolution\": [0-9.]+", "\"resolution\": 0"),
            good.replaceFirst("\"source\": \"[a-z]+\"", "\"source\": \"guess\""),
            good.replaceFirst("\"upper\": [0-9.]+", "\"upper\": \"12\""),
            good.replaceFirst("\"unit\"", "\"units\""))) {
      assertFalse(bad.equals(good));
      assertFalse(schema().validate(bad, InputFormat.JSON).isEmpty());
    }
  }

  /** Each row of the table is an item with limits, in the same order. */
  @Test
  void csvAndJsonSayTheSame() throws BadInput {
    for (Path csv : Repository.files(OUT, "limits.csv")) {
      ItemList list = LimitsReader.read(Repository.text(csv.resolveSibling("limits.json")));
      List<Item.Measured> items =
          list.items().stream()
              .filter(i -> i instanceof Item.Measured m && m.limits() != null)
              .map(i -> (Item.Measured) i)
              .toList();
      List<NamedCsvRecord> rows =
          CsvReader.builder().ofNamedCsvRecord(Repository.text(csv)).stream().toList();
      assertEquals(items.size(), rows.size());
      for (int i = 0; i < rows.size(); i++) {
        NamedCsvRecord row = rows.get(i);
        Item.Measured item = items.get(i);
        assertEquals(LimitsCsv.columns(), row.getHeader());
        assertEquals(list.source().digest(), row.getField("digest"));
        assertEquals(item.id(), row.getField("point"));
        assertEquals(item.scale().unit(), row.getField("unit"));
        assertSame("nominal", item.limits().nominal(), row);
        assertSame("lower", item.limits().lower(), row);
        assertSame("upper", item.limits().upper(), row);
        assertSame("accept_lower", item.limits().acceptLower(), row);
        assertSame("accept_upper", item.limits().acceptUpper(), row);
        assertSame("resolution", item.scale().resolution(), row);
        assertSame("uncertainty", item.limits().uncertainty(), row);
        assertSame("accuracy_ratio", item.limits().accuracyRatio(), row);
        assertSame("coverage_factor", list.decision().coverage(), row);
        assertEquals(list.source().date(), row.getField("revision_date"));
        assertEquals(list.source().device(), row.getField("device"));
        assertEquals(list.source().analyzers(), row.getField("analyzer"));
        assertEquals(Objects.requireNonNullElse(item.head().phase(), ""), row.getField("phase"));
        assertEquals(String.valueOf(item.scale().decimals()), row.getField("decimals"));
        assertEquals(
            item.where().extras().entrySet().stream()
                .map(e -> e.getKey() + "=" + e.getValue())
                .collect(Collectors.joining("; ")),
            row.getField("further_settings"));
      }
    }
  }

  private static void assertSame(String name, BigDecimal value, NamedCsvRecord row) {
    String cell = row.getField(name);
    if (value == null) {
      assertEquals("", cell, name);
    } else {
      assertEquals(0, new BigDecimal(cell).compareTo(value), name);
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
      assertEquals(6, metadata.getAsJsonArray("dc:description").size());
      assertEquals("", metadata.get("null").getAsString());
      JsonObject schema = metadata.getAsJsonObject("tableSchema");
      List<String> names = new ArrayList<>();
      schema
          .getAsJsonArray("columns")
          .forEach(c -> names.add(c.getAsJsonObject().get("name").getAsString()));
      assertEquals(LimitsCsv.columns(), names);
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
    String shape =
        switch (datatype(column)) {
          case "decimal" -> "-?[0-9]+(\\.[0-9]+)?";
          case "integer" -> "[0-9]+";
          case "date" -> "\\d{4}-\\d{2}-\\d{2}";
          default -> "(?s).*";
        };
    assertTrue(cell.isEmpty() || cell.matches(shape), column + ": " + cell);
    assertEquals(
        datatype(column).equals("decimal") || datatype(column).equals("integer"),
        column.has("schema:unitText"),
        "every number has a unit, no word has one: " + column);
  }

  private static String datatype(JsonObject column) {
    JsonElement datatype = column.get("datatype");
    return datatype.isJsonObject()
        ? datatype.getAsJsonObject().get("base").getAsString()
        : datatype.getAsString();
  }

  /** What a reader has to know who has the table alone. */
  @Test
  void theMetadataSayHowAcceptanceFollows() {
    String simple = LimitsMetadata.of(Evidence.of(Sheets.TEASEL).list());
    assertTrue(simple.contains("Limits are inclusive"));
    assertTrue(simple.contains("A blank limit means that this side has no limit"));
    assertTrue(simple.contains("simple acceptance, limits included"), simple);
    assertTrue(simple.contains("coverage factor k = 2"), simple);
  }

  @Test
  void theReviewerReadsEveryAllowWithItsReason() {
    String sheet = Checklist.of(Sheets.YARROW);
    String part = sheet.substring(sheet.indexOf("id=allowed"));
    assertTrue(part.contains("[load-off-rated]"), part);
    assertTrue(part.contains("carve-curve"), part);
    assertTrue(part.contains("taken on both sides of the rated load"), part);
    assertFalse(
        Checklist.of(Sheets.TEASEL).contains("id=allowed"),
        "a sheet without any says nothing of them");
  }
}
