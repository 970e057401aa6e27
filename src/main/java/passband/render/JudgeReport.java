package passband.render;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.ItemWords;
import passband.judge.Budget;
import passband.judge.GlobalRisk;
import passband.judge.Judgement;
import passband.judge.Report;
import passband.judge.Statement;

/** Verdicts as text and JSON, and the lines that the printed report is made of. */
public final class JudgeReport {
  private static final String STUDENT =
      ", more by Student's t where an uncertainty has few degrees of freedom (JCGM 100, G.4)";
  private static final String RECORDS =
      "recorded values have no known uncertainty and are compared with their limits as they are";

  private JudgeReport() {}

  /** For a terminal. */
  public static String text(Report report) {
    StringBuilder out = new StringBuilder(title(report) + ": " + report.overall().word() + "\n");
    ItemNames names = ItemNames.of(report.list());
    report.warnings().forEach(w -> out.append("  warning: " + w.text(names) + "\n"));
    report
        .superseded()
        .forEach(
            j -> out.append("  earlier failure: " + names.of(j.item()) + ": " + reading(j) + "\n"));
    report
        .phases()
        .forEach((phase, verdict) -> out.append("  " + phase + ": " + verdict.word() + "\n"));
    out.append("  " + rule(report.list()) + "\n");
    report
        .readings()
        .records()
        .forEach((name, said) -> out.append("  " + name + " = " + attempts(said) + "\n"));
    report.judgements().forEach(j -> out.append(line(j, names)));
    return out.toString();
  }

  /** What was written in a blank, one attempt after the other. */
  static String attempts(List<String> written) {
    return String.join(", then ", written);
  }

  private static String line(Judgement j, ItemNames names) {
    String accepted = accepted(j.item());
    return j.verdict().word().toUpperCase(Locale.ROOT)
        + "  "
        + names.of(j.item())
        + ": "
        + reading(j)
        + (accepted.isEmpty() ? "" : ", accepted: " + accepted)
        + (uncertainty(j).isEmpty() ? "" : ", U = " + uncertainty(j))
        + (factor(j).isEmpty() ? "" : " (" + factor(j) + ")")
        + (conformity(j).isEmpty() ? "" : ", conforms with P = " + conformity(j))
        + (j.causes().isEmpty() ? "" : " (" + j.why(names) + ")")
        + "\n";
  }

  /** The procedure with its revision and digest. */
  public static String title(Report report) {
    ItemList.Source source = report.list().source();
    return source.procedure()
        + ", revision "
        + source.revision()
        + " ("
        + source.digest().substring(0, Math.min(12, source.digest().length()))
        + ")";
  }

  /** What passes: limits, an outcome or a tick; empty for what is only recorded. */
  public static String accepted(Item item) {
    return item.accept(new Accepted());
  }

  /** The tolerance of what has one; else empty. */
  public static String tolerance(Item item) {
    return item instanceof Item.Measured m ? ItemWords.tolerance(m) : "";
  }

  private static final class Accepted implements Item.Visitor<String> {
    @Override
    public String reading(Item.Reading reading) {
      return ItemWords.accepted(reading);
    }

    @Override
    public String derived(Item.Derived derived) {
      return ItemWords.accepted(derived);
    }

    @Override
    public String recorded(Item.Recorded recorded) {
      return ItemWords.accepted(recorded);
    }

    @Override
    public String choice(Item.Choice choice) {
      return choice.pass() == null ? "" : choice.pass();
    }

    @Override
    public String tick(Item.Tick tick) {
      return "ticked";
    }
  }

