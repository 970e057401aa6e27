package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.Seal;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.record.Deviation;
import passband.record.KeptFile;
import passband.record.RecordReader;
import passband.record.Repeat;
import passband.record.UsedInstrument;
import passband.record.VisitRecord;

/** A record of a visit as JSON, sealed, in the form of {@code record.schema.json}. */
public final class RecordJson {
  private RecordJson() {}

  /** The whole file. */
  public static String of(VisitRecord record) throws BadInput {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      file(json, record);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Seal.sealed(out + "\n");
  }

  private static void file(JsonWriter json, VisitRecord record) throws IOException, BadInput {
    json.beginObject();
    json.name("format").value(RecordReader.FORMAT);
    json.name("seal").value(Seal.OPEN);
    json.name("program").value(record.program());
    json.name("judged_on").value(record.judgedOn());
    texts(json, "particulars", record.particulars().said());
    json.name("overall").value(record.report().overall().word());
    ItemList.Source source = record.report().list().source();
    json.name("title").value(source.title());
    json.name("device").value(source.device());
    json.name("released").value(source.released());
    texts(json, "identity", record.identity());
    instruments(json, record);
    ids(json, "failed_as_found", record.failedAsFound());
    ids(json, "failed", record.failed());
    ids(json, "failed_before_repeat", record.repeats().stream().map(Repeat::last).toList());
    json.name("recorded").beginArray();
    for (Judgement judgement : record.report().judgements()) {
      recorded(json, judgement);
    }
    json.endArray();
    json.name("attempts").beginArray();
    for (Map.Entry<String, List<Readings.Row>> item : record.report().written().entrySet()) {
      for (Readings.Row row : item.getValue()) {
        attempt(json, item.getKey(), row);
      }
    }
    json.endArray();
    json.name("deviations").beginArray();
    for (Deviation deviation : record.deviations()) {
      json.beginObject();
      json.name("item").value(deviation.judgement().item().id());
      json.name("kind").value(deviation.kind().word());
      json.name("attempt").value(deviation.attempt());
      json.name("by").value(deviation.by());
      json.name("reason").value(deviation.reason());
      json.endObject();
    }
    json.endArray();
    json.name("result");
    JudgeJson.file(json, record.report());
    json.name("parts").beginObject();
    part(json, "limits", record.limits());
    part(json, "readings", record.readings());
    json.endObject();
    json.endObject();
  }

  private static void texts(JsonWriter json, String name, Map<String, String> texts)
      throws IOException {
    json.name(name).beginObject();
    for (Map.Entry<String, String> text : texts.entrySet()) {
      json.name(text.getKey()).value(text.getValue());
    }
    json.endObject();
  }

  private static void instruments(JsonWriter json, VisitRecord record) throws IOException {
    json.name("instruments").beginArray();
    for (UsedInstrument one : record.instruments()) {
      json.beginObject();
      json.name("role").value(one.role());
      json.name("name").value(one.name());
      json.name("serial").value(one.serial());
      json.name("due").value(one.due());
      json.name("certificate").value(one.certificate());
      json.endObject();
    }
    json.endArray();
  }

  private static void ids(JsonWriter json, String name, List<Judgement> judgements)
      throws IOException {
    json.name(name).beginArray();
    for (Judgement judgement : judgements) {
      json.value(judgement.item().id());
    }
    json.endArray();
  }

  /** Ambient values and the like: what was recorded in a unit. */
  private static void recorded(JsonWriter json, Judgement judgement) throws IOException {
    if (judgement.item() instanceof Item.Recorded blank && blank.unit() != null) {
      json.beginObject();
      json.name("id").value(blank.id());
      json.name("title").value(blank.head().title());
      json.name("value").value(judgement.value());
      json.name("unit").value(blank.unit());
      json.endObject();
    }
  }

  private static void attempt(JsonWriter json, String id, Readings.Row row) throws IOException {
    json.beginObject();
    json.name("item").value(id);
    json.name("attempt").value(row.attempt().isEmpty() ? "1" : row.attempt());
    json.name("written").value(row.reading());
    json.name("unit").value(row.unit());
    json.name("not_done").value(row.kind().equals("not-done"));
    json.name("by").value(row.notes().by());
    json.name("reason").value(row.notes().reason());
    json.name("remark").value(row.notes().remark());
    json.endObject();
  }

  private static void part(JsonWriter json, String name, KeptFile part)
      throws IOException, BadInput {
    json.name(name).beginObject();
    json.name("name").value(part.name());
    json.name("sha256").value(part.sha256());
    json.name("encoding").value(part.encoding().word());
    json.name("text").value(part.text());
    json.endObject();
  }
}
