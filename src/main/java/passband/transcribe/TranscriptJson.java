package passband.transcribe;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.jspecify.annotations.Nullable;

/** What was found in a table as JSON, by the schema {@code transcript}. */
public final class TranscriptJson {
  private TranscriptJson() {}

  /**
   * The whole document.
   *
   * @param table the table's file as it was given
   * @param written the draft's file
   */
  public static String of(Transcript transcript, String table, String written) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value("passband-transcript/1");
      json.name("table").value(table);
      json.name("draft").value(written);
      json.name("modes").beginArray();
      for (ModeFinding mode : transcript.found().modes()) {
        mode(json, transcript, mode);
      }
      json.endArray();
      json.name("to_settle").beginArray();
      for (String one : transcript.draft().toSettle()) {
        json.value(one);
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void mode(JsonWriter json, Transcript transcript, ModeFinding mode)
      throws IOException {
    RuleWords words = new RuleWords(transcript.found().table());
    json.beginObject();
    json.name("mode").value(transcript.found().table().title(mode.mode()));
    json.name("settled").value(mode.settled());
    json.name("limits").value(transcript.draft().isStated(mode.mode()) ? "stated" : "rule");
    json.name("rule");
    rule(json, words, mode.rule());
    json.name("others").beginArray();
    for (Rule other : mode.others()) {
      rule(json, words, other);
    }
    json.endArray();
    json.name("rows").beginArray();
    for (RowFinding one : mode.differing()) {
      row(json, transcript, words, one);
    }
    json.endArray();
    json.endObject();
  }

  private static void rule(JsonWriter json, RuleWords words, @Nullable Rule rule)
      throws IOException {
    if (rule == null) {
      json.nullValue();
      return;
    }
    json.beginObject();
    json.name("limit").value(words.limit(rule));
    json.name("nominal").value(word(rule.basis().nominal()));
    json.name("rounding").value(word(rule.basis().rounding()));
    json.endObject();
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static void row(JsonWriter json, Transcript transcript, RuleWords words, RowFinding one)
      throws IOException {
    json.beginObject();
    json.name("line").value(one.row().line());
    json.name("slip").value(word(one.slip()));
    json.name("printed").value(words.printed(one.row()));
    json.name("meant").value(words.meant(one));
    json.name("unit").value(transcript.found().table().readUnit().symbol());
    json.name("instead").value(words.instead(one));
    json.endObject();
  }
}
