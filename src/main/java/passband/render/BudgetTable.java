package passband.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import passband.evidence.Item;
import passband.evidence.ItemWords;
import passband.judge.Budget;
import passband.judge.Judgement;
import passband.judge.Report;

/**
 * The uncertainty of a reading by its contributions (JCGM 100, 7.2.7; EA-4/02, 4): of all readings
 * with the same contributions the one with the greatest uncertainty.
 *
 * @param quantity what is read
 * @param item the reading that is shown
 * @param value what was read, with its unit
 * @param standard its combined standard uncertainty
 * @param expanded its expanded uncertainty U
 * @param factor the coverage factor k
 * @param freedom its effective degrees of freedom
 */
public record BudgetTable(
    String quantity,
    String item,
    String value,
    String standard,
    String expanded,
    String factor,
    String freedom,
    List<Part> parts) {
  private static final String INFINITE = "∞";

  /**
   * A contribution. Each is given as it moves the reading, so that its sensitivity is one.
   *
   * @param width its half-width at the reading
   * @param divisor by which that is divided for the standard uncertainty
   * @param share of the combined variance
   */
  public record Part(
      String source,
      String width,
      String distribution,
      String divisor,
      String standard,
      String sensitivity,
      String freedom,
      String share) {}

  /** Those of a report, in the order of its items. */
  static List<BudgetTable> of(Report report) {
    Map<String, Judgement> greatest = new LinkedHashMap<>();
    for (Judgement j : report.judgements()) {
      if (j.item() instanceof Item.Reading reading
          && reading.budget() != null
          && !reading.budget().isEmpty()
          && j.value() != null
          && j.uncertainty() > 0) {
        String key = reading.scale().quantity() + reading.scale().unit() + reading.budget();
        greatest.merge(key, j, (a, b) -> b.uncertainty() > a.uncertainty() ? b : a);
      }
    }
    return greatest.values().stream().map(BudgetTable::of).toList();
  }

  private static BudgetTable of(Judgement j) {
    Item.Reading reading = (Item.Reading) j.item();
    double y = Objects.requireNonNull(j.value(), "a budget without a value").doubleValue();
    List<Item.Contribution> budget = Objects.requireNonNull(reading.budget(), "a budget");
    double all = Budget.combined(budget.stream().map(c -> Budget.standard(c, y)).toList());
    String unit = ItemWords.unit(reading);
    List<Part> parts = new ArrayList<>();
    for (Item.Contribution c : budget) {
      double u = Budget.standard(c, y);
      double divisor = 1 / Math.sqrt(c.spread().variance().doubleValue());
      parts.add(
          new Part(
              c.name(),
              figures(u * divisor) + unit,
              c.spread().shape().word(),
              figures(divisor),
              figures(u) + unit,
              "1",
              c.spread().freedom() == null ? INFINITE : c.spread().freedom().toPlain(),
              new BigDecimal(100 * u * u / all / all).setScale(1, RoundingMode.HALF_EVEN) + " %"));
    }
    return new BudgetTable(
        reading.scale().quantity(),
        reading.id(),
        j.value().toPlainString() + unit,
        figures(all) + unit,
        JudgeReport.uncertainty(j),
        j.factor() == null ? "" : figures(j.factor().doubleValue()),
        j.freedom() == null ? INFINITE : j.freedom().toString(),
        parts);
  }

  /** Four digits: one more than U is ever printed with, so that a sum can be followed. */
  private static String figures(double value) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(4, RoundingMode.HALF_EVEN));
    BigDecimal plain = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    return plain.toPlainString();
  }
}
