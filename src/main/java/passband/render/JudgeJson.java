package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Cause;
import passband.judge.Judgement;
import passband.judge.Report;
import passband.judge.Statement;
import passband.judge.Verdict;
import passband.quantity.Rational;

/** Verdicts as JSON, in the form of {@code verdicts.schema.json}. */
final class JudgeJson {
  private static final String FORMAT = "passband-verdicts/6";

  private JudgeJson() {}

  static String of(Report report) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      file(json, report);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  /** Writes the whole file as a value. */
  static void file(JsonWriter json, Report report) throws IOException {
    ItemList.Source source = report.list().source();
    json.beginObject();
    json.name("format").value(FORMAT);
    json.name("procedure").value(source.procedure());
    json.name("revision").value(source.revision());
    json.name("digest").value(source.digest());
    json.name("overall").value(report.overall().word());
    json.name("phases").beginObject();
    for (Map.Entry<String, Verdict> phase : report.phases().entrySet()) {
      json.name(phase.getKey()).value(phase.getValue().word());
    }
    json.endObject();
    texts(json, "superseded", report.superseded().stream().map(j -> j.item().id()).toList());
    ItemList.Decision decision = report.list().decision();
    json.name("decision").beginObject();
    json.name("rule").value(decision.rule());
    json.name("coverage_factor").value(decision.coverage());
    json.name("risk").value(decision.risk());
    json.endObject();
    causes(json, "warnings", report.warnings());
    json.name("items").beginArray();
    for (Judgement judgement : report.judgements()) {
      item(json, judgement);
    }
    json.endArray();
    json.endObject();
  }

  /** A member that is a list of texts. */
  static void texts(JsonWriter json, String name, List<String> texts) throws IOException {
    json.name(name).beginArray();
    for (String text : texts) {
      json.value(text);
    }
    json.endArray();
  }

  private static void item(JsonWriter json, Judgement j) throws IOException {
    json.beginObject();
    json.name("id").value(j.item().id());
    json.name("phase").value(j.item().head().phase());
    json.name("verdict").value(j.verdict().word());
    causes(json, "causes", j.causes());
    texts(json, "attempts", j.attempts());
    Item.Accepts limits = accepts(j.item());
    json.name("value").value(j.value());
    json.name("unit").value(unit(j.item()));
    json.name("accept_lower").value(limits == null ? null : limits.lower());
    json.name("accept_upper").value(limits == null ? null : limits.upper());
    HistoryJson.number(json, "uncertainty", j.uncertainty());
    Rational factor = Double.isNaN(j.uncertainty()) ? null : j.factor();
    HistoryJson.number(json, "coverage_factor", factor == null ? Double.NaN : factor.doubleValue());
    json.name("degrees_of_freedom").value(j.freedom());
    HistoryJson.number(json, "conformity", j.conformity());
    Statement statement = j.statement();
    json.name("statement").value(statement == null ? null : statement.word());
    json.endObject();
  }

  private static void causes(JsonWriter json, String name, List<Cause> causes) throws IOException {
    json.name(name).beginArray();
    for (Cause cause : causes) {
      json.beginObject();
      json.name("code").value(cause.code().word());
      json.name("text").value(cause.text());
      json.name("item").value(cause.item());
      json.name("part").value(cause.part());
      json.name("number").value(cause.number());
      json.name("unit").value(cause.unit());
      json.name("written").value(cause.written());
      json.name("note").value(cause.note());
      Cause.Place place = cause.place();
      json.name("line").value(place == null ? null : place.line());
      json.name("column").value(place == null ? null : place.column());
      json.endObject();
    }
    json.endArray();
  }

  private static Item.@Nullable Accepts accepts(Item item) {
    Item.Limits limits = item instanceof Item.Measured m ? m.limits() : null;
    return limits != null
        ? new Item.Accepts(limits.acceptLower(), limits.acceptUpper())
        : item instanceof Item.Recorded r ? r.accepts() : null;
  }

  private static @Nullable String unit(Item item) {
    return item instanceof Item.Measured m
        ? m.scale().unit()
        : item instanceof Item.Recorded r ? r.unit() : null;
  }
}
