package passband.evidence;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.quantity.Distribution;
import passband.quantity.Rational;

/**
 * {@code limits.json}, in the form of {@code limits.schema.json}: every item, numbers as numbers,
 * null for an open side.
 */
public final class LimitsWriter implements Item.Visitor<Void> {
  /** The format that is written. */
  public static final String FORMAT = "passband-limits/7";

  private final StringWriter out = new StringWriter();
  private final Json json = new Json(out);

  private LimitsWriter() {}

  /** The whole file, sealed. */
  public static String of(ItemList list) {
    return new LimitsWriter().file(list);
  }

  private String file(ItemList list) {
    json.begin();
    json.text("format", FORMAT);
    json.text("seal", Seal.OPEN);
    ItemList.Source source = list.source();
    json.text("procedure", source.procedure());
    json.text("title", source.title());
    json.text("revision", source.revision());
    json.text("date", source.date());
    json.text("digest", source.digest());
    json.flag("released", Boolean.TRUE.equals(source.released()));
    json.text("language", source.language());
    json.text("device", source.device());
    json.array("instruments");
    for (ItemList.Instrument one : source.instruments()) {
      json.begin();
      json.text("role", one.role());
      json.text("name", one.name());
      json.end();
    }
    json.endArray();
    json.object("decision");
    json.text("rule", list.decision().rule());
    json.number("coverage_factor", list.decision().coverage());
    json.number("risk", list.decision().risk());
    json.number("guard", list.decision().guard());
    json.number("prior", list.decision().prior());
    json.end();
    json.texts("phases", list.phases());
    json.array("items");
    list.items().forEach(item -> item.accept(this));
    json.endArray();
    json.end();
    return Seal.sealed(out + "\n");
  }

  private void head(String kind, Item item) {
    Item.Head head = item.head();
    json.begin();
    json.text("id", head.id());
    json.text("kind", kind);
    json.text("title", head.title());
    json.text("phase", head.phase());
    json.text("place", head.place());
    conditions("applies", head.applies());
    conditions("when", head.when());
  }

  private void conditions(String name, List<Item.Condition> conditions) {
    json.array(name);
    for (Item.Condition condition : conditions) {
      json.begin();
      json.text("item", condition.item());
      json.texts("is", condition.is());
      json.end();
    }
    json.endArray();
  }

  private void measured(String kind, Item.Measured item) {
    head(kind, item);
    Item.Where where = item.where();
    json.object("where");
    json.text("test", where.test());
    json.text("outlet", where.outlet());
    json.text("mode", where.mode());
    json.number("setting", where.setting());
    json.text("setting_unit", where.settingUnit());
    json.number("load", where.load());
    json.text("load_unit", where.loadUnit());
    json.texts("extras", where.extras());
    json.end();
    Item.Scale scale = item.scale();
    json.object("scale");
    json.text("quantity", scale.quantity());
    json.text("unit", scale.unit());
    json.number("resolution", scale.resolution());
    json.text("range", scale.range());
    json.flag("negative", scale.negative());
    json.end();
    limits(item.limits());
  }

  private void limits(Item.@Nullable Limits limits) {
    if (limits == null) {
      json.text("limits", null);
      return;
    }
    json.object("limits");
    json.number("nominal", limits.nominal());
    json.number("lower", limits.lower());
    json.number("upper", limits.upper());
    json.number("accept_lower", limits.acceptLower());
    json.number("accept_upper", limits.acceptUpper());
    json.number("uncertainty", limits.uncertainty());
    json.number("accuracy_ratio", limits.accuracyRatio());
    json.text("source", limits.source());
    json.end();
  }

  @Override
  public Void reading(Item.Reading reading) {
    measured("reading", reading);
    if (reading.budget() == null) {
      json.text("budget", null);
    } else {
      json.array("budget");
      for (Item.Contribution part : reading.budget()) {
        json.begin();
        json.text("contribution", part.name());
        json.number("relative", part.relative());
        json.number("absolute", part.absolute());
        spread("", part.spread());
        json.end();
      }
      json.endArray();
    }
    if (reading.due() != null) {
      json.texts("due", reading.due());
    }
    json.end();
    return null;
  }

  private void spread(String prefix, Distribution spread) {
    json.text(prefix + "distribution", spread.shape().word());
    if (spread.shape() == Distribution.Shape.NORMAL) {
      json.number(prefix + "coverage_factor", new BigDecimal(spread.coverage().toPlain()));
    }
    Rational freedom = spread.freedom();
    json.number(
        prefix + "degrees_of_freedom", freedom == null ? null : new BigDecimal(freedom.toPlain()));
  }

  @Override
  public Void derived(Item.Derived derived) {
    measured("derived", derived);
    json.text("formula", derived.calculation().formula().text());
    json.texts("parts", derived.calculation().parts());
    Item.Contribution load = derived.calculation().load();
    json.number("load_error_relative", load.relative());
    json.number("load_error_absolute", load.absolute());
    spread("load_error_", load.spread());
    json.array("repeats");
    derived.calculation().repeats().forEach(json::list);
    json.endArray();
    json.end();
    return null;
  }

  @Override
  public Void recorded(Item.Recorded recorded) {
    head("record", recorded);
    json.text("unit", recorded.unit());
    if (recorded.accepts() == null) {
      json.text("accepts", null);
    } else {
      json.object("accepts");
      json.number("lower", recorded.accepts().lower());
      json.number("upper", recorded.accepts().upper());
      json.end();
    }
    json.end();
    return null;
  }

  @Override
  public Void choice(Item.Choice choice) {
    head("choice", choice);
    json.texts("options", choice.options());
    json.text("pass", choice.pass());
    json.end();
    return null;
  }

  @Override
  public Void tick(Item.Tick tick) {
    head("tick", tick);
    if (tick.stops() == null) {
      json.text("stops", null);
    } else {
      json.texts("stops", tick.stops());
    }
    json.end();
    return null;
  }

  /** A JSON writer onto a string, on which nothing can fail. */
  private static final class Json {
    private final JsonWriter writer;

    /** What writes, but for the failures that a string does not have. */
    private interface Write {
      void run() throws IOException;
    }

    Json(StringWriter out) {
      writer = new JsonWriter(out);
      writer.setFormattingStyle(FormattingStyle.PRETTY);
    }

    private static void write(Write write) {
      try {
        write.run();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    void begin() {
      write(writer::beginObject);
    }

    void object(String name) {
      write(() -> writer.name(name).beginObject());
    }

    void end() {
      write(writer::endObject);
    }

    void array(String name) {
      write(() -> writer.name(name).beginArray());
    }

    void endArray() {
      write(writer::endArray);
    }

    void text(String name, @Nullable String value) {
      write(() -> writer.name(name).value(value));
    }

    void number(String name, @Nullable BigDecimal value) {
      write(() -> writer.name(name).value(value));
    }

    void flag(String name, boolean value) {
      write(() -> writer.name(name).value(value));
    }

    /** An element that is a list of texts. */
    void list(List<String> values) {
      write(writer::beginArray);
      values.forEach(value -> write(() -> writer.value(value)));
      endArray();
    }

    void texts(String name, List<String> values) {
      array(name);
      values.forEach(value -> write(() -> writer.value(value)));
      endArray();
    }

    void texts(String name, Map<String, String> values) {
      object(name);
      values.forEach(this::text);
      end();
    }
  }
}
