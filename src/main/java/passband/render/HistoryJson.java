package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import passband.evidence.ItemList;
import passband.judge.History;

/** A generator's drift as JSON, in the form of {@code history.schema.json}. */
public final class HistoryJson {
  private static final MathContext SIX = new MathContext(6);

  private HistoryJson() {}

  /**
   * The whole file.
   *
   * @param list the latest limits
   * @param intervalDays until the next test
   */
  public static String of(ItemList list, History history, long intervalDays) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value("passband-history/4");
      json.name("procedure").value(list.source().procedure());
      json.name("revision").value(list.source().revision());
      json.name("digest").value(list.source().digest());
      json.name("device").value(history.device());
      json.name("serial").value(history.serial());
      json.name("interval_days").value(intervalDays);
      json.name("dates").beginArray();
      for (LocalDate date : history.dates()) {
        json.value(date.toString());
      }
      json.endArray();
      json.name("points").beginArray();
      for (History.Drift drift : history.drifts()) {
        point(json, drift);
      }
      json.endArray();
      json.name("warnings").beginArray();
      for (History.Drift drift : history.drifts()) {
        if (drift.crosses()) {
          warning(json, drift);
        }
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void point(JsonWriter json, History.Drift drift) throws IOException {
    json.beginObject();
    json.name("id").value(drift.limit().id());
    json.name("unit").value(drift.limit().scale().unit());
    json.name("accept_lower").value(drift.limits().acceptLower());
    json.name("accept_upper").value(drift.limits().acceptUpper());
    json.name("readings").beginArray();
    for (BigDecimal reading : drift.readings()) {
      json.value(reading);
    }
    json.endArray();
    number(json, "per_year", drift.perYear());
    number(json, "per_year_error", drift.perYearError());
    number(json, "expected", drift.expected());
    number(json, "expected_half_width", drift.halfWidth());
    json.name("days_inside");
    if (drift.inside() < 0) {
      json.nullValue();
    } else {
      json.value(drift.inside());
    }
    json.name("crosses").value(drift.crosses());
    json.endObject();
  }

  /** Which limit the line crosses before the next test, and where it will be by then. */
  private static void warning(JsonWriter json, History.Drift drift) throws IOException {
    BigDecimal low = drift.limits().acceptLower();
    double half = Double.isNaN(drift.halfWidth()) ? 0 : drift.halfWidth();
    boolean below = low != null && drift.expected() - half < low.doubleValue();
    json.beginObject();
    json.name("code").value(below ? "below-limit" : "above-limit");
    json.name("item").value(drift.limit().id());
    number(json, "expected", drift.expected());
    number(json, "half_width", drift.halfWidth());
    json.name("limit").value(below ? low : drift.limits().acceptUpper());
    json.name("unit").value(drift.limit().scale().unit());
    json.endObject();
  }

  /** Six significant digits; null for NaN. */
  static void number(JsonWriter json, String name, double value) throws IOException {
    json.name(name);
    if (Double.isNaN(value)) {
      json.nullValue();
    } else {
      json.value(new BigDecimal(value).round(SIX));
    }
  }
}
