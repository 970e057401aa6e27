package passband.render;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.evidence.Blank;
import passband.evidence.Calculation;
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

/**
 * The items as the script of the sheet needs them to give the verdicts of the judge. What many
 * items have in common stands once, as a part; an item is the list of the places of its parts. It
 * has no identity: that stands at its field in the page, in the same order.
 */
final class ScriptItems implements Item.Visitor<Void> {
  /** Never below one, since no peak is below its RMS value. */
  static final String CREST = "crest-factor";

  private static final List<ReadingColumn> ACCEPTS = List.of(ReadingColumn.LIMITS);

  /** The others: limits stand last. */
  private static final List<ReadingColumn> CONDITIONS =
      ReadingColumn.of(ReadingColumn.Use.COMPARED).stream()
          .filter(column -> column != ReadingColumn.LIMITS)
          .toList();

  private final Map<String, Integer> parts = new LinkedHashMap<>();
  private final StringBuilder items = new StringBuilder();
  private final List<List<Item.Contribution>> budgets = new ArrayList<>();
  private final Map<String, Integer> places = new HashMap<>();
  private final TreeMap<String, Unit> units = new TreeMap<>();
  private final SameWave waves;
  private final Language language;

  /** What is being written: a part of an item, then all. */
  private ScriptJson json = new ScriptJson();

  /** That of the item whose parts are being written. */
  private int place;

  private ScriptItems(ItemList list, Language language) {
    this.language = language;
    waves = new SameWave(list);
  }

  /** As JSON that may stand in an element of a page; {@code items.js} puts the items together. */
  static String of(Sheet sheet) {
    return new ScriptItems(sheet.items(), sheet.head().language()).all(sheet);
  }

  private String all(Sheet sheet) {
    ItemList list = sheet.items();
    list.items().forEach(item -> places.put(item.id(), places.size()));
    for (Item item : list.items()) {
      items.append(items.isEmpty() ? "[" : ",[");
      item.accept(this);
      items.append(']');
      place++;
    }
    json = new ScriptJson();
    json.number("order", order(list));
    json.text("revised", list.source().date());
    json.text("guard", list.decision().guard().toPlainString());
    guards(list);
    json.texts("phases", list.phases());
    json.written("parts", String.join(",", parts.keySet()));
    json.written("items", items.toString());
    units();
    budgets();
    ScriptJson.write(() -> new ScriptLines(json).groups(sheet));
    return json.end();
  }

  /**
   * A number by which the script knows that the page has the fields of the items in their order.
   */
  static int order(ItemList list) {
    return String.join("\n", list.items().stream().map(Item::id).toList()).hashCode();
  }

  /** A part of the item, unless nothing is written of it. */
  private void part(Runnable written) {
    json = new ScriptJson();
    written.run();
    String text = json.end();
    if (text.length() > 2) {
      Integer before = parts.putIfAbsent(text, parts.size());
      boolean first = items.charAt(items.length() - 1) == '[';
      items.append(first ? "" : ",").append(before == null ? parts.size() - 1 : before);
    }
  }

  /** How often the script adds up what stands in the page for the guards, so that it is short. */
  private static final int ORDERS = 6;

  /**
   * The guard by degrees of freedom, from one on, where any error has a finite number of them: as
   * whole numbers over a power of ten, of which the differences of differences stand in the page.
   */
  private void guards(ItemList list) {
    if (!Budget.hasFiniteFreedom(list)) {
      return;
    }
    List<BigDecimal> guards = new ArrayList<>();
    Rational normal = Rational.of(list.decision().guard());
    int decimals = 0;
    for (int freedom = 1; freedom <= Student.MOST; freedom++) {
      BigDecimal guard = new BigDecimal(Student.factor(normal, freedom).toPlain());
      guards.add(guard);
      decimals = Math.max(decimals, guard.scale());
    }
    List<String> differences = new ArrayList<>();
    for (BigInteger number : differences(guards, decimals)) {
      differences.add(number.toString());
    }
    int scale = decimals;
    json.object(
        "guards",
        () -> {
          json.number("orders", ORDERS);
          json.number("decimals", scale);
          json.text("differences", String.join(" ", differences));
        });
  }

