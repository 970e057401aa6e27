package passband.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.JsonNode;
import passband.evidence.Seal;

/**
 * Makes a record again from its parts: whatever else stands in the file is not believed.
 *
 * @param record judged again by this program; null where the parts were altered so that they cannot
 *     be judged
 * @param broken what is wrong with the file itself, a sentence each; empty where nothing is
 */
public record RecordReader(@Nullable VisitRecord record, List<String> broken) {
  /** What the file says that it is. */
  public static final String FORMAT = "passband-record/2";

  /**
   * As {@link #FORMAT}, but without whether its procedure was released and what failed before it
   * was read again.
   */
  static final String FORMAT_1 = "passband-record/1";

  /** Whether files of a format are read. */
  static boolean isKnown(String format) {
    return format.equals(FORMAT) || format.equals(FORMAT_1);
  }

  /**
   * Reads a file.
   *
   * @throws BadInput when it is no record, or is one as it was written whose parts cannot be judged
   */
  public static RecordReader read(String text) throws BadInput {
    JsonNode root = JsonNode.of(text);
    String format = root.at("format").text();
    if (!isKnown(format)) {
      throw root.at("format").fault("unknown format '" + format + "'");
    }
    List<String> broken = new ArrayList<>();
    try {
      Seal.check(text);
    } catch (BadInput e) {
      broken.add(e.getMessage());
    }
    KeptFile limits = part(root.at("parts").at("limits"), broken);
    KeptFile readings = part(root.at("parts").at("readings"), broken);
    Map<String, String> particulars = new LinkedHashMap<>();
    root.at("particulars").textsByName().forEach(particulars::put);
    try {
      return new RecordReader(
          VisitRecord.of(
              root.at("program").name(),
              root.at("judged_on").optionalText(),
              particulars,
              limits,
              readings),
          broken);
    } catch (BadInput e) {
      if (broken.isEmpty()) {
        throw e;
      }
      broken.add(e.getMessage());
      return new RecordReader(null, broken);
    }
  }

  private static KeptFile part(JsonNode node, List<String> broken) throws BadInput {
    String encoding = node.at("encoding").text();
    for (KeptFile.Encoding known : KeptFile.Encoding.values()) {
      if (known.word().equals(encoding)) {
        KeptFile part = new KeptFile(node.at("name").text(), known, node.at("text").text());
        if (!part.sha256().equals(node.at("sha256").text())) {
          broken.add(part.name() + ": it does not have the digest that the record says");
        }
        return part;
      }
    }
    throw node.at("encoding").fault("unknown encoding '" + encoding + "'");
  }
}
