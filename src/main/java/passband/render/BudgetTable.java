package passband.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.ItemWords;
import passband.judge.Budget;
import passband.judge.Effect;
import passband.judge.Expected;
import passband.judge.Judgement;
import passband.judge.Report;
import passband.quantity.Distribution;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.words.Language;

/**
 * The uncertainty of a value by its contributions (JCGM 100, 7.2.7; EA-4/02, 4): of all readings
 * with the same contributions, and of all values that a test calculates by one formula, the one
 * with the greatest uncertainty.
 *
 * @param quantity what is read or calculated
 * @param formula of a calculated value; empty for a reading
 * @param item that is shown
 * @param value what was read or calculated, with its unit
 * @param standard its combined standard uncertainty
 * @param expanded its expanded uncertainty U
 * @param factor the coverage factor k
 * @param freedom its effective degrees of freedom
 */
public record BudgetTable(
    String quantity,
    String formula,
    String item,
    String value,
    String standard,
    String expanded,
    String factor,
    String freedom,
    List<Part> parts) {
  private static final String INFINITE = "∞";

  private static final List<String> HEADINGS =
      List.of(
          "source",
          "width",
          "distribution",
          "divisor",
          "sensitivity",
          "freedom",
          "contribution",
          "share");

  /** The headings of {@link Part} in a language. */
  public static List<String> headings(Language language) {
    return HEADINGS.stream().map(key -> language.of("budget." + key)).toList();
  }

  /**
   * A contribution. Those of a reading are given as they move it, so that their sensitivity is one.
   *
   * @param width its half-width at the reading; of several readings all that differ
   * @param divisor by which that is divided for a standard uncertainty
   * @param sensitivity by how much the value moves with the reading; of several all that differ
   * @param standard the standard uncertainty that it contributes, in the unit of the value
   * @param share of the combined variance
   */
  public record Part(
      String source,
      String width,
      String distribution,
      String divisor,
      String sensitivity,
      String freedom,
      String standard,
      String share) {
    /** In the order of the headings. */
    public List<String> cells() {
      return List.of(source, width, distribution, divisor, sensitivity, freedom, standard, share);
    }
  }

  /** Those of what was judged, in its order. */
  static List<BudgetTable> of(Report report, Language language) {
    return of(report.judgements(), ItemNames.of(report.list()), language);
  }

  private static List<BudgetTable> of(
      List<Judgement> judgements, ItemNames names, Language language) {
    Map<String, Judgement> greatest = new LinkedHashMap<>();
    for (Judgement j : judgements) {
      String key = key(j);
      if (key != null && j.value() != null && j.uncertainty() > 0) {
        greatest.merge(key, j, (a, b) -> b.uncertainty() > a.uncertainty() ? b : a);
      }
    }
    return greatest.values().stream().map(j -> of(j, names, language)).toList();
  }

  /** Those that are known before anything is read. */
  public static List<BudgetTable> expected(ItemList list, Language language) {
    return of(Expected.of(list), ItemNames.of(list), language);
  }

  private static String quantity(Item.Measured item, Language language) {
    QuantityKind kind = QuantityKind.find(item.scale().quantity());
    return kind == null ? item.scale().quantity() : language.term(kind.printed());
  }

  /** Of those with the same key one is shown; null where nothing is known. */
  private static @Nullable String key(Judgement j) {
    if (j.item() instanceof Item.Derived derived && !j.effects().isEmpty()) {
      return derived.where().test() + "/" + derived.scale().quantity();
    }
    return j.item() instanceof Item.Reading reading
            && reading.budget() != null
            && !reading.budget().isEmpty()
        ? reading.scale().quantity() + reading.scale().unit() + reading.budget()
        : null;
  }

  private static BudgetTable of(Judgement j, ItemNames names, Language language) {
    Item.Measured item = (Item.Measured) j.item();
    String unit = ItemWords.unit(item);
    double factor = Objects.requireNonNull(j.factor(), "a known uncertainty").doubleValue();
    double all = j.uncertainty() / factor;
    List<Part> parts = new ArrayList<>();
    if (item instanceof Item.Reading reading) {
      double y = Objects.requireNonNull(j.value(), "a budget without a value").doubleValue();
      for (Item.Contribution c : Objects.requireNonNull(reading.budget(), "a budget")) {
        double u = Budget.standard(c, y);
        String width = figures(u * divisor(c.spread())) + unit;
        Line line = new Line(language.term(c.name()), width, c.spread(), "1", c.spread().freedom());
        parts.add(line.part(u, all, unit, language));
      }
    } else {
      j.effects()
          .forEach(
              effect ->
                  parts.add(
                      line(effect, unit, language).part(effect.standard(), all, unit, language)));
    }
    return new BudgetTable(
        item instanceof Item.Derived ? item.head().title() : quantity(item, language),
        item instanceof Item.Derived d ? d.calculation().formula().text() : "",
        names.of(item),
        language.number(Objects.requireNonNull(j.value(), "a value").toPlainString()) + unit,
        language.number(figures(all)) + unit,
        language.number(JudgeReport.uncertainty(j)),
        language.number(figures(factor)),
        j.freedom() == null ? INFINITE : j.freedom().toString(),
        parts);
  }

  /** What a row says beside its figures of the result. */
  private record Line(
      String source,
      String width,
      @Nullable Distribution spread,
      String sensitivity,
      @Nullable Rational freedom) {
    private Part part(double u, double all, String unit, Language language) {
      String share =
          new BigDecimal(100 * u * u / all / all).setScale(1, RoundingMode.HALF_EVEN) + " %";
      return new Part(
          source,
          language.number(width),
          spread == null
              ? language.of("budget.from-readings")
              : language.term(spread.shape().word()),
          spread == null ? "" : language.number(figures(divisor(spread))),
          language.number(sensitivity),
          freedom == null ? INFINITE : language.number(freedom.toPlain()),
          language.number(figures(u)) + unit,
          language.number(share));
    }
  }

  private static Line line(Effect effect, String unit, Language language) {
    String source = language.term(effect.source());
    String of =
        effect.moved().isEmpty()
            ? source
            : language.of("budget.of", source, each(effect.moved(), Effect.Moved::name));
    String sharing =
        switch (effect.sharing()) {
          case NONE -> effect.moved().size() > 1 ? language.of("budget.alone", of) : of;
          case APART -> language.of("budget.apart", of);
          case COMMON -> language.of("budget.common", of);
        };
    return new Line(
        sharing,
        each(effect.moved(), m -> figures(m.width()) + ItemWords.unit(m.unit())),
        effect.spread(),
        each(effect.moved(), m -> figures(m.slope()) + per(unit, ItemWords.unit(m.unit()))),
        effect.freedom());
  }

  /** Each that differs, once. */
  private static String each(List<Effect.Moved> moved, Function<Effect.Moved, String> words) {
    Set<String> each = new LinkedHashSet<>();
    moved.forEach(one -> each.add(words.apply(one)));
    return String.join(", ", each);
  }

  /** The unit of a sensitivity; none where both units are the same. */
  private static String per(String unit, String part) {
    if (unit.equals(part)) {
      return "";
    }
    String above = unit.isEmpty() ? " 1" : unit;
    return part.isEmpty() ? unit : above + "/" + part.strip();
  }

  private static double divisor(Distribution spread) {
    return 1 / Math.sqrt(spread.variance().doubleValue());
  }

  /** Four digits: one more than U is ever printed with, so that a sum can be followed. */
  private static String figures(double value) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(4, RoundingMode.HALF_EVEN));
    BigDecimal plain = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    return plain.toPlainString();
  }
}
