package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import passband.plan.Plan;

/**
 * {@code limits.json}, in the form of {@code limits.schema.json}: numbers as numbers, null for an
 * open side.
 */
public final class LimitsJson {
  private LimitsJson() {}

  /** The whole file. */
  public static String of(Plan plan) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value("passband-limits/1");
      json.name("procedure").value(plan.name().text());
      json.name("revision").value(plan.revision().label());
      json.name("digest").value(plan.digest());
      json.name("device").value(plan.device().name().text());
      json.name("analyzer").value(plan.analyzer().name().text());
      json.name("coverage_factor").value(new BigDecimal(plan.decision().coverage().toPlain()));
      json.name("points").beginArray();
      for (LimitRow row : LimitRow.of(plan)) {
        point(json, row);
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void point(JsonWriter json, LimitRow r) throws IOException {
    json.beginObject();
    json.name("point").value(r.point());
    json.name("test").value(r.test());
    json.name("outlet").value(r.outlet());
    json.name("mode").value(r.mode());
    number(json, "setting", r.setting());
    json.name("setting_unit").value(r.settingUnit());
    number(json, "load", r.load());
    json.name("load_unit").value(r.loadUnit());
    json.name("quantity").value(r.quantity());
    json.name("unit").value(r.unit());
    number(json, "nominal", r.nominal());
    number(json, "lower", r.lower());
    number(json, "upper", r.upper());
    number(json, "accept_lower", r.acceptLower());
    number(json, "accept_upper", r.acceptUpper());
    number(json, "resolution", r.resolution());
    number(json, "uncertainty", r.uncertainty());
    number(json, "accuracy_ratio", r.accuracyRatio());
    json.name("decision").value(r.decision());
    json.name("source").value(r.source());
    json.endObject();
  }

  private static void number(JsonWriter json, String name, String plain) throws IOException {
    json.name(name).value(plain == null ? null : new BigDecimal(plain));
  }
}
