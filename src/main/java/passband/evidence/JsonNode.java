package passband.evidence;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A value of a JSON file that is read strictly: what does not fit is said with its path. */
public final class JsonNode {
  private static final Pattern PLACE = Pattern.compile("line (\\d+) column (\\d+)");

  private final String path;
  private final JsonElement element;

  JsonNode(String path, JsonElement element) {
    this.path = path;
    this.element = element;
  }

  /**
   * The value that a text of JSON is.
   *
   * @throws BadInput when it is none
   */
  public static JsonNode of(String text) throws BadInput {
    try {
      String json = text.startsWith("\ufeff") ? text.substring(1) : text;
      JsonNode root = new JsonNode("", JsonParser.parseString(json));
      toTheLetter(json);
      return root;
    } catch (JsonParseException | NumberFormatException | StackOverflowError e) {
      throw new BadInput("this is not a JSON file" + place(String.valueOf(e.getMessage())));
    }
  }

  /**
   * Nothing when a text is JSON without anything that JSON does not have, such as comments, and no
   * object says anything twice: of two values a person reads the first and a program the last.
   */
  private static void toTheLetter(String text) throws BadInput {
    Deque<Set<String>> open = new ArrayDeque<>();
    try (JsonReader json = new JsonReader(new StringReader(text))) {
      json.setStrictness(Strictness.STRICT);
      for (JsonToken next = json.peek(); next != JsonToken.END_DOCUMENT; next = json.peek()) {
        switch (next) {
          case BEGIN_OBJECT -> {
            json.beginObject();
            open.push(new HashSet<>());
          }
          case END_OBJECT -> {
            json.endObject();
            open.pop();
          }
          case BEGIN_ARRAY -> json.beginArray();
          case END_ARRAY -> json.endArray();
          case NAME -> {
            if (!open.element().add(json.nextName())) {
              throw new BadInput(json.getPath().substring("$.".length()) + ": it is said twice");
            }
          }
          default -> json.skipValue();
        }
      }
    } catch (IOException e) {
      throw new BadInput("this is not a JSON file" + place(String.valueOf(e.getMessage())));
    }
  }

  /** Where the parser stopped, from its message; empty where it does not say. */
  private static String place(String message) {
    Matcher place = PLACE.matcher(message);
    return place.find() ? ", see line " + place.group(1) + ", column " + place.group(2) : "";
  }

  /** A fault at this place. */
  public BadInput fault(String what) {
    return new BadInput((path.isEmpty() ? "" : path + ": ") + what);
  }

  /** Nothing when it is an object with exactly these keys. */
  public void only(Set<String> keys) throws BadInput {
    only(keys, new String[0]);
  }

  /** Nothing when it is an object with exactly these keys, and perhaps some more. */
  void only(Set<String> keys, String... perhaps) throws BadInput {
    JsonObject object = object();
    for (String key : keys) {
      if (!object.has(key)) {
        throw fault("the key '" + key + "' is missing");
      }
    }
    for (String key : object.keySet()) {
      if (!keys.contains(key) && !List.of(perhaps).contains(key)) {
        throw fault("unknown key '" + key + "'");
      }
    }
  }

  private JsonObject object() throws BadInput {
    if (!element.isJsonObject()) {
      throw fault("expected an object");
    }
    return element.getAsJsonObject();
  }

  /** The value of a key. */
  public JsonNode at(String key) throws BadInput {
    JsonElement value = object().get(key);
    if (value == null) {
      throw fault("the key '" + key + "' is missing");
    }
    return new JsonNode(path.isEmpty() ? key : path + "." + key, value);
  }

  boolean has(String key) throws BadInput {
    return object().has(key);
  }

  public boolean isNull() {
    return element.isJsonNull();
  }

  boolean isText() {
    return element instanceof JsonPrimitive p && p.isString();
  }

  /** The values of an array. */
  public List<JsonNode> list() throws BadInput {
    if (!element.isJsonArray()) {
      throw fault("expected an array");
    }
    JsonArray array = element.getAsJsonArray();
    List<JsonNode> nodes = new ArrayList<>(array.size());
    for (int i = 0; i < array.size(); i++) {
      nodes.add(new JsonNode(path + "[" + i + "]", array.get(i)));
    }
    return nodes;
  }

  public String text() throws BadInput {
    if (!(element instanceof JsonPrimitive p) || !p.isString()) {
      throw fault("expected a string");
    }
    return p.getAsString();
  }

  /** Null where there is none. */
  public @Nullable String optionalText() throws BadInput {
    return isNull() ? null : text();
  }

  /** A text that is not empty. */
  public String name() throws BadInput {
    String name = text();
    if (name.isEmpty()) {
      throw fault("expected a text that is not empty");
    }
    return name;
  }

  BigDecimal number() throws BadInput {
    if (!(element instanceof JsonPrimitive p) || !p.isNumber()) {
      throw fault("expected a number");
    }
    BigDecimal number = p.getAsBigDecimal();
    if (Math.abs((long) number.scale()) + number.precision() > 60) {
      throw fault("a number with too many digits");
    }
    return number;
  }

  /** Null where there is none. */
  @Nullable BigDecimal optionalNumber() throws BadInput {
    return isNull() ? null : number();
  }

  /** A number above zero. */
  BigDecimal positive() throws BadInput {
    BigDecimal number = number();
    if (number.signum() <= 0) {
      throw fault("expected a number above zero");
    }
    return number;
  }

  /** A number of zero or more. */
  BigDecimal notNegative() throws BadInput {
    BigDecimal number = number();
    if (number.signum() < 0) {
      throw fault("expected a number of zero or more");
    }
    return number;
  }

  boolean flag() throws BadInput {
    if (!(element instanceof JsonPrimitive p) || !p.isBoolean()) {
      throw fault("expected true or false");
    }
    return p.getAsBoolean();
  }

  /** One of these words. */
  String oneOf(List<String> words) throws BadInput {
    String text = text();
    if (!words.contains(text)) {
      throw fault("expected one of " + String.join(", ", words));
    }
    return text;
  }

  List<String> texts() throws BadInput {
    List<String> texts = new ArrayList<>();
    for (JsonNode node : list()) {
      texts.add(node.text());
    }
    return texts;
  }

  public Map<String, String> textsByName() throws BadInput {
    Map<String, String> texts = new LinkedHashMap<>();
    for (String key : object().keySet()) {
      texts.put(key, at(key).text());
    }
    return texts;
  }
}
