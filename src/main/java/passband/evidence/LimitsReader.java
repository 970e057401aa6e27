package passband.evidence;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import passband.model.Instruments;
import passband.quantity.Units;
import passband.words.Language;

/**
 * Reads {@code limits.json}, formats 1 to 7. A file that is not whole is refused: from format 2 the
 * seal has to be right, and of a key that is missing, unknown or of the wrong type the path is
 * said.
 */
public final class LimitsReader {
  private static final Set<String> FILE =
      Set.of(
          "format",
          "seal",
          "procedure",
          "title",
          "revision",
          "date",
          "digest",
          "released",
          "language",
          "device",
          "instruments",
          "decision",
          "phases",
          "items");
  private static final Set<String> FILE_5 =
      FILE.stream().filter(key -> !key.equals("language")).collect(Collectors.toUnmodifiableSet());
  private static final Set<String> FILE_3 =
      FILE_5.stream()
          .filter(key -> !key.equals("released"))
          .collect(Collectors.toUnmodifiableSet());
  private static final Set<String> FILE_2 =
      FILE_3.stream()
          .map(key -> key.equals("instruments") ? "analyzer" : key)
          .collect(Collectors.toUnmodifiableSet());
  private static final Set<String> HEAD =
      Set.of("id", "kind", "title", "phase", "place", "applies");
  private static final Set<String> WHERE =
      Set.of("test", "outlet", "mode", "setting", "setting_unit", "load", "load_unit", "extras");
  private static final Set<String> SCALE =
      Set.of("quantity", "unit", "resolution", "range", "negative");
  private static final Set<String> LIMITS =
      Set.of(
          "nominal",
          "lower",
          "upper",
          "accept_lower",
          "accept_upper",
          "uncertainty",
          "accuracy_ratio",
          "source");

  /** Format 3 but for the instruments, which it has as one text. */
  private static final String FORMAT_2 = "passband-limits/2";

  /** Format 4 but for distributions, all are rectangular, and for whether it was released. */
  private static final String FORMAT_3 = "passband-limits/3";

  /** Format 5 but for degrees of freedom, all are infinite. */
  private static final String FORMAT_4 = "passband-limits/4";

  /** Format 6 but for the language, all are in English as far as anybody knows. */
  private static final String FORMAT_5 = "passband-limits/5";

  /** Format 7 but for repeated readings: the scatter of none is looked at. */
  private static final String FORMAT_6 = "passband-limits/6";

  private static final List<String> LANGUAGES =
      Language.all().stream().map(Language::code).toList();

  private LimitsReader() {}

  /**
   * The items of a file.
   *
   * @throws BadInput when it is no limits file, is damaged or was changed after it was written
   */
  public static ItemList read(String text) throws BadInput {
    JsonNode root = JsonNode.of(text);
    String format = root.at("format").text();
    ItemList list =
        switch (format) {
          case LimitsWriter.FORMAT, FORMAT_6, FORMAT_5, FORMAT_4, FORMAT_3, FORMAT_2 ->
              sealed(text, root);
          case LimitsReader1.FORMAT -> LimitsReader1.read(root);
          default -> throw root.at("format").fault("unknown format '" + format + "'");
        };
    checkItems(list, root);
    return list;
  }

  /** That it was changed comes first, then what became wrong by it. */
  private static ItemList sealed(String text, JsonNode root) throws BadInput {
    BadInput broken = null;
    try {
      Seal.check(text);
    } catch (BadInput e) {
      broken = e;
    }
    try {
      ItemList list = list(root);
      checkItems(list, root);
      if (broken == null) {
        return list;
      }
    } catch (BadInput fault) {
      throw broken == null ? fault : new BadInput(broken.getMessage() + "; " + fault.getMessage());
    }
    throw broken;
  }

  private static ItemList list(JsonNode root) throws BadInput {
    String named = root.at("format").text();
    int format = Integer.parseInt(named.substring(named.indexOf('/') + 1));
    boolean before = format == 2;
    boolean now = format > 3;
    boolean saysLanguage = format > 5;
    root.only(saysLanguage ? FILE : now ? FILE_5 : before ? FILE_2 : FILE_3);
    JsonNode decision = root.at("decision");
    Set<String> keys = new HashSet<>(Set.of("rule", "coverage_factor", "risk", "guard"));
    if (format > 4) {
      keys.add("prior");
    }
    decision.only(keys);
    List<Item> items = new ArrayList<>();
    for (JsonNode item : root.at("items").list()) {
      items.add(item(item, format));
    }
    return new ItemList(
        new ItemList.Source(
            root.at("procedure").name(),
            root.at("title").text(),
            root.at("revision").text(),
            root.at("date").text(),
            root.at("digest").name(),
            root.at("device").name(),
            instruments(root.at(before ? "analyzer" : "instruments")),
            saysLanguage ? root.at("language").oneOf(LANGUAGES) : Language.ENGLISH.code(),
            now ? root.at("released").flag() : null),
        new ItemList.Decision(
            decision.at("rule").oneOf(List.of("simple", "guarded", "managed", "risk")),
            decision.at("coverage_factor").positive(),
            decision.at("risk").optionalNumber(),
            decision.at("guard").notNegative(),
            format > 4 ? decision.at("prior").optionalNumber() : null),
        root.at("phases").texts(),
        items);
  }

