package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.bench.BenchState.Change;
import passband.bench.Moment;
import passband.bench.Walk;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;

/** The steps of a sheet in order, each with what it changes on the bench. */
public final class StepsReport {
  private static final String FORMAT = "passband-steps/1";
  private static final String UNKNOWN = "?";

  private StepsReport() {}

  /** For people: a step a line, and what it changes indented below. */
  public static String text(Plan plan) {
    StringBuilder out = new StringBuilder();
    out.append(plan.name()).append(", revision ").append(plan.revision().label()).append('\n');
    String place = "";
    String point = null;
    for (Moment moment : Walk.of(plan, new Diagnostics())) {
      if (!moment.place().equals(place)) {
        place = moment.place();
        out.append('\n').append(place).append('\n');
      }
      if (moment.point() != null && !moment.point().equals(point)) {
        out.append("  ").append(moment.point()).append('\n');
      }
      point = moment.point();
      out.append("    ").append(pad(moment.kind())).append(moment.text()).append('\n');
      changes(moment, out);
    }
    return out.toString();
  }

  private static String pad(String kind) {
    return kind + " ".repeat(Math.max(1, 10 - kind.length()));
  }

  private static void changes(Moment moment, StringBuilder out) {
    List<String> words = new ArrayList<>();
    for (Change change : moment.before().changes(moment.after())) {
      words.add(change.what().words() + ": " + known(change.was()) + " → " + known(change.now()));
    }
    if (!words.isEmpty()) {
      out.append(" ".repeat(14)).append(String.join("; ", words)).append('\n');
    }
  }

  private static String known(@Nullable String value) {
    return value == null ? UNKNOWN : value;
  }

  /** For programs, in the form of {@code steps.schema.json}; null where something is unknown. */
  public static String json(List<Plan> plans) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value(FORMAT);
      json.name("procedures").beginArray();
      for (Plan plan : plans) {
        procedure(json, plan);
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void procedure(JsonWriter json, Plan plan) throws IOException {
    json.beginObject();
    json.name("procedure").value(plan.name().text());
    json.name("revision").value(plan.revision().label());
    json.name("digest").value(plan.digest());
    json.name("steps").beginArray();
    for (Moment moment : Walk.of(plan, new Diagnostics())) {
      step(json, moment);
    }
    json.endArray();
    json.endObject();
  }

  private static void step(JsonWriter json, Moment moment) throws IOException {
    json.beginObject();
    json.name("place").value(moment.place());
    json.name("point").value(moment.point());
    json.name("kind").value(moment.kind());
    json.name("text").value(moment.text());
    json.name("changes").beginArray();
    for (Change change : moment.before().changes(moment.after())) {
      json.beginObject();
      json.name("what").value(change.what().words());
      json.name("was").value(change.was());
      json.name("now").value(change.now());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }
}
