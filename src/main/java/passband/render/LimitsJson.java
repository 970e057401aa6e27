package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import passband.limit.Limit;
import passband.limit.Uncertainty;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;

/**
 * {@code limits.json}, in the form of {@code limits.schema.json}: numbers as numbers, null for an
 * open side.
 */
public final class LimitsJson {
  private LimitsJson() {}

  /** The whole file. */
  public static String of(Plan plan) {
    return of(plan, LimitRow.of(plan));
  }

  /** The whole file from rows that are made already. */
  public static String of(Plan plan, List<LimitRow> rows) {
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
      List<Limit> limits = plan.limits();
      Map<String, String> formulas = formulas(plan);
      for (int i = 0; i < rows.size(); i++) {
        point(json, rows.get(i), limits.get(i), formulas);
      }
      json.endArray();
      json.name("readings").beginArray();
      for (Point point : plan.points()) {
        for (Point.Reading reading : point.readings()) {
          reading(json, reading);
        }
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  /** The formulas of derived quantities by test and name. */
  private static Map<String, String> formulas(Plan plan) {
    Map<String, String> formulas = new HashMap<>();
    for (Stage.Run run : plan.runs()) {
      run.derives().forEach(d -> formulas.put(run.test().text() + "/" + d.name(), d.formula()));
    }
    return formulas;
  }

  /** What is read for a derived quantity and has no limits of its own. */
  private static void reading(JsonWriter json, Point.Reading reading) throws IOException {
    json.beginObject();
    json.name("point").value(reading.id());
    json.name("quantity").value(reading.quantity());
    json.name("unit").value(reading.unit().ucum());
    json.name("resolution").value(plain(Real.of(reading.resolution()), reading.unit()));
    json.endObject();
  }

  private static BigDecimal plain(Real si, Unit unit) {
    BigDecimal value =
        si.over(Real.of(unit.factor())).toDecimal(12, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return value.scale() < 0 ? value.setScale(0) : value;
  }

  /**
   * What the uncertainty is made of: at a reading y each part's half-width is {@code relative}·|y|
   * + {@code absolute}, rectangular.
   */
  private static void budget(JsonWriter json, Limit limit) throws IOException {
    json.name("budget");
    if (limit.uncertainty() == null) {
      json.nullValue();
      return;
    }
    Uncertainty u = limit.uncertainty();
    json.beginArray();
    part(json, "analyzer error", u.error().relative(), u.error().absolute(), limit.unit());
    part(json, "resolution", Rational.ZERO, u.resolution().over(Rational.TWO), limit.unit());
    part(json, "load error", u.load(), Rational.ZERO, limit.unit());
    json.endArray();
  }

  private static void part(
      JsonWriter json, String name, Rational relative, Rational absolute, Unit unit)
      throws IOException {
    if (relative.isZero() && absolute.isZero()) {
      return;
    }
    json.beginObject();
    json.name("component").value(name);
    json.name("relative").value(plain(Real.of(relative), Unit.ONE));
    json.name("absolute").value(plain(Real.of(absolute), unit));
    json.endObject();
  }

  private static void point(JsonWriter json, LimitRow r, Limit limit, Map<String, String> formulas)
      throws IOException {
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
    json.name("derived").value(formulas.get(r.test() + "/" + r.quantity()));
    budget(json, limit);
    json.endObject();
  }

  private static void number(JsonWriter json, String name, String plain) throws IOException {
    json.name(name).value(plain == null ? null : new BigDecimal(plain));
  }
}
