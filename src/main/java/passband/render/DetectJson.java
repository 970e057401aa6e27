package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.detect.Chance;
import passband.detect.Detection;
import passband.detect.Gain;
import passband.detect.Masked;
import passband.detect.Place;
import passband.detect.Proposal;

/** Writes what procedures catch as JSON, one by one, in the form of {@code detect.schema.json}. */
public final class DetectJson {
  private static final MathContext SIX = new MathContext(6);

  private final Writer out;
  private final JsonWriter json;

  /** Begins the file; {@link #end} ends it. */
  public DetectJson(OutputStream stream) throws IOException {
    out = new OutputStreamWriter(stream, StandardCharsets.UTF_8);
    json = new JsonWriter(out);
    json.setFormattingStyle(FormattingStyle.PRETTY);
    json.beginObject();
    json.name("format").value("passband-detect/3");
    List<String> assumed = new ArrayList<>(DetectWords.ENGLISH.assumed());
    assumed.add("False fails: " + DetectReport.SHARE);
    JudgeJson.texts(json, "assumptions", assumed);
    json.name("procedures").beginArray();
  }

  /** The end of the file; the stream stays open. */
  public void end() throws IOException {
    json.endArray();
    json.endObject();
    out.write("\n");
    out.flush();
  }

  /** What the next procedure catches. */
  public void add(Detection detection) throws IOException {
    json.beginObject();
    json.name("procedure").value(detection.plan().name().text());
    json.name("revision").value(detection.plan().revision().label());
    json.name("digest").value(detection.plan().digest());
    json.name("readings").value(detection.readings());
    JudgeJson.texts(json, "notes", DetectWords.ENGLISH.notes(detection));
    JudgeJson.texts(json, "not_read", detection.untested());
    json.name("faults").beginArray();
    for (Detection.Finding finding : detection.findings()) {
      finding(json, finding);
    }
    json.endArray();
    json.name("gains").beginArray();
    for (Gain gain : detection.gains()) {
      gain(json, gain);
    }
    json.endArray();
    json.name("false_fail").beginArray();
    for (Detection.FalseFail fail : detection.falseFails()) {
      json.beginObject();
      json.name("share").value(number(fail.share()));
      json.name("low");
      chance(json, fail.low());
      json.name("high");
      chance(json, fail.high());
      json.endObject();
    }
    json.endArray();
    json.name("masked").beginArray();
    for (Masked one : detection.masked()) {
      masked(json, one);
    }
    json.endArray();
    JudgeJson.texts(
        json, "adds_nothing", detection.idle().stream().map(Detection.IdleRow::point).toList());
    json.endObject();
  }

  private static void finding(JsonWriter json, Detection.Finding finding) throws IOException {
    json.beginObject();
    json.name("fault").value(finding.fault().id());
    json.name("who").value(finding.fault().who());
    json.name("name").value(finding.fault().name());
    json.name("size").value(finding.size().text().isEmpty() ? null : finding.size().text());
    json.name("where").value(finding.where().isEmpty() ? null : finding.where());
    json.name("outcome").value(finding.outcome().word());
    json.name("power").value(number(finding.power().value()));
    json.name("proof").value(finding.power().proof().word());
    Proposal proposal = finding.proposal();
    json.name("cheapest_row").value(proposal == null ? null : proposal.text());
    json.name("add");
    if (proposal == null) {
      json.nullValue();
    } else {
      add(json, proposal);
    }
    json.name("source").value(finding.fault().source());
    json.endObject();
  }

  private static void add(JsonWriter json, Proposal proposal) throws IOException {
    json.beginObject();
    json.name("test").value(proposal.test());
    json.name("inside").value(proposal.inside());
    json.name("seconds").value(Math.round(proposal.seconds()));
    JudgeJson.texts(json, "lines", proposal.lines());
    json.endObject();
  }

  private static void masked(JsonWriter json, Masked one) throws IOException {
    json.beginObject();
    json.name("fault").value(one.bench().id());
    json.name("size").value(one.size().text().isEmpty() ? null : one.size().text());
    place(json, one.place(), one.load());
    json.name("gain").value(number(one.gain()));
    json.name("power").value(number(one.power().value()));
    json.name("proof").value(one.power().proof().word());
    json.endObject();
  }

  private static void gain(JsonWriter json, Gain gain) throws IOException {
    json.beginObject();
    place(json, gain.place(), gain.load());
    json.name("rows").value(gain.rows());
    json.name("detectable_low").value(number(gain.low()));
    json.name("detectable_high").value(number(gain.high()));
    json.name("detectable_low_if_ranges_share").value(number(gain.shared()));
    json.name("tolerance_low").value(number(gain.toleranceLow()));
    json.name("tolerance_high").value(number(gain.toleranceHigh()));
    json.name("expanded_uncertainty").value(number(gain.expanded()));
    json.name("curve").beginArray();
    for (Gain.At at : gain.curve()) {
      json.beginObject();
      json.name("gain").value(number(at.gain()));
      json.name("power").value(number(at.power()));
      json.name("power_if_ranges_share").value(number(at.shared()));
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  private static void place(JsonWriter json, Place place, String load) throws IOException {
    json.name("mode").value(place.mode());
    json.name("outlet").value(place.outlet().equals("-") ? null : place.outlet());
    json.name("load").value(load.isEmpty() ? null : load);
  }

  private static void chance(JsonWriter json, Chance chance) throws IOException {
    json.beginObject();
    json.name("power").value(number(chance.value()));
    json.name("proof").value(chance.proof().word());
    json.endObject();
  }

  /** Six significant digits; null for none and for what has no end. */
  private static @Nullable Number number(@Nullable Double value) {
    if (value == null || value.isNaN() || value.isInfinite()) {
      return null;
    }
    BigDecimal rounded = new BigDecimal(value).round(SIX).stripTrailingZeros();
    return rounded.signum() == 0 ? BigDecimal.ZERO : new BigDecimal(rounded.toPlainString());
  }
}