  /**
   * The decision rule with its risk, as ISO/IEC 17025:2017, 7.8.6 asks: what may happen to a value
   * that lies on a limit.
   */
  public static String rule(ItemList list) {
    ItemList.Decision decision = list.decision();
    double guard = decision.guard().doubleValue();
    String coverage = "; coverage factor k = " + decision.coverage().toPlainString();
    String band =
        switch (decision.rule()) {
          case "simple" -> "simple acceptance, limits included; a value on a limit";
          case "guarded" ->
              "guarded acceptance, limits moved inward by U, limits included; a value on a tolerance"
                  + " limit";
          case "managed" ->
              "guarded acceptance by ANSI/NCSL Z540.3, method 6: limits moved inward by U times a factor"
                  + " for the ratio of tolerance and U, limits included; what does not conform is"
                  + " accepted with a probability below 2 % whatever share conforms; a calculated value"
                  + " is guarded by U, and one on its tolerance limit";
          default ->
              "guarded acceptance, limits moved inward until that risk is met, limits included; a"
                  + " value on a tolerance limit";
        };
    double risk = decision.risk() == null ? Budget.risk(guard) : decision.risk().doubleValue();
    return "decision rule: "
        + band
        + " is wrongly accepted with a probability of up to "
        + percent(risk)
        + coverage
        + (Budget.hasFiniteFreedom(list) ? STUDENT : "")
        + global(list)
        + (guard > 0 && hasRecordLimits(list) ? "; " + RECORDS : "");
  }

  /**
   * The greatest global risks of readings with a tolerance on both sides; empty without a prior.
   */
  private static String global(ItemList list) {
    BigDecimal prior = list.decision().prior();
    if (prior == null) {
      return "";
    }
    GlobalRisk worst = GlobalRisk.greatest(list, prior.doubleValue());
    String inside = "; with " + prior.movePointRight(2).stripTrailingZeros().toPlainString();
    return inside
        + " % in tolerance before the test "
        + (worst == null
            ? "no global risk is known: no reading has two limits and a known uncertainty"
            : "a generator that does not conform is accepted with a probability of at most "
                + percent(worst.consumer())
                + " and one that conforms rejected with at most "
                + percent(worst.producer())
                + " at each reading with two limits (global consumer's and producer's risk, JCGM 106,"
                + " 9.3 to 9.5, normal distributions about the middle of the tolerance)");
  }

  private static boolean hasRecordLimits(ItemList list) {
    return list.items().stream()
        .anyMatch(item -> item instanceof Item.Recorded blank && blank.accepts() != null);
  }

  private static String percent(double share) {
    return new BigDecimal(share * 100)
            .round(new MathContext(2, RoundingMode.UP))
            .stripTrailingZeros()
            .toPlainString()
        + " %";
  }

  /** Every attempt with the unit; what was not done in words. */
  public static String reading(Judgement j) {
    String unit = ItemWords.unit(j.item());
    if (j.item() instanceof Item.Derived && j.value() != null) {
      return j.value().toPlainString() + unit;
    }
    return j.attempts().isEmpty()
        ? j.verdict().word()
        : String.join(", then ", j.attempts()) + unit;
  }

  /** The expanded uncertainty to two significant digits, rounded up (JCGM 100, 7.2.6). */
  public static String uncertainty(Judgement j) {
    return Double.isNaN(j.uncertainty())
        ? ""
        : new BigDecimal(j.uncertainty()).round(new MathContext(2, RoundingMode.UP)).toPlainString()
            + ItemWords.unit(j.item());
  }

  /**
   * The factor k of the expanded uncertainty to two decimals, where Student's t makes it; else
   * empty.
   */
  public static String factor(Judgement j) {
    return j.factor() == null || j.freedom() == null || Double.isNaN(j.uncertainty())
        ? ""
        : "k = "
            + new BigDecimal(j.factor().doubleValue())
                .setScale(2, RoundingMode.HALF_EVEN)
                .toPlainString();
  }

  /** What is stated of it beside the verdict; empty where nothing is. */
  public static String statement(Judgement j) {
    Statement statement = j.statement();
    return statement == null ? "" : statement.word();
  }

  /** The probability of conformity to three decimals, rounded down. */
  public static String conformity(Judgement j) {
    return Double.isNaN(j.conformity())
        ? ""
        : new BigDecimal(j.conformity()).setScale(3, RoundingMode.DOWN).toPlainString();
  }

  /** For other programs: {@code {"format":"passband-verdicts/6",…}}. */
  public static String json(Report report) {
    return JudgeJson.of(report);
  }
}
