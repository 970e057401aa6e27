package passband.diagnostic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.testing.Examples;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Diagnostics as JSON and as SARIF, the latter against the OASIS schema of SARIF 2.1.0. */
class ReportsTest {
  private static final Schema SARIF = sarifSchema();

  private static Schema sarifSchema() {
    try (var in = ReportsTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7)
          .getSchema(text, InputFormat.JSON);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  static Stream<Path> cases() {
    return Repository.files(Repository.ROOT.resolve("src/test/resources/cases"), "fires.pband")
        .stream();
  }

  private static Snippet compiled(Path file) throws IOException {
    return Examples.compile(Files.readAllBytes(file));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void sarifIsValidAndComplete(Path file) throws IOException {
    List<Diagnostic> diagnostics = compiled(file).diagnostics();
    String sarif = SarifReport.of(diagnostics, "1.0");
    assertEquals(List.of(), SARIF.validate(sarif, InputFormat.JSON));
    JsonObject run =
        JsonParser.parseString(sarif)
            .getAsJsonObject()
            .getAsJsonArray("runs")
            .get(0)
            .getAsJsonObject();
    JsonArray results = run.getAsJsonArray("results");
    JsonArray rules = run.getAsJsonObject("tool").getAsJsonObject("driver").getAsJsonArray("rules");
    assertEquals(diagnostics.size(), results.size());
    for (JsonElement rule : rules) { // what GitHub asks of a rule, at most 1,024 characters of it
      String full =
          rule.getAsJsonObject().getAsJsonObject("fullDescription").get("text").getAsString();
      assertTrue(full.contains(".") && full.length() <= 1024 && !full.contains("\n"), full);
    }
    Set<String> fingerprints = new HashSet<>();
    for (int i = 0; i < results.size(); i++) {
      JsonObject result = results.get(i).getAsJsonObject();
      String rule =
          rules.get(result.get("ruleIndex").getAsInt()).getAsJsonObject().get("id").getAsString();
      assertEquals(diagnostics.get(i).code().id(), rule);
      assertTrue(
          fingerprints.add(
              result.getAsJsonObject("partialFingerprints").get("passband/v1").getAsString()));
    }
  }

  @Test
  void theSchemaIsNoRubberStamp() throws IOException {
    String sarif = SarifReport.of(compiled(cases().findFirst().orElseThrow()).diagnostics(), "1.0");
    assertFalse(
        SARIF
            .validate(
                sarif.replace("\"version\": \"2.1.0\"", "\"version\": \"2.2.0\""), InputFormat.JSON)
            .isEmpty());
    assertFalse(
        SARIF
            .validate(sarif.replace("\"startLine\": ", "\"startLine\": -"), InputFormat.JSON)
            .isEmpty());
    assertEquals(List.of(), SARIF.validate(SarifReport.of(List.of(), "1.0"), InputFormat.JSON));
  }

  private static List<String> fingerprints(String source) {
    List<String> found = new ArrayList<>();
    String sarif = SarifReport.of(Snippet.compile(source).diagnostics(), "1.0");
    JsonParser.parseString(sarif)
        .getAsJsonObject()
        .getAsJsonArray("runs")
        .get(0)
        .getAsJsonObject()
        .getAsJsonArray("results")
        .forEach(
            r ->
                found.add(
                    r.getAsJsonObject()
                        .getAsJsonObject("partialFingerprints")
                        .get("passband/v1")
                        .getAsString()));
    return found;
  }

  @Test
  void fingerprintsOutliveMovesAndTellTwinsApart() {
    String source =
        "device d \"D\" {\n  mode a \"A\" on x { }\n  mode b \"B\" on x { }\n  mode c \"C\" on x { }\n}\n";
    List<String> before = fingerprints(source);
    assertTrue(before.size() >= 3);
    assertEquals(before.size(), new HashSet<>(before).size());
    assertEquals(before, fingerprints("# moved\n\n\n" + source.replace("  mode", "      mode")));
    assertNotEquals(before, fingerprints(source.replace(" on x", " on y")));
  }

  @Test
  void pathsBecomeUris() {
    Diagnostics diagnostics = new Diagnostics();
    var file = new passband.source.SourceFile("a b/Ω%.pband", "x");
    diagnostics.say(Code.SYNTAX, new passband.source.Span(file, 0, 1), "wrong");
    assertTrue(
        SarifReport.of(diagnostics.list(), "1.0").contains("\"uri\": \"a%20b/%CE%A9%25.pband\""));
  }

  @Test
  void jsonTellsPlacesHintsAndNotes() throws IOException {
    Path file = Repository.ROOT.resolve("src/test/resources/cases/stated-looser/fires.pband");
    JsonObject json =
        JsonParser.parseString(JsonReport.of(Examples.relevant(compiled(file), Code.STATED_LOOSER)))
            .getAsJsonObject();
    assertEquals("passband-diagnostics/2", json.get("format").getAsString());
    assertEquals(1, json.get("errors").getAsInt());
    assertEquals(0, json.get("warnings").getAsInt());
    JsonObject one = json.getAsJsonArray("diagnostics").get(0).getAsJsonObject();
    assertEquals("stated-looser", one.get("code").getAsString());
    assertEquals("error", one.get("severity").getAsString());
    assertEquals("main.pband", one.get("path").getAsString());
    assertEquals(19, one.get("line").getAsInt());
    assertEquals(25, one.get("column").getAsInt());
    assertEquals(19, one.get("end_line").getAsInt());
    assertEquals(28, one.get("end_column").getAsInt());
    assertEquals("the computed limit, rounded inward, is 413 mA", one.get("hint").getAsString());
    assertEquals(16, one.getAsJsonArray("notes").get(0).getAsJsonObject().get("line").getAsInt());
    assertEquals("413", one.get("replacement").getAsString());
    JsonObject fix = one.getAsJsonArray("fixes").get(0).getAsJsonObject();
    assertEquals("write '413'", fix.get("title").getAsString());
    assertFalse(fix.get("preferred").getAsBoolean());
    JsonObject edit = fix.getAsJsonArray("edits").get(0).getAsJsonObject();
    assertEquals("413", edit.get("text").getAsString());
    assertEquals(25, edit.get("column").getAsInt());
  }
}
