package passband.judge;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import passband.evidence.BadInput;

/**
 * The limits of one compiled procedure, as {@code limits.json} or {@code limits.csv} has them.
 *
 * @param coverage the factor k of the expanded uncertainties
 * @param readings quantities that are read for derived ones
 */
public record LimitTable(
    String procedure,
    String revision,
    String digest,
    String device,
    String analyzer,
    BigDecimal coverage,
    List<PointLimit> points,
    List<PointLimit> readings) {

  /** Reads either form, told by its first character. */
  public static LimitTable parse(String text) throws BadInput {
    try {
      return text.stripLeading().startsWith("{") ? ofJson(text) : ofCsv(text);
    } catch (JsonParseException
        | IllegalStateException
        | NumberFormatException
        | NullPointerException
        | UnsupportedOperationException
        | NoSuchElementException
        | CsvParseException e) {
      throw new BadInput("it is no table of limits: " + e.getMessage());
    }
  }

  private static LimitTable ofJson(String text) throws BadInput {
    JsonObject json = JsonParser.parseString(text).getAsJsonObject();
    if (!"passband-limits/1".equals(string(json, "format"))) {
      throw new BadInput("it is not of the format passband-limits/1");
    }
    List<PointLimit> points = new ArrayList<>();
    json.getAsJsonArray("points").forEach(p -> points.add(point(p.getAsJsonObject())));
    List<PointLimit> readings = new ArrayList<>();
    if (json.has("readings")) {
      json.getAsJsonArray("readings").forEach(p -> readings.add(point(p.getAsJsonObject())));
    }
    return new LimitTable(
        string(json, "procedure"),
        string(json, "revision"),
        string(json, "digest"),
        string(json, "device"),
        string(json, "analyzer"),
        number(json, "coverage_factor"),
        points,
        readings);
  }

  private static PointLimit point(JsonObject json) {
    List<PointLimit.Part> budget = null;
    if (json.has("budget") && !json.get("budget").isJsonNull()) {
      budget = new ArrayList<>();
      for (JsonElement part : json.getAsJsonArray("budget")) {
        JsonObject one = part.getAsJsonObject();
        budget.add(
            new PointLimit.Part(
                string(one, "component"), number(one, "relative"), number(one, "absolute")));
      }
    }
    return new PointLimit(
        string(json, "point"),
        string(json, "quantity"),
        string(json, "unit"),
        number(json, "setting"),
        string(json, "setting_unit"),
        number(json, "load"),
        string(json, "load_unit"),
        number(json, "lower"),
        number(json, "upper"),
        number(json, "accept_lower"),
        number(json, "accept_upper"),
        number(json, "resolution"),
        number(json, "uncertainty"),
        string(json, "decision"),
        string(json, "derived"),
        budget);
  }

  private static String string(JsonObject json, String name) {
    return !json.has(name) || json.get(name).isJsonNull() ? null : json.get(name).getAsString();
  }

  private static BigDecimal number(JsonObject json, String name) {
    return !json.has(name) || json.get(name).isJsonNull() ? null : json.get(name).getAsBigDecimal();
  }

  private static LimitTable ofCsv(String text) throws BadInput {
    List<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(text).stream().toList();
    if (rows.isEmpty()) {
      throw new BadInput("it has no rows");
    }
    List<PointLimit> points = new ArrayList<>();
    for (NamedCsvRecord row : rows) {
      points.add(
          new PointLimit(
              Cell.read(row.getField("point")),
              Cell.read(row.getField("quantity")),
              Cell.read(row.getField("unit")),
              number(row, "setting"),
              Cell.read(row.getField("setting_unit")),
              number(row, "load"),
              Cell.read(row.getField("load_unit")),
              number(row, "lower"),
              number(row, "upper"),
              number(row, "accept_lower"),
              number(row, "accept_upper"),
              number(row, "resolution"),
              number(row, "uncertainty"),
              Cell.read(row.getField("decision")),
              null,
              null));
    }
    NamedCsvRecord first = rows.get(0);
    return new LimitTable(
        Cell.read(first.getField("procedure")),
        Cell.read(first.getField("revision")),
        Cell.read(first.getField("digest")),
        null,
        null,
        new BigDecimal(2),
        points,
        List.of());
  }

  private static BigDecimal number(NamedCsvRecord row, String name) {
    String cell = row.getField(name);
    return cell.isEmpty() ? null : new BigDecimal(cell);
  }
}
