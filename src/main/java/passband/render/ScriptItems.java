package passband.render;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Budget;
import passband.judge.ReadingColumn;
import passband.judge.SameWave;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Student;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Expression;
import passband.words.Language;

/** The items as the script of the sheet needs them to give the verdicts of the judge. */
final class ScriptItems implements Item.Visitor<Void> {
  private final StringWriter out = new StringWriter();
  private final JsonWriter json = new JsonWriter(out);
  private final List<List<Item.Contribution>> budgets = new ArrayList<>();
  private final Map<String, Integer> places = new HashMap<>();
  private final TreeMap<String, Unit> units = new TreeMap<>();

  /** What writes, but for the failures that a string does not have. */
  private interface Write {
    void run() throws IOException;
  }

  private final SameWave waves;
  private final Language language;

  private ScriptItems(ItemList list, Language language) {
    this.language = language;
    waves = new SameWave(list);
    json.setHtmlSafe(true);
  }

  /**
   * As JSON that may stand in an element of a page. What many items have in common stands once:
   * {@code fields.js} puts it back.
   */
  static String of(Sheet sheet) {
    return new ScriptItems(sheet.items(), sheet.head().language()).all(sheet);
  }

  private static void write(Write write) {
    try {
      write.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String all(Sheet sheet) {
    ItemList list = sheet.items();
    list.items().forEach(item -> places.put(item.id(), places.size()));
    write(json::beginObject);
    text("guard", list.decision().guard().toPlainString());
    guards(list);
    texts("phases", list.phases());
    write(() -> json.name("items").beginArray());
    list.items().forEach(item -> item.accept(this));
    write(json::endArray);
    units();
    budgets();
    write(() -> new ScriptLines(json).groups(sheet));
    write(json::endObject);
    return out.toString();
  }

  /** The guard by degrees of freedom, from one on, where any error has a finite number of them. */
  private void guards(ItemList list) {
    if (!Budget.hasFiniteFreedom(list)) {
      return;
    }
    List<String> guards = new ArrayList<>();
    Rational normal = Rational.of(list.decision().guard());
    for (int freedom = 1; freedom <= Student.MOST; freedom++) {
      guards.add(Student.factor(normal, freedom).toPlain());
    }
    texts("guards", guards);
  }

  private void number(String name, long value) {
    write(() -> json.name(name).value(value));
  }

  /** The budgets of readings, each once; a reading has its place among them. */
  private void budgets() {
    write(() -> json.name("budgets").beginArray());
    for (List<Item.Contribution> budget : budgets) {
      write(json::beginArray);
      for (Item.Contribution part : budget) {
        write(json::beginArray);
        write(() -> json.value(part.name()));
        write(() -> json.value(part.relative().toPlainString()));
        write(() -> json.value(part.absolute().toPlainString()));
        if (!part.spread().equals(Distribution.RECTANGULAR)) {
          write(() -> json.value(weight(part.spread())));
        }
        Rational freedom = part.spread().freedom();
        if (freedom != null) {
          write(() -> json.value(freedom.toString()));
        }
        write(json::endArray);
      }
      write(json::endArray);
    }
    write(json::endArray);
  }

  /** What the items' units are, each once. */
  private void units() {
    write(() -> json.name("units").beginObject());
    units.forEach(
        (ucum, unit) -> {
          write(() -> json.name(ucum).beginObject());
          text("printed", unit.printed());
          text("factor", unit.factor().toString());
          text("dimension", ScriptTables.dimension(unit));
          write(json::endObject);
        });
    write(json::endObject);
  }

  private void text(String name, String value) {
    write(() -> json.name(name).value(value));
  }

  /** Left out where there is none. */
  private void number(String name, @Nullable BigDecimal value) {
    if (value != null) {
      text(name, value.toPlainString());
    }
  }

  private void texts(String name, List<String> values) {
    write(() -> json.name(name).beginArray());
    values.forEach(value -> write(() -> json.value(value)));
    write(json::endArray);
  }

  private void list(List<String> values) {
    write(json::beginArray);
    values.forEach(value -> write(() -> json.value(value)));
    write(json::endArray);
  }

  private void begin(String kind, Item item) {
    write(json::beginObject);
    text("id", item.id());
    text("kind", kind);
    if (item.head().phase() != null) {
      text("phase", item.head().phase());
    }
    conditions("applies", item.head().applies());
    conditions("when", item.head().when());
  }

  /** Left out where there are none. */
  private void conditions(String name, List<Item.Condition> conditions) {
    if (!conditions.isEmpty()) {
      write(() -> json.name(name).beginArray());
      for (Item.Condition condition : conditions) {
        write(json::beginObject);
        text("item", condition.item());
        texts("is", condition.is());
        write(json::endObject);
      }
      write(json::endArray);
    }
  }

  /**
   * What the columns of a table of readings have to hold that are compared, in the sheet's
   * language; in English too where that is another text. Blanks are left out.
   */
  private void said(Item item) {
    Map<String, String> said = new LinkedHashMap<>();
    Map<String, String> english = new LinkedHashMap<>();
    for (ReadingColumn column : ReadingColumn.of(ReadingColumn.Use.COMPARED)) {
      List<String> texts = column.texts(item, language);
      if (!texts.get(0).isEmpty()) {
        said.put(column.word(), texts.get(0));
      }
      if (texts.size() > 1) {
        english.put(column.word(), texts.get(1));
      }
    }
    said("said", said);
    said("english", english);
  }

  private void said(String name, Map<String, String> columns) {
    if (!columns.isEmpty()) {
      write(() -> json.name(name).beginObject());
      columns.forEach(this::text);
      write(json::endObject);
    }
  }

  private void measured(String kind, Item.Measured item) {
    begin(kind, item);
    said(item);
    Item.Scale scale = item.scale();
    unit(scale.unit());
    number("resolution", scale.resolution());
    write(() -> json.name("decimals").value(scale.decimals()));
    negative(scale.negative());
    if (scale.quantity().equals("crest-factor") && item instanceof Item.Reading) {
      number("least", BigDecimal.ONE);
    }
    if (item.limits() != null) {
      number("lower", item.limits().lower());
      number("upper", item.limits().upper());
      number("low", item.limits().acceptLower());
      number("high", item.limits().acceptUpper());
    }
  }

  private void negative(boolean negative) {
    if (negative) {
      write(() -> json.name("negative").value(true));
    }
  }

  private void unit(String ucum) {
    Unit unit = ucum.equals("1") ? Unit.ONE : Objects.requireNonNull(Units.recorded(ucum), ucum);
    text("unit", ucum);
    units.put(ucum, unit);
  }

  @Override
  public Void reading(Item.Reading reading) {
    measured("reading", reading);
    Item.Where where = reading.where();
    text("shares", reading.scale().range() + "|" + where.load() + where.loadUnit());
    if (reading.due() != null) {
      texts("due", reading.due());
    }
    wave(reading);
    if (reading.budget() != null) {
      int place = budgets.indexOf(reading.budget());
      if (place < 0) {
        place = budgets.size();
        budgets.add(reading.budget());
      }
      number("budget", place);
    }
    write(json::endObject);
    return null;
  }

  /** The readings beside which its value may be impossible. */
  private void wave(Item.Reading reading) {
    List<Item.Reading> others = waves.others(reading);
    if (!others.isEmpty()) {
      text("quantity", reading.scale().quantity());
      si("load", reading.where().load(), reading.where().loadUnit());
      texts("wave", others.stream().map(Item::id).toList());
    }
  }

  @Override
  public Void derived(Item.Derived derived) {
    measured("derived", derived);
    write(() -> json.name("formula"));
    Expression formula = derived.calculation().formula().tree();
    Objects.requireNonNull(formula, "a formula that was not compiled")
        .accept(new ScriptFormula(json));
    write(() -> json.name("parts").beginObject());
    for (Map.Entry<String, String> part : derived.calculation().parts().entrySet()) {
      text(part.getKey(), part.getValue());
    }
    write(json::endObject);
    Item.Where where = derived.where();
    si("setting", where.setting(), where.settingUnit());
    si("load", where.load(), where.loadUnit());
    if (where.load() != null) {
      Item.Contribution error = derived.calculation().load();
      BigDecimal width = error.relative().multiply(where.load().abs()).add(error.absolute());
      si("loadError", width, where.loadUnit());
      if (!error.spread().equals(Distribution.RECTANGULAR)) {
        text("loadWeight", weight(error.spread()));
      }
      if (error.spread().freedom() != null) {
        text("loadFreedom", error.spread().freedom().toString());
      }
      text("shares", "|" + where.load() + where.loadUnit());
    }
    if (!derived.calculation().repeats().isEmpty()) {
      write(() -> json.name("repeats").beginArray());
      derived.calculation().repeats().forEach(this::list);
      write(json::endArray);
    }
    write(json::endObject);
    return null;
  }

  /** The variance of a distribution as a share of that of a rectangular one. */
  private static String weight(Distribution spread) {
    return spread.variance().times(Rational.of(3)).toString();
  }

  private void si(String name, @Nullable BigDecimal number, @Nullable String ucum) {
    if (number != null) {
      Unit unit =
          ucum == null || ucum.equals("1")
              ? Unit.ONE
              : Objects.requireNonNull(Units.recorded(ucum), ucum);
      text(name, Rational.of(number).times(unit.factor()).toString());
    }
  }

  @Override
  public Void recorded(Item.Recorded recorded) {
    begin("record", recorded);
    said(recorded);
    text("asks", Blank.of(recorded).word());
    if (recorded.unit() != null) {
      unit(recorded.unit());
      negative(recorded.negative());
    }
    Item.Accepts accepts = recorded.accepts();
    if (accepts != null) {
      number("resolution", accepts.step());
      write(() -> json.name("decimals").value(accepts.decimals()));
      number("low", accepts.lower());
      number("high", accepts.upper());
    }
    write(json::endObject);
    return null;
  }

  @Override
  public Void choice(Item.Choice choice) {
    begin("choice", choice);
    said(choice);
    texts("options", choice.options());
    if (choice.pass() != null) {
      text("pass", choice.pass());
    }
    write(json::endObject);
    return null;
  }

  @Override
  public Void tick(Item.Tick tick) {
    begin("tick", tick);
    if (tick.stops() != null) {
      write(() -> json.name("stops").beginArray());
      tick.stops().forEach(id -> write(() -> json.value(places.get(id))));
      write(json::endArray);
    }
    write(json::endObject);
    return null;
  }
}