  private static BigInteger[] differences(List<BigDecimal> numbers, int decimals) {
    BigInteger[] whole = new BigInteger[numbers.size()];
    for (int i = 0; i < whole.length; i++) {
      whole[i] = numbers.get(i).setScale(decimals).unscaledValue();
    }
    for (int order = 0; order < ORDERS; order++) {
      for (int i = whole.length - 1; i > 0; i--) {
        whole[i] = whole[i].subtract(whole[i - 1]);
      }
    }
    return whole;
  }

  /** The budgets of readings, each once; a reading has its place among them. */
  private void budgets() {
    json.array(
        "budgets",
        () -> {
          for (List<Item.Contribution> budget : budgets) {
            ScriptJson.write(json.writer()::beginArray);
            budget.forEach(part -> json.list(contribution(part)));
            ScriptJson.write(json.writer()::endArray);
          }
        });
  }

  private static List<String> contribution(Item.Contribution part) {
    List<String> texts = new ArrayList<>();
    texts.add(part.name());
    texts.add(part.relative().toPlainString());
    texts.add(part.absolute().toPlainString());
    if (!part.spread().equals(Distribution.RECTANGULAR)) {
      texts.add(weight(part.spread()));
    }
    Rational freedom = part.spread().freedom();
    if (freedom != null) {
      texts.add(freedom.toString());
    }
    return texts;
  }

  /** How the items' units are printed that are not printed as the script names them. */
  private void units() {
    json.object("units", () -> units.forEach(this::unit));
  }

  private void unit(String ucum, Unit unit) {
    if (!unit.printed().equals(ucum)) {
      json.text(ucum, unit.printed());
    }
  }

  private void head(String kind, Item item) {
    json.text("kind", kind);
    if (item.head().phase() != null) {
      json.text("phase", item.head().phase());
    }
    conditions("applies", item.head().applies());
    conditions("when", item.head().when());
  }

  private int placeOf(String id) {
    return Objects.requireNonNull(places.get(id), id);
  }

  /** How many places before the item another one stands: the same in each phase. */
  private int before(String id) {
    return place - placeOf(id);
  }

  /** Left out where there are none. */
  private void conditions(String name, List<Item.Condition> conditions) {
    if (!conditions.isEmpty()) {
      json.array(name, () -> conditions.forEach(one -> json.object(() -> condition(one))));
    }
  }

  private void condition(Item.Condition condition) {
    json.number("item", placeOf(condition.item()));
    json.texts("is", condition.is());
  }

  /**
   * What the columns of a table of readings have to hold that are compared, in their order and in
   * the sheet's language; in English too where that is another text.
   *
   * @param printed whether it stands in the page beside the item's field, and is read from there
   */
  private void says(String name, Item item, List<ReadingColumn> columns, boolean printed) {
    List<String> own = columns.stream().map(c -> c.text(item, language)).toList();
    List<String> english = columns.stream().map(c -> c.text(item, Language.ENGLISH)).toList();
    if (!printed && own.stream().anyMatch(text -> !text.isEmpty())) {
      json.texts(name, own);
    }
    if (!english.equals(own)) {
      json.texts(name + "InEnglish", english);
    }
  }

  private void measured(String kind, Item.Measured item) {
    part(() -> head(kind, item));
    part(() -> says("says", item, CONDITIONS, false));
    part(() -> limits(item));
  }

  private void limits(Item.Measured item) {
    says("accepts", item, ACCEPTS, true);
    if (item.limits() != null) {
      json.number("lower", item.limits().lower());
      json.number("upper", item.limits().upper());
      json.number("low", item.limits().acceptLower());
      json.number("high", item.limits().acceptUpper());
    }
  }

  private void scale(Item.Measured item) {
    Item.Scale scale = item.scale();
    json.text("what", language.term(item.head().title()));
    unit(scale.unit());
    json.number("resolution", scale.resolution());
    json.number("decimals", scale.decimals());
    json.flag("negative", scale.negative());
    if (scale.quantity().equals(CREST) && item instanceof Item.Reading) {
      json.number("least", BigDecimal.ONE);
    }
  }

