package passband.render;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** An object of JSON that may stand in an element of a page. */
final class ScriptJson {
  private final StringWriter out = new StringWriter();
  private final JsonWriter json = new JsonWriter(out);

  /** What writes, but for the failures that a string does not have. */
  interface Write {
    void run() throws IOException;
  }

  ScriptJson() {
    write(json::beginObject);
  }

  static void write(Write write) {
    try {
      write.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  JsonWriter writer() {
    return json;
  }

  /** The whole object. */
  String end() {
    write(json::endObject);
    return out.toString().replace("<", "\\u003c");
  }

  void text(String name, String value) {
    write(() -> json.name(name).value(value));
  }

  void number(String name, long value) {
    write(() -> json.name(name).value(value));
  }

  /** Left out where there is none. */
  void number(String name, @Nullable BigDecimal value) {
    if (value != null) {
      text(name, value.toPlainString());
    }
  }

  /** Left out where it is not so. */
  void flag(String name, boolean value) {
    if (value) {
      write(() -> json.name(name).value(true));
    }
  }

  void texts(String name, List<String> values) {
    write(() -> json.name(name));
    list(values);
  }

  void list(List<String> values) {
    write(json::beginArray);
    values.forEach(value -> write(() -> json.value(value)));
    write(json::endArray);
  }

  void numbers(String name, List<Integer> values) {
    write(() -> json.name(name).beginArray());
    values.forEach(value -> write(() -> json.value(value)));
    write(json::endArray);
  }

  void array(String name, Runnable elements) {
    write(() -> json.name(name).beginArray());
    elements.run();
    write(json::endArray);
  }

  void object(String name, Runnable members) {
    write(() -> json.name(name));
    object(members);
  }

  void object(Runnable members) {
    write(json::beginObject);
    members.run();
    write(json::endObject);
  }

  /** An array of elements that are written already. */
  void written(String name, String elements) {
    write(() -> json.name(name).jsonValue("[" + elements + "]"));
  }
}
