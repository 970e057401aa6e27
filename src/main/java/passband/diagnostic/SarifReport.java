package passband.diagnostic;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.source.Sha256;
import passband.source.Span;

/** Diagnostics as SARIF 2.1.0 (OASIS Standard, 2020). */
public final class SarifReport {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json";

  private SarifReport() {}

  /**
   * The whole log: one run, its rules those of the codes that occur.
   *
   * @param version this program's
   */
  public static String of(List<Diagnostic> diagnostics, String version) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("$schema").value(SCHEMA);
      json.name("version").value("2.1.0");
      json.name("runs").beginArray().beginObject();
      List<Code> codes = codes(diagnostics);
      tool(json, version, codes);
      json.name("columnKind").value("unicodeCodePoints");
      json.name("results").beginArray();
      Map<String, Integer> seen = new HashMap<>();
      for (Diagnostic diagnostic : diagnostics) {
        result(json, diagnostic, codes.indexOf(diagnostic.code()), seen);
      }
      json.endArray();
      json.endObject().endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static List<Code> codes(List<Diagnostic> diagnostics) {
    List<Code> codes = new ArrayList<>();
    for (Code code : Code.values()) {
      if (diagnostics.stream().anyMatch(d -> d.code() == code)) {
        codes.add(code);
      }
    }
    return codes;
  }

  private static void tool(JsonWriter json, String version, List<Code> codes) throws IOException {
    json.name("tool").beginObject().name("driver").beginObject();
    json.name("name").value("Passband");
    json.name("version").value(version);
    json.name("informationUri").value("urn:passband");
    json.name("rules").beginArray();
    for (Code code : codes) {
      json.beginObject();
      json.name("id").value(code.id());
      text(json, "shortDescription", code.title());
      text(json, "fullDescription", Explanations.what(code));
      json.name("help").beginObject();
      json.name("text").value(Explanations.page(code));
      json.name("markdown").value(Explanations.page(code));
      json.endObject();
      json.name("defaultConfiguration").beginObject().name("level").value(level(code)).endObject();
      json.name("properties").beginObject();
      json.name("allowable").value(code.allowable());
      json.endObject();
      json.endObject();
    }
    json.endArray();
    json.endObject().endObject();
  }

  private static String level(Code code) {
    return code.severity() == Severity.ERROR ? "error" : "warning";
  }

  private static void text(JsonWriter json, String name, String text) throws IOException {
    json.name(name).beginObject().name("text").value(text).endObject();
  }

  private static void result(
      JsonWriter json, Diagnostic diagnostic, int rule, Map<String, Integer> seen)
      throws IOException {
    json.beginObject();
    json.name("ruleId").value(diagnostic.code().id());
    json.name("ruleIndex").value(rule);
    json.name("level").value(level(diagnostic.code()));
    text(
        json,
        "message",
        diagnostic.hint() == null
            ? diagnostic.message()
            : diagnostic.message() + " (" + diagnostic.hint() + ")");
    json.name("locations").beginArray();
    location(json, diagnostic.span(), null, 0);
    json.endArray();
    if (!diagnostic.notes().isEmpty()) {
      json.name("relatedLocations").beginArray();
      int id = 1;
      for (Diagnostic.Note note : diagnostic.notes()) {
        location(json, note.span(), note.message(), id++);
      }
      json.endArray();
    }
    json.name("partialFingerprints").beginObject();
    json.name("passband/v1").value(fingerprint(diagnostic, seen));
    json.endObject();
    fixes(json, diagnostic);
    json.endObject();
  }

  private static void location(JsonWriter json, Span span, @Nullable String message, int id)
      throws IOException {
    json.beginObject();
    if (message != null) {
      json.name("id").value(id);
      text(json, "message", message);
    }
    json.name("physicalLocation").beginObject();
    artifact(json, span);
    region(json, "region", span);
    json.endObject();
    json.endObject();
  }

  private static void artifact(JsonWriter json, Span span) throws IOException {
    json.name("artifactLocation")
        .beginObject()
        .name("uri")
        .value(uri(span.file().path()))
        .endObject();
  }

  private static void region(JsonWriter json, String name, Span span) throws IOException {
    json.name(name).beginObject();
    json.name("startLine").value(span.line());
    json.name("startColumn").value(span.column());
    json.name("endLine").value(span.file().lineOf(span.end()));
    json.name("endColumn").value(span.file().columnOf(span.end()));
    json.endObject();
  }

  private static void fixes(JsonWriter json, Diagnostic diagnostic) throws IOException {
    if (diagnostic.fixes().isEmpty()) {
      return;
    }
    json.name("fixes").beginArray();
    for (Fix fix : diagnostic.fixes()) {
      json.beginObject();
      text(json, "description", fix.title());
      json.name("artifactChanges").beginArray();
      for (List<Fix.Edit> edits : byFile(fix)) {
        json.beginObject();
        artifact(json, edits.get(0).span());
        json.name("replacements").beginArray();
        for (Fix.Edit edit : edits) {
          json.beginObject();
          region(json, "deletedRegion", edit.span());
          text(json, "insertedContent", edit.text());
          json.endObject();
        }
        json.endArray().endObject();
      }
      json.endArray().endObject();
    }
    json.endArray();
  }

  private static Collection<List<Fix.Edit>> byFile(Fix fix) {
    Map<String, List<Fix.Edit>> files = new LinkedHashMap<>();
    for (Fix.Edit edit : fix.edits()) {
      files.computeIfAbsent(edit.span().file().path(), p -> new ArrayList<>()).add(edit);
    }
    return files.values();
  }

  /**
   * A path as a relative URI reference (RFC 3986): what is not unreserved is escaped, byte by byte.
   */
  private static String uri(String path) {
    StringBuilder uri = new StringBuilder();
    for (byte b : path.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xFF);
      boolean plain =
          (c >= 'a' && c <= 'z')
              || (c >= 'A' && c <= 'Z')
              || (c >= '0' && c <= '9')
              || "-._~/".indexOf(c) >= 0;
      uri.append(plain ? String.valueOf(c) : String.format(Locale.ROOT, "%%%02X", (int) c));
    }
    return uri.toString();
  }

  /**
   * Stays the same when lines move: made from the code, the file, the words marked and the line
   * they stand in, its spaces folded; of equal ones, counted.
   */
  private static String fingerprint(Diagnostic diagnostic, Map<String, Integer> seen) {
    Span span = diagnostic.span();
    String line = span.file().line(span.line()).strip().replaceAll("\\s+", " ");
    String base =
        String.join(
            "\n",
            diagnostic.code().id(),
            span.file().path(),
            span.text().replaceAll("\\s+", " "),
            line);
    int count = seen.merge(base, 1, Integer::sum);
    return Sha256.hex((base + "\n" + count).getBytes(StandardCharsets.UTF_8)).substring(0, 32);
  }
}
