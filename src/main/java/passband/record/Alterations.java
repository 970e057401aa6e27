package passband.record;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.evidence.Seal;

/** Where a record differs from what is made again from its parts. */
public final class Alterations {
  private static final Set<String> OWN = Set.of("seal", "program");

  private static final String RESULT = "result";
  private static final String FORMAT = "format";

  /** What records of the first format do not say. */
  private static final Set<String> LATER = Set.of("released", "failed_before_repeat");

  /**
   * What verdicts of a format before today's do not say of an item; no record holds any before the
   * fourth.
   */
  private static final Map<String, Set<String>> LACKS =
      Map.of(
          "passband-verdicts/4",
          Set.of("statement", "coverage_factor", "degrees_of_freedom"),
          "passband-verdicts/5",
          Set.of("coverage_factor", "degrees_of_freedom"));

  private final List<String> found = new ArrayList<>();
  private final Set<String> lacks;

  private Alterations(Set<String> lacks) {
    this.lacks = lacks;
  }

  /**
   * What differs, with its path in the file, a sentence each; the seal and the version do not
   * count. A record whose verdicts are in a format before today's has not all that verdicts have
   * now: what that format does not say does not count either, what it says does. The same holds for
   * a record in the first format. One of today's formats is, but for CRLF, the same byte for byte.
   *
   * @param kept the file
   * @param again the same made again
   */
  public static List<String> between(String kept, String again) {
    JsonObject one = JsonParser.parseString(kept).getAsJsonObject();
    JsonObject other = JsonParser.parseString(again).getAsJsonObject();
    OWN.forEach(one::remove);
    OWN.forEach(other::remove);
    boolean older = new JsonPrimitive(RecordReader.FORMAT_1).equals(one.get(FORMAT));
    if (older) {
      one.remove(FORMAT);
      other.remove(FORMAT);
      LATER.forEach(other::remove);
    }
    Set<String> lacks =
        one.get(RESULT) instanceof JsonObject result
                && result.get(FORMAT) instanceof JsonPrimitive format
            ? LACKS.getOrDefault(format.getAsString(), Set.of())
            : Set.of();
    if (!lacks.isEmpty()) {
      older = true;
      one.getAsJsonObject(RESULT).remove(FORMAT);
      other.getAsJsonObject(RESULT).remove(FORMAT);
    }
    Alterations alterations = new Alterations(lacks);
    alterations.compare("", one, other);
    if (!older && alterations.found.isEmpty() && !Seal.without(kept).equals(Seal.without(again))) {
      alterations.found.add("it says the same, but is not written as Passband writes it");
    }
    return alterations.found;
  }

  private void compare(String path, JsonElement kept, JsonElement again) {
    if (kept instanceof JsonObject one && again instanceof JsonObject other) {
      Set<String> keys = new LinkedHashSet<>(one.keySet());
      keys.addAll(other.keySet());
      for (String key : keys) {
        String at = path.isEmpty() ? key : path + "." + key;
        if (one.has(key) && other.has(key)) {
          compare(at, one.get(key), other.get(key));
        } else if (one.has(key) || !path.startsWith(RESULT + ".items[") || !lacks.contains(key)) {
          found.add(at + (one.has(key) ? " does not belong there" : " is missing"));
        }
      }
    } else if (kept instanceof JsonArray one
        && again instanceof JsonArray other
        && one.size() == other.size()) {
      for (int i = 0; i < one.size(); i++) {
        compare(path + "[" + i + "]", one.get(i), other.get(i));
      }
    } else if (!kept.equals(again)) {
      found.add(path + " is " + shown(kept) + "; made again from the parts it is " + shown(again));
    }
  }

  private static String shown(JsonElement value) {
    return value instanceof JsonArray list ? "a list of " + list.size() : value.toString();
  }
}
