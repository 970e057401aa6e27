package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import passband.judge.Budget;
import passband.judge.Judgement;
import passband.judge.LimitTable;
import passband.judge.PointLimit;
import passband.judge.Report;
import passband.judge.Verdict;

/** Verdicts as text and JSON, and the lines that the printed report is made of. */
public final class JudgeReport {
  private JudgeReport() {}

  /** For a terminal. */
  public static String text(Report report) {
    StringBuilder out = new StringBuilder(title(report) + ": " + report.overall().word() + "\n");
    report
        .phases()
        .forEach((phase, verdict) -> out.append("  " + phase + ": " + verdict.word() + "\n"));
    out.append("  " + rule(report.table()) + "\n");
    report.warnings().forEach(w -> out.append("  warning: " + w + "\n"));
    report
        .readings()
        .records()
        .forEach((name, text) -> out.append("  " + name + " = " + text + "\n"));
    for (Judgement j : report.judgements()) {
      out.append(j.verdict().word().toUpperCase(java.util.Locale.ROOT))
          .append("  " + j.limit().id() + ": " + reading(j) + ", accepted " + j.limit().accepted())
          .append(uncertainty(j).isEmpty() ? "" : ", U = " + uncertainty(j))
          .append(conformity(j).isEmpty() ? "" : ", conforms with P = " + conformity(j))
          .append(j.why().isEmpty() ? "" : " (" + j.why() + ")")
          .append('\n');
    }
    return out.toString();
  }

  /** The procedure with its revision and digest. */
  public static String title(Report report) {
    LimitTable table = report.table();
    return table.procedure()
        + ", revision "
        + table.revision()
        + " ("
        + table.digest().substring(0, 12)
        + ")";
  }

  /**
   * The decision rule with its risk, as ISO/IEC 17025:2017, 7.8.6 asks: what may happen to a value
   * that lies on a limit.
   */
  public static String rule(LimitTable table) {
    String decision = table.points().isEmpty() ? "simple" : table.points().get(0).decision();
    double k = table.coverage().doubleValue();
    String coverage = "U is expanded by k = " + table.coverage().toPlainString();
    if (decision.equals("simple")) {
      return "decision rule: simple acceptance, limits included; a value on a limit is wrongly accepted with a probability of up to "
          + percent(Budget.risk(0))
          + "; "
          + coverage;
    }
    String risk =
        decision.equals("guarded") ? percent(Budget.risk(k)) : decision.substring("risk ".length());
    String guard =
        decision.equals("guarded")
            ? "limits moved inward by U"
            : "limits moved inward until that risk is kept";
    return "decision rule: guarded acceptance, "
        + guard
        + ", limits included; a value on a tolerance limit is wrongly accepted with a probability of up to "
        + risk
        + "; "
        + coverage;
  }

  private static String percent(double share) {
    return new BigDecimal(share * 100)
            .round(new MathContext(2, RoundingMode.UP))
            .stripTrailingZeros()
            .toPlainString()
        + " %";
  }

  /** A space and the unit as printed; nothing for a plain number. */
  /** Every attempt with the unit; what was not read in words. */
  public static String reading(Judgement j) {
    return j.readings().isEmpty()
        ? "not read"
        : String.join(", then ", j.readings()) + j.limit().shownUnit();
  }

  /** The expanded uncertainty to two significant digits, rounded up (JCGM 100, 7.2.6). */
  public static String uncertainty(Judgement j) {
    return Double.isNaN(j.uncertainty())
        ? ""
        : new BigDecimal(j.uncertainty()).round(new MathContext(2, RoundingMode.UP)).toPlainString()
            + j.limit().shownUnit();
  }

  /** The probability of conformity to three decimals, rounded down. */
  public static String conformity(Judgement j) {
    return Double.isNaN(j.conformity())
        ? ""
        : new BigDecimal(j.conformity()).setScale(3, RoundingMode.DOWN).toPlainString();
  }

  /** What the uncertainty of each kind of reading is made of, in words. */
  public static List<String> budget(PointLimit limit) {
    List<String> parts = new ArrayList<>();
    if (limit.budget() != null) {
      for (PointLimit.Part part : limit.budget()) {
        String relative =
            part.relative().signum() == 0
                ? ""
                : part.relative().movePointRight(2).stripTrailingZeros().toPlainString()
                    + " % of reading";
        String absolute =
            part.absolute().signum() == 0
                ? ""
                : part.absolute().toPlainString() + limit.shownUnit();
        String plus = relative.isEmpty() || absolute.isEmpty() ? "" : " + ";
        parts.add(part.name() + ": \u00b1(" + relative + plus + absolute + "), rectangular");
      }
    }
    return parts;
  }

  /** For other programs: {@code {"format":"passband-verdicts/1",…}}. */
  public static String json(Report report) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value("passband-verdicts/1");
      json.name("procedure").value(report.table().procedure());
      json.name("revision").value(report.table().revision());
      json.name("digest").value(report.table().digest());
      json.name("overall").value(report.overall().word());
      json.name("phases").beginObject();
      for (Map.Entry<String, Verdict> phase : report.phases().entrySet()) {
        json.name(phase.getKey()).value(phase.getValue().word());
      }
      json.endObject();
      json.name("decision_rule").value(rule(report.table()));
      json.name("warnings").beginArray();
      for (String warning : report.warnings()) {
        json.value(warning);
      }
      json.endArray();
      json.name("records").beginObject();
      for (Map.Entry<String, String> record : report.readings().records().entrySet()) {
        json.name(record.getKey()).value(record.getValue());
      }
      json.endObject();
      json.name("points").beginArray();
      for (Judgement j : report.judgements()) {
        point(json, j);
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void point(JsonWriter json, Judgement j) throws IOException {
    json.beginObject();
    json.name("point").value(j.limit().id());
    json.name("phase").value(j.phase().isEmpty() ? null : j.phase());
    json.name("readings").beginArray();
    for (String reading : j.readings()) {
      json.value(reading);
    }
    json.endArray();
    json.name("unit").value(j.limit().unit());
    json.name("verdict").value(j.verdict().word());
    json.name("why").value(j.why().isEmpty() ? null : j.why());
    json.name("accept_lower").value(j.limit().acceptLower());
    json.name("accept_upper").value(j.limit().acceptUpper());
    number(json, "uncertainty", j.uncertainty());
    number(json, "conformity", j.conformity());
    number(json, "wrong_acceptance", j.verdict() == Verdict.PASS ? 1 - j.conformity() : Double.NaN);
    json.endObject();
  }

  private static void number(JsonWriter json, String name, double value) throws IOException {
    json.name(name);
    if (Double.isNaN(value)) {
      json.nullValue();
    } else {
      json.value(new BigDecimal(value).round(new MathContext(6)));
    }
  }
}