  /** A list of objects or, in the formats before, one text: a name, or roles with names. */
  static List<ItemList.Instrument> instruments(JsonNode node) throws BadInput {
    List<ItemList.Instrument> instruments = new ArrayList<>();
    if (node.isText()) {
      for (String one : node.name().split(", ")) {
        int space = one.indexOf(' ');
        String role = space < 0 ? Instruments.ONLY : one.substring(0, space);
        instruments.add(new ItemList.Instrument(role, one.substring(space + 1)));
      }
      return instruments;
    }
    Set<String> roles = new HashSet<>();
    for (JsonNode one : node.list()) {
      one.only(Set.of("role", "name"));
      String role = one.at("role").name();
      if (!roles.add(role)) {
        throw one.at("role").fault("the role '" + role + "' is listed twice");
      }
      instruments.add(new ItemList.Instrument(role, one.at("name").name()));
    }
    if (instruments.isEmpty()) {
      throw node.fault("expected one instrument at least");
    }
    return instruments;
  }

  /**
   * One item.
   *
   * @param format of the file; in format 2 what a reading's calibration depends on may be missing:
   *     every one on the sheet then bears on it
   */
  private static Item item(JsonNode node, int format) throws BadInput {
    boolean before = format == 2;
    String kind = node.at("kind").oneOf(List.of("reading", "derived", "record", "choice", "tick"));
    return switch (kind) {
      case "reading" -> {
        only(node, with("where", "scale", "limits", "budget"), before, "due", "when");
        List<Item.Contribution> budget = Spreads.budget(node.at("budget"), format);
        List<String> due = node.has("due") ? node.at("due").texts() : null;
        yield new Item.Reading(head(node), where(node), scale(node), limits(node), budget, due);
      }
      case "derived" -> {
        Set<String> keys =
            with(
                "where",
                "scale",
                "limits",
                "formula",
                "parts",
                "load_error_relative",
                "load_error_absolute");
        keys.addAll(Spreads.keys(node, Spreads.LOAD, format));
        if (format > 6) {
          keys.add(Spreads.REPEATS);
        }
        only(node, keys, before, "when");
        Item.Limits limits = limits(node);
        if (limits == null) {
          throw node.at("limits").fault("a derived value must have limits");
        }
        yield new Item.Derived(
            head(node), where(node), scale(node), limits, Spreads.calculation(node, format));
      }
      case "record" -> {
        only(node, with("unit"), before, "accepts", "when");
        yield recorded(node);
      }
      case "choice" -> choice(node, before);
      default -> {
        only(node, with(), before, "stops", "when");
        boolean stops = node.has("stops") && !node.at("stops").isNull();
        yield new Item.Tick(head(node), stops ? node.at("stops").texts() : null);
      }
    };
  }

  /** Before format 3 the last keys may be missing. */
  private static void only(JsonNode node, Set<String> keys, boolean before, String... last)
      throws BadInput {
    if (before) {
      node.only(keys, last);
    } else {
      keys.addAll(List.of(last));
      node.only(keys);
    }
  }

  private static Set<String> with(String... more) {
    Set<String> keys = new HashSet<>(HEAD);
    keys.addAll(List.of(more));
    return keys;
  }

  private static Item.Head head(JsonNode node) throws BadInput {
    return new Item.Head(
        node.at("id").name(),
        node.at("title").text(),
        node.at("phase").optionalText(),
        node.at("place").text(),
        conditions(node.at("applies")),
        node.has("when") ? conditions(node.at("when")) : List.of());
  }

  private static List<Item.Condition> conditions(JsonNode node) throws BadInput {
    List<Item.Condition> conditions = new ArrayList<>();
    for (JsonNode one : node.list()) {
      one.only(Set.of("item", "is"));
      conditions.add(new Item.Condition(one.at("item").name(), one.at("is").texts()));
    }
    return conditions;
  }

  private static Item.Recorded recorded(JsonNode node) throws BadInput {
    String unit = node.at("unit").optionalText();
    if (unit != null && !unit.equals("1") && Units.recorded(unit) == null) {
      throw node.at("unit").fault("unknown unit '" + unit + "'");
    }
    return new Item.Recorded(head(node), unit, accepts(node, unit));
  }

  private static Item.@Nullable Accepts accepts(JsonNode node, @Nullable String unit)
      throws BadInput {
    if (!node.has("accepts") || node.at("accepts").isNull()) {
      return null;
    }
    JsonNode accepts = node.at("accepts");
    accepts.only(Set.of("lower", "upper"));
    Item.Accepts read =
        new Item.Accepts(
            accepts.at("lower").optionalNumber(), accepts.at("upper").optionalNumber());
    if (unit == null) {
      throw accepts.fault("limits of a record without a unit");
    }
    if (read.lower() == null && read.upper() == null) {
      throw accepts.fault("there is neither a lower nor an upper limit");
    }
    if (read.lower() != null && read.upper() != null && read.lower().compareTo(read.upper()) > 0) {
      throw accepts.fault("the lower limit is above the upper limit");
    }
    return read;
  }

