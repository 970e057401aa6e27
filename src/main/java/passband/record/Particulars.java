package passband.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.evidence.BadInput;

/**
 * What a report says that neither the procedure nor the readings know (ISO/IEC 17025:2017, 7.8.2;
 * which letter asks for what is from memory). What is not known stays a blank to fill in by hand.
 *
 * @param said by key, texts that are not empty
 */
public record Particulars(Map<String, String> said) {
  /** What is known of the certificate of a role's instrument begins so. */
  public static final String CERTIFICATE = "certificate.";

  /** What may be said, with its words on the report. */
  private static final Map<String, String> KEYS = keys();

  private static Map<String, String> keys() {
    Map<String, String> keys = new LinkedHashMap<>();
    keys.put("number", "Report number");
    keys.put("laboratory", "Laboratory or department, and address");
    keys.put("customer", "For whom, and contact");
    keys.put("place", "Where the work was done");
    keys.put("issued", "Date of issue");
    keys.put("authorized-by", "Authorized by");
    return keys;
  }

  /** What may be said, in the order of the report, with its words there. */
  public static Map<String, String> all() {
    return KEYS;
  }

  /**
   * Of texts by key; those that are empty count as not said.
   *
   * @param roles of the instruments
   * @throws BadInput when there is no such key
   */
  public static Particulars of(Map<String, String> texts, List<String> roles) throws BadInput {
    List<String> known = new ArrayList<>(KEYS.keySet());
    roles.forEach(role -> known.add(CERTIFICATE + role));
    Map<String, String> said = new LinkedHashMap<>();
    for (String key : texts.keySet()) {
      if (!known.contains(key)) {
        throw new BadInput(
            "unknown particular '" + key + "' (they are: " + String.join(", ", known) + ")");
      }
    }
    for (String key : known) {
      String text = texts.getOrDefault(key, "").strip();
      if (!text.isEmpty()) {
        said.put(key, text);
      }
    }
    return new Particulars(said);
  }

  /** The text of a key; empty where it was not said. */
  public String said(String key) {
    return said.getOrDefault(key, "");
  }
}