  private void unit(String ucum) {
    Unit unit = ucum.equals("1") ? Unit.ONE : Objects.requireNonNull(Units.recorded(ucum), ucum);
    json.text("unit", ucum);
    units.put(ucum, unit);
  }

  @Override
  public Void reading(Item.Reading reading) {
    measured("reading", reading);
    part(
        () -> {
          scale(reading);
          Item.Where where = reading.where();
          json.text("shares", reading.scale().range() + "|" + where.load() + where.loadUnit());
          if (reading.due() != null) {
            json.numbers("due", reading.due().stream().map(this::placeOf).toList());
          }
          budget(reading);
        });
    part(() -> wave(reading));
    return null;
  }

  private void budget(Item.Reading reading) {
    if (reading.budget() != null) {
      int budget = budgets.indexOf(reading.budget());
      if (budget < 0) {
        budget = budgets.size();
        budgets.add(reading.budget());
      }
      json.number("budget", budget);
    }
  }

  /** The readings beside which its value may be impossible. */
  private void wave(Item.Reading reading) {
    List<Item.Reading> others = waves.others(reading);
    if (!others.isEmpty()) {
      json.text("quantity", reading.scale().quantity());
      si("load", reading.where().load(), reading.where().loadUnit());
      json.numbers("wave", others.stream().map(other -> before(other.id())).toList());
    }
  }

  @Override
  public Void derived(Item.Derived derived) {
    measured("derived", derived);
    part(() -> scale(derived));
    part(() -> formula(derived));
    part(() -> where(derived));
    return null;
  }

  private void formula(Item.Derived derived) {
    Expression formula = derived.calculation().formula().tree();
    ScriptJson.write(() -> json.writer().name("formula"));
    Objects.requireNonNull(formula, "a formula that was not compiled")
        .accept(new ScriptFormula(json.writer()));
    Calculation calculation = derived.calculation();
    json.object(
        "parts", () -> calculation.parts().forEach((name, id) -> json.number(name, before(id))));
    if (!calculation.repeats().isEmpty()) {
      json.array("repeats", () -> calculation.repeats().forEach(json::list));
    }
  }

  private void where(Item.Derived derived) {
    Item.Where where = derived.where();
    si("setting", where.setting(), where.settingUnit());
    si("load", where.load(), where.loadUnit());
    if (where.load() != null) {
      Item.Contribution error = derived.calculation().load();
      BigDecimal width = error.relative().multiply(where.load().abs()).add(error.absolute());
      si("loadError", width, where.loadUnit());
      if (!error.spread().equals(Distribution.RECTANGULAR)) {
        json.text("loadWeight", weight(error.spread()));
      }
      if (error.spread().freedom() != null) {
        json.text("loadFreedom", error.spread().freedom().toString());
      }
      json.text("shares", "|" + where.load() + where.loadUnit());
    }
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
      json.text(name, Rational.of(number).times(unit.factor()).toString());
    }
  }

  @Override
  public Void recorded(Item.Recorded recorded) {
    part(() -> head("record", recorded));
    part(() -> blank(recorded));
    return null;
  }

  private void blank(Item.Recorded recorded) {
    says("accepts", recorded, ACCEPTS, false);
    json.text("asks", Blank.of(recorded).word());
    if (recorded.unit() != null) {
      unit(recorded.unit());
      json.flag("negative", recorded.negative());
    }
    Item.Accepts accepts = recorded.accepts();
    if (accepts != null) {
      json.number("resolution", accepts.step());
      json.number("decimals", accepts.decimals());
      json.number("low", accepts.lower());
      json.number("high", accepts.upper());
    }
  }

  @Override
  public Void choice(Item.Choice choice) {
    part(() -> head("choice", choice));
    part(
        () -> {
          json.texts("options", choice.options());
          if (choice.pass() != null) {
            json.text("pass", choice.pass());
          }
        });
    return null;
  }

  @Override
  public Void tick(Item.Tick tick) {
    part(() -> head("tick", tick));
    part(
        () -> {
          if (tick.stops() != null) {
            json.numbers("stops", tick.stops().stream().map(this::placeOf).toList());
          }
        });
    return null;
  }
}