  private static Item.Choice choice(JsonNode node, boolean before) throws BadInput {
    only(node, with("options", "pass"), before, "when");
    List<String> options = node.at("options").texts();
    String pass = node.at("pass").optionalText();
    if (options.isEmpty() || pass != null && !options.contains(pass)) {
      throw node.at("pass").fault("expected one of the options");
    }
    return new Item.Choice(head(node), options, pass);
  }

  private static Item.Where where(JsonNode item) throws BadInput {
    JsonNode where = item.at("where");
    where.only(WHERE);
    return new Item.Where(
        where.at("test").name(),
        where.at("outlet").optionalText(),
        where.at("mode").optionalText(),
        where.at("setting").optionalNumber(),
        where.at("setting_unit").optionalText(),
        where.at("load").optionalNumber(),
        where.at("load_unit").optionalText(),
        where.at("extras").textsByName());
  }

  private static Item.Scale scale(JsonNode item) throws BadInput {
    JsonNode scale = item.at("scale");
    scale.only(SCALE);
    String unit = scale.at("unit").name();
    if (!unit.equals("1") && Units.ofUcum(unit) == null) {
      throw scale.at("unit").fault("unknown unit '" + unit + "'");
    }
    return new Item.Scale(
        scale.at("quantity").name(),
        unit,
        scale.at("resolution").positive(),
        scale.at("range").optionalText(),
        scale.at("negative").flag());
  }

  private static Item.@Nullable Limits limits(JsonNode item) throws BadInput {
    JsonNode limits = item.at("limits");
    if (limits.isNull()) {
      return null;
    }
    limits.only(LIMITS);
    Item.Limits read =
        new Item.Limits(
            limits.at("nominal").optionalNumber(),
            limits.at("lower").optionalNumber(),
            limits.at("upper").optionalNumber(),
            limits.at("accept_lower").optionalNumber(),
            limits.at("accept_upper").optionalNumber(),
            limits.at("uncertainty").optionalNumber(),
            limits.at("accuracy_ratio").optionalNumber(),
            limits.at("source").oneOf(List.of("rule", "stated")));
    checkLimits(read, limits);
    return read;
  }

  /** Limits with both sides open, or wider for acceptance than the tolerance, are none. */
  static void checkLimits(Item.Limits limits, JsonNode node) throws BadInput {
    if (limits.lower() == null && limits.upper() == null) {
      throw node.fault("there is neither a lower nor an upper limit");
    }
    boolean low = outside(limits.acceptLower(), limits.lower(), -1);
    boolean high = outside(limits.acceptUpper(), limits.upper(), 1);
    if (low || high) {
      throw node.fault("the acceptance limits are wider than the tolerance");
    }
  }

  private static boolean outside(
      @Nullable BigDecimal accept, @Nullable BigDecimal tolerance, int side) {
    if (tolerance == null || accept == null) {
      return tolerance != accept;
    }
    return accept.compareTo(tolerance) * side > 0;
  }

  /** No two items are the same, and what items refer to is there. */
  private static void checkItems(ItemList list, JsonNode root) throws BadInput {
    Map<String, Item> byId = new HashMap<>();
    for (Item item : list.items()) {
      if (byId.put(item.id(), item) != null) {
        throw root.fault("the item '" + item.id() + "' is listed twice");
      }
    }
    for (Item item : list.items()) {
      for (Item.Condition condition : conditions(item)) {
        if (!(byId.get(condition.item()) instanceof Item.Choice choice)
            || !choice.options().containsAll(condition.is())) {
          throw root.fault(
              item.id()
                  + " depends on '"
                  + condition.item()
                  + "', which is not a choice with these outcomes");
        }
      }
      if (item instanceof Item.Reading reading && reading.due() != null) {
        for (String due : reading.due()) {
          if (!(byId.get(due) instanceof Item.Recorded)) {
            throw root.fault(item.id() + " depends on '" + due + "', which is not a record");
          }
        }
      }
      if (item instanceof Item.Tick tick && tick.stops() != null) {
        if (tick.stops().isEmpty()) {
          throw root.fault(item.id() + " is a gate that stops nothing");
        }
        for (String stopped : tick.stops()) {
          if (!(byId.get(stopped) instanceof Item.Measured)) {
            throw root.fault(item.id() + " stops '" + stopped + "', which is not measured");
          }
        }
      }
      if (item instanceof Item.Derived derived) {
        for (String part : derived.calculation().parts().values()) {
          if (!(byId.get(part) instanceof Item.Reading)) {
            throw root.fault(
                item.id() + " is calculated from '" + part + "', which is not a reading");
          }
        }
      }
    }
  }

  private static List<Item.Condition> conditions(Item item) {
    List<Item.Condition> all = new ArrayList<>(item.head().applies());
    all.addAll(item.head().when());
    return all;
  }
}
