package passband.record;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Where a record differs from what is made again from its parts. */
public final class Alterations {
  private static final Set<String> OWN = Set.of("seal", "program");

  private static final String RESULT = "result";
  private static final String FORMAT = "format";

  /** What records of the first format do not say. */
  private static final String RELEASED = "released";

  private static final String VERDICTS = "passband-verdicts/";

  private final List<String> found = new ArrayList<>();
  private boolean older;

  private Alterations() {}

  /**
   * What differs, with its path in the file, a sentence each; the seal and the version do not
   * count. A record whose verdicts are in a format before today's has not all that verdicts have
   * now: what is missing in them does not count either, what they say does. The same holds for a
   * record in the first format.
   *
   * @param kept the file
   * @param again the same made again
   */
  public static List<String> between(String kept, String again) {
    Alterations alterations = new Alterations();
    JsonObject one = JsonParser.parseString(kept).getAsJsonObject();
    JsonObject other = JsonParser.parseString(again).getAsJsonObject();
    OWN.forEach(one::remove);
    OWN.forEach(other::remove);
    if (new JsonPrimitive(RecordReader.FORMAT_1).equals(one.get(FORMAT))) {
      one.remove(FORMAT);
      other.remove(FORMAT);
      other.remove(RELEASED);
    }
    alterations.older = number(one) < number(other);
    if (alterations.older) {
      one.getAsJsonObject(RESULT).remove(FORMAT);
      other.getAsJsonObject(RESULT).remove(FORMAT);
    }
    alterations.compare("", one, other);
    return alterations.found;
  }

  /** The number of the format of the verdicts; that of the newest where it cannot be told. */
  private static int number(JsonObject record) {
    if (record.get(RESULT) instanceof JsonObject result
        && result.get(FORMAT) instanceof JsonPrimitive format
        && format.isString()
        && format.getAsString().startsWith(VERDICTS)) {
      try {
        return Integer.parseInt(format.getAsString().substring(VERDICTS.length()));
      } catch (NumberFormatException e) {
        return Integer.MAX_VALUE;
      }
    }
    return Integer.MAX_VALUE;
  }

  private void compare(String path, JsonElement kept, JsonElement again) {
    if (kept instanceof JsonObject one && again instanceof JsonObject other) {
      Set<String> keys = new LinkedHashSet<>(one.keySet());
      keys.addAll(other.keySet());
      for (String key : keys) {
        String at = path.isEmpty() ? key : path + "." + key;
        if (one.has(key) && other.has(key)) {
          compare(at, one.get(key), other.get(key));
        } else if (one.has(key) || !older || !at.startsWith(RESULT + ".")) {
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
