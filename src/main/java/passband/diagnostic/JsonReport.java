package passband.diagnostic;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import passband.source.Span;

/**
 * Diagnostics as JSON: {@code
 * {"format":"passband-diagnostics/2","errors":…,"warnings":…,"diagnostics":[…]}}. Lines and columns
 * count from 1, columns in code points; {@code end_line} and {@code end_column} are just after the
 * span. Each of a diagnostic's {@code fixes} is a title and texts to put in the place of spans.
 */
public final class JsonReport {
  private JsonReport() {}

  /** The whole document. */
  public static String of(List<Diagnostic> diagnostics) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      long errors = diagnostics.stream().filter(Diagnostic::isError).count();
      json.beginObject();
      json.name("format").value("passband-diagnostics/2");
      json.name("errors").value(errors);
      json.name("warnings").value(diagnostics.size() - errors);
      json.name("diagnostics").beginArray();
      for (Diagnostic diagnostic : diagnostics) {
        write(json, diagnostic);
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void write(JsonWriter json, Diagnostic diagnostic) throws IOException {
    json.beginObject();
    json.name("code").value(diagnostic.code().id());
    json.name("severity").value(diagnostic.code().severity().word());
    json.name("allowable").value(diagnostic.code().allowable());
    json.name("message").value(diagnostic.message());
    place(json, diagnostic.span());
    json.name("hint").value(diagnostic.hint());
    json.name("replacement").value(diagnostic.replacement());
    json.name("notes").beginArray();
    for (Diagnostic.Note note : diagnostic.notes()) {
      json.beginObject();
      json.name("message").value(note.message());
      place(json, note.span());
      json.endObject();
    }
    json.endArray();
    json.name("fixes").beginArray();
    for (Fix fix : diagnostic.fixes()) {
      write(json, fix);
    }
    json.endArray();
    json.endObject();
  }

  private static void write(JsonWriter json, Fix fix) throws IOException {
    json.beginObject();
    json.name("title").value(fix.title());
    json.name("preferred").value(fix.preferred());
    json.name("edits").beginArray();
    for (Fix.Edit edit : fix.edits()) {
      json.beginObject();
      place(json, edit.span());
      json.name("text").value(edit.text());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  /** Writes where a span begins and ends, into an object that is begun. */
  public static void place(JsonWriter json, Span span) throws IOException {
    json.name("path").value(span.file().path());
    json.name("line").value(span.line());
    json.name("column").value(span.column());
    json.name("end_line").value(span.file().lineOf(span.end()));
    json.name("end_column").value(span.file().columnOf(span.end()));
  }
}
