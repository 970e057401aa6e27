package passband.evidence;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.limit.Decision;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.syntax.DecisionKind;
import passband.syntax.Variables;
import passband.words.Language;

/**
 * Reads {@code limits.json} of format 1, which carries points only: no ticks, choices or records,
 * and no seal.
 */
final class LimitsReader1 {
  static final String FORMAT = "passband-limits/1";

  private static final Set<String> FILE =
      Set.of(
          "format",
          "procedure",
          "revision",
          "digest",
          "device",
          "analyzer",
          "coverage_factor",
          "points",
          "readings");
  private static final Pattern RISK = Pattern.compile("risk ([0-9]+(?:\\.[0-9]+)?) %");
  private static final List<String> PHASES = List.of("as-found", "as-left");

  private LimitsReader1() {}

  static ItemList read(JsonNode root) throws BadInput {
    root.only(FILE);
    List<Item.Reading> readings = new ArrayList<>();
    for (JsonNode node : root.at("readings").list()) {
      readings.add(reading(node));
    }
    List<Item> items = new ArrayList<>(readings);
    String decision = "simple";
    List<JsonNode> derived = new ArrayList<>();
    for (JsonNode node : root.at("points").list()) {
      decision = node.at("decision").name();
      if (node.at("derived").isNull()) {
        Item.Reading point = point(node);
        items.add(point);
        readings.add(point);
      } else {
        derived.add(node);
      }
    }
    for (JsonNode node : derived) {
      items.add(derived(node, readings));
    }
    List<String> phases =
        PHASES.stream()
            .filter(p -> items.stream().anyMatch(i -> p.equals(i.head().phase())))
            .toList();
    return new ItemList(
        new ItemList.Source(
            root.at("procedure").name(),
            root.at("procedure").name(),
            root.at("revision").text(),
            "",
            root.at("digest").name(),
            root.at("device").name(),
            LimitsReader.instruments(root.at("analyzer")),
            Language.ENGLISH.code(),
            null),
        decision(decision, root.at("coverage_factor").positive()),
        phases,
        items);
  }

  /** {@code simple}, {@code guarded} or {@code risk 2 %}. */
  private static ItemList.Decision decision(String text, BigDecimal coverage) throws BadInput {
    Matcher risk = RISK.matcher(text);
    DecisionKind kind =
        text.equals("simple")
            ? DecisionKind.SIMPLE
            : text.equals("guarded") ? DecisionKind.GUARDED : DecisionKind.RISK;
    if (kind == DecisionKind.RISK && !risk.matches()) {
      throw new BadInput("unknown decision rule '" + text + "'");
    }
    Rational share =
        kind == DecisionKind.RISK ? Rational.parse(risk.group(1)).over(Rational.HUNDRED) : null;
    Decision decision = new Decision(kind, share, Rational.of(coverage));
    return new ItemList.Decision(
        kind.word(),
        coverage,
        share == null ? null : new BigDecimal(share.toPlain()),
        new BigDecimal(decision.guard().toPlain()));
  }

  private static Item.Head head(JsonNode node) throws BadInput {
    String id = node.at("point").name();
    String phase = PHASES.stream().filter(p -> id.contains("/" + p + "/")).findFirst().orElse(null);
    return new Item.Head(id, node.at("quantity").name(), phase, id.split("/")[0], List.of());
  }

  private static Item.Scale scale(JsonNode node) throws BadInput {
    String quantity = node.at("quantity").name();
    QuantityKind kind = QuantityKind.find(quantity);
    return new Item.Scale(
        quantity,
        node.at("unit").name(),
        node.at("resolution").positive(),
        null,
        kind != null && !kind.nonNegative());
  }

  private static Item.Reading reading(JsonNode node) throws BadInput {
    String[] parts = node.at("point").name().split("/");
    Item.Where where = new Item.Where(parts[0], null, null, null, null, null, null, Map.of());
    return new Item.Reading(head(node), where, scale(node), null, null, null);
  }

  private static Item.Where where(JsonNode node) throws BadInput {
    return new Item.Where(
        node.at("test").name(),
        node.at("outlet").optionalText(),
        node.at("mode").optionalText(),
        node.at("setting").optionalNumber(),
        node.at("setting_unit").optionalText(),
        node.at("load").optionalNumber(),
        node.at("load_unit").optionalText(),
        Map.of());
  }

  private static Item.Limits limits(JsonNode node) throws BadInput {
    Item.Limits limits =
        new Item.Limits(
            node.at("nominal").optionalNumber(),
            node.at("lower").optionalNumber(),
            node.at("upper").optionalNumber(),
            node.at("accept_lower").optionalNumber(),
            node.at("accept_upper").optionalNumber(),
            node.at("uncertainty").optionalNumber(),
            node.at("accuracy_ratio").optionalNumber(),
            node.at("source").oneOf(List.of("rule", "stated")));
    LimitsReader.checkLimits(limits, node);
    return limits;
  }

  private static Item.Reading point(JsonNode node) throws BadInput {
    List<Item.Contribution> budget = null;
    if (!node.at("budget").isNull()) {
      budget = new ArrayList<>();
      for (JsonNode part : node.at("budget").list()) {
        budget.add(
            new Item.Contribution(
                part.at("component").name(),
                part.at("relative").number(),
                part.at("absolute").number()));
      }
    }
    return new Item.Reading(head(node), where(node), scale(node), limits(node), budget, null);
  }

  private static Item.Derived derived(JsonNode node, List<Item.Reading> readings) throws BadInput {
    WrittenFormula formula = new WrittenFormula(node.at("derived").name());
    String place = place(node.at("point").name());
    Map<String, String> parts = new LinkedHashMap<>();
    for (String name : Variables.of(formula.tree())) {
      readings.stream()
          .filter(r -> r.scale().quantity().equals(name) && place(r.id()).equals(place))
          .forEach(r -> parts.put(name, r.id()));
    }
    return new Item.Derived(
        head(node),
        where(node),
        scale(node),
        limits(node),
        new Calculation(formula, parts, Calculation.NO_LOAD_ERROR));
  }

  private static String place(String id) {
    return id.substring(0, Math.max(0, id.lastIndexOf('/')));
  }
}
