package passband.record;

import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.Seal;

/**
 * What a record says of its visit, as far as many records are put together. Its seal is checked; it
 * is not judged again.
 *
 * @param file where it was found
 * @param seal of the record
 * @param readings digest of the readings that it holds
 * @param serial of the generator
 * @param date of the readings
 * @param failedAsFound identities of the items that failed before anything was adjusted
 * @param instruments that were used; one that was changed during the visit, or whose serial number
 *     was written again, with each number that was written
 * @param values of what was measured, by identity, in the sheet's order
 * @param names what the sheet calls what was measured, by identity; none where its limits cannot be
 *     read
 */
public record RecordSummary(
    String file,
    String seal,
    String readings,
    Visit visit,
    String serial,
    LocalDate date,
    String overall,
    List<String> failedAsFound,
    List<UsedInstrument> instruments,
    List<Measured> values,
    Map<String, String> names) {

  /** What the sheet calls an item; its identity where that is not known. */
  public String name(String id) {
    return names.getOrDefault(id, id);
  }

  /** By which procedure. */
  public record Visit(String device, String procedure, String revision, List<String> phases) {}

  /**
   * A value that was judged.
   *
   * @param phase null where the procedure has none
   * @param step of its last digit
   * @param lower what is accepted; NaN where that side is open, likewise {@code upper}
   */
  public record Measured(
      String id,
      @Nullable String phase,
      double value,
      double step,
      String unit,
      double lower,
      double upper) {}

  /** Reads one file. */
  public static RecordSummary read(String file, byte[] bytes) throws BadInput {
    return read(file, bytes, new SheetNames());
  }

  /**
   * Reads a file.
   *
   * @param names of the sheets that were read before
   * @throws BadInput when it is no record, was changed after it was written, or does not say whose
   *     it is
   */
  public static RecordSummary read(String file, byte[] bytes, SheetNames names) throws BadInput {
    Fields fields = new Fields();
    try (JsonReader json =
        new JsonReader(
            new InputStreamReader(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8))) {
      fields.read(json);
    } catch (IOException | IllegalStateException | NumberFormatException e) {
      throw new BadInput("this is not a record, or it is damaged");
    }
    Seal.check(bytes);
    return fields.summary(file, names);
  }

  /** How the name of the blank for an instrument's serial number ends, after its role. */
  private static final String SERIAL = "-serial";

  /** What is found in a file, in whatever order it stands. */
  private static final class Fields {
    private String format = "";
    private String seal = "";
    private String device = "";
    private String overall = "";
    private String procedure = "";
    private String revision = "";
    private String readings = "";
    private String limits = "";
    private final List<String> phases = new ArrayList<>();
    private final Map<String, String> identity = new LinkedHashMap<>();
    private final List<String> failedAsFound = new ArrayList<>();
    private final Map<String, @Nullable String> failed = new LinkedHashMap<>();
    private final List<UsedInstrument> instruments = new ArrayList<>();
    private final Map<String, Set<String>> written = new HashMap<>();
    private final List<Measured> values = new ArrayList<>();

    void read(JsonReader json) throws IOException, BadInput {
      Set<String> said = new HashSet<>();
      json.beginObject();
      while (json.hasNext()) {
        String name = json.nextName();
        if (!said.add(name)) {
          throw new BadInput("it says '" + name + "' twice");
        }
        switch (name) {
          case "format" -> {
            format = json.nextString();
            ofThisFormat();
          }
          case "seal" -> seal = json.nextString();
          case "device" -> device = json.nextString();
          case "overall" -> overall = json.nextString();
          case "identity" -> texts(json).forEach((k, v) -> identity.put(k, v == null ? "" : v));
          case "instruments" -> instruments(json);
          case "attempts" -> attempts(json);
          case "result" -> result(json);
          case "parts" -> parts(json);
          default -> json.skipValue();
        }
      }
      json.endObject();
      ofThisFormat();
    }

    private void ofThisFormat() throws BadInput {
      if (!RecordReader.isKnown(format)) {
        throw new BadInput(
            format.isEmpty()
                ? "this is not a record"
                : "this is not a record of today's format, but '" + format + "'");
      }
    }

    private void instruments(JsonReader json) throws IOException {
      json.beginArray();
      while (json.hasNext()) {
        Map<String, @Nullable String> one = texts(json);
        instruments.add(
            new UsedInstrument(
                String.valueOf(one.get("role")),
                String.valueOf(one.get("name")),
                one.get("serial"),
                one.get("due"),
                one.get("certificate")));
      }
      json.endArray();
    }

    /** Whatever was ever written as the serial number of an instrument. */
    private void attempts(JsonReader json) throws IOException {
      json.beginArray();
      while (json.hasNext()) {
        String item = "";
        String reading = "";
        json.beginObject();
        while (json.hasNext()) {
          switch (json.nextName()) {
            case "item" -> item = json.nextString();
            case "written" -> reading = json.nextString();
            default -> json.skipValue();
          }
        }
        json.endObject();
        if (item.startsWith(Item.SHEET) && item.endsWith(SERIAL)) {
          String role = item.substring(Item.SHEET.length(), item.length() - SERIAL.length());
          written.computeIfAbsent(role, r -> new LinkedHashSet<>()).add(reading);
        }
      }
      json.endArray();
    }

    /** The instruments, with what was written before the last. */
    private List<UsedInstrument> used() {
      List<UsedInstrument> used = new ArrayList<>();
      for (UsedInstrument one : instruments) {
        used.add(one);
        for (String serial : written.getOrDefault(one.role(), Set.of())) {
          if (!serial.isEmpty() && !serial.equals(one.serial())) {
            used.add(new UsedInstrument(one.role(), one.name(), serial, null, null));
          }
        }
      }
      return List.copyOf(used);
    }

    private void result(JsonReader json) throws IOException {
      json.beginObject();
      while (json.hasNext()) {
        switch (json.nextName()) {
          case "procedure" -> procedure = json.nextString();
          case "revision" -> revision = json.nextString();
          case "phases" -> phases.addAll(texts(json).keySet());
          case "items" -> {
            json.beginArray();
            while (json.hasNext()) {
              item(json);
            }
            json.endArray();
          }
          default -> json.skipValue();
        }
      }
      json.endObject();
    }

    private void item(JsonReader json) throws IOException {
      String id = "";
      String phase = null;
      String unit = "";
      String verdict = "";
      BigDecimal value = null;
      double lower = Double.NaN;
      double upper = Double.NaN;
      json.beginObject();
      while (json.hasNext()) {
        switch (json.nextName()) {
          case "id" -> id = json.nextString();
          case "phase" -> phase = text(json);
          case "verdict" -> verdict = json.nextString();
          case "unit" -> {
            String own = text(json);
            unit = own == null ? "" : own;
          }
          case "value" -> {
            String number = text(json);
            value = number == null ? null : new BigDecimal(number);
          }
          case "accept_lower" -> lower = number(json);
          case "accept_upper" -> upper = number(json);
          default -> json.skipValue();
        }
      }
      json.endObject();
      if (verdict.equals("fail")) {
        failed.put(id, phase);
      }
      boolean judged = verdict.equals("pass") || verdict.equals("fail");
      if (judged && value != null && !(Double.isNaN(lower) && Double.isNaN(upper))) {
        double step = value.ulp().doubleValue();
        values.add(new Measured(id, phase, value.doubleValue(), step, unit, lower, upper));
      }
    }

    private void parts(JsonReader json) throws IOException {
      json.beginObject();
      while (json.hasNext()) {
        String part = json.nextName();
        json.beginObject();
        while (json.hasNext()) {
          switch (part + " " + json.nextName()) {
            case "readings sha256" -> readings = json.nextString();
            case "limits text" -> limits = json.nextString();
            default -> json.skipValue();
          }
        }
        json.endObject();
      }
      json.endObject();
    }

    RecordSummary summary(String file, SheetNames names) throws BadInput {
      failed.forEach(
          (id, phase) -> {
            if (phase == null || phases.indexOf(phase) == 0) {
              failedAsFound.add(id);
            }
          });
      String serial = identity.getOrDefault("generator-serial", "").strip();
      if (Blank.isFiller(serial)) {
        throw new BadInput("it does not give the generator's serial number");
      }
      return new RecordSummary(
          file,
          seal,
          readings,
          new Visit(device, procedure, revision, List.copyOf(phases)),
          serial,
          day(identity.getOrDefault("date", "")),
          overall,
          List.copyOf(failedAsFound),
          used(),
          List.copyOf(values),
          names.of(limits));
    }

    private static LocalDate day(String text) throws BadInput {
      try {
        return LocalDate.parse(text.strip());
      } catch (DateTimeException e) {
        throw new BadInput("it does not give the date of the readings");
      }
    }

    private static Map<String, @Nullable String> texts(JsonReader json) throws IOException {
      Map<String, @Nullable String> texts = new LinkedHashMap<>();
      json.beginObject();
      while (json.hasNext()) {
        texts.put(json.nextName(), text(json));
      }
      json.endObject();
      return texts;
    }

    private static @Nullable String text(JsonReader json) throws IOException {
      if (json.peek() == JsonToken.NULL) {
        json.nextNull();
        return null;
      }
      return json.nextString();
    }

    private static double number(JsonReader json) throws IOException {
      if (json.peek() == JsonToken.NULL) {
        json.nextNull();
        return Double.NaN;
      }
      return json.nextDouble();
    }
  }
}
