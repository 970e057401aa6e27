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
import passband.judge.Verdict;
import passband.words.Language;

/** Verdicts as text and JSON, and the lines that the printed report is made of. */
public final class JudgeReport {
  private JudgeReport() {}

  /** The language of a report: that of the procedure. */
  static Language language(ItemList list) {
    return Language.orEnglish(list.source().language());
  }

  /** A verdict as people read it. */
  static String word(Verdict verdict, Language language) {
    return language.of("page.verdict." + verdict.word().replace(' ', '-'));
  }

  /** For a terminal: the program's own words are English there, as everywhere on it. */
  public static String text(Report report) {
    StringBuilder out = new StringBuilder(title(report) + ": " + report.overall().word() + "\n");
    ItemNames names = ItemNames.of(report.list());
    report
        .warnings()
        .forEach(w -> out.append("  warning: " + w.text(names, Language.ENGLISH) + "\n"));
    report
        .superseded()
        .forEach(
            j ->
                out.append(
                    "  earlier failure: "
                        + names.of(j.item())
                        + ": "
                        + reading(j, Language.ENGLISH)
                        + "\n"));
    report
        .phases()
        .forEach((phase, verdict) -> out.append("  " + phase + ": " + verdict.word() + "\n"));
    out.append("  " + rule(report.list(), Language.ENGLISH) + "\n");
    report
        .readings()
        .records()
        .forEach(
            (name, said) ->
                out.append("  " + name + " = " + attempts(said, Language.ENGLISH) + "\n"));
    report.judgements().forEach(j -> out.append(line(j, names)));
    return out.toString();
  }

  /** What was written in a blank, one attempt after the other. */
  static String attempts(List<String> written, Language language) {
    return written.stream().reduce((one, next) -> language.of("judge.then", one, next)).orElse("");
  }

  private static String line(Judgement j, ItemNames names) {
    Language english = Language.ENGLISH;
    String accepted = accepted(j.item(), english);
    return j.verdict().word().toUpperCase(Locale.ROOT)
        + "  "
        + names.of(j.item())
        + ": "
        + reading(j, english)
        + (accepted.isEmpty() ? "" : ", accepted: " + accepted)
        + (uncertainty(j).isEmpty() ? "" : ", U = " + uncertainty(j))
        + (factor(j).isEmpty() ? "" : " (" + factor(j) + ")")
        + (conformity(j).isEmpty() ? "" : ", conforms with P = " + conformity(j))
        + (j.causes().isEmpty() ? "" : " (" + j.why(names, english) + ")")
        + "\n";
  }

  /** The procedure with its revision and digest. */
  public static String title(Report report) {
    return title(report, Language.ENGLISH);
  }

  /** The same in a language. */
  static String title(Report report, Language language) {
    ItemList.Source source = report.list().source();
    return source.procedure()
        + ", "
        + language.of("revision", source.revision())
        + " ("
        + source.digest().substring(0, Math.min(12, source.digest().length()))
        + ")";
  }

  /** What passes: limits, an outcome or a tick; empty for what is only recorded. */
  public static String accepted(Item item, Language language) {
    return item.accept(new Accepted(language));
  }

  /** The tolerance of what has one; else empty. */
  public static String tolerance(Item item, Language language) {
    return item instanceof Item.Measured m ? ItemWords.tolerance(m, language) : "";
  }

  private record Accepted(Language language) implements Item.Visitor<String> {
    @Override
    public String reading(Item.Reading reading) {
      return ItemWords.accepted(reading, language);
    }

    @Override
    public String derived(Item.Derived derived) {
      return ItemWords.accepted(derived, language);
    }

    @Override
    public String recorded(Item.Recorded recorded) {
      return ItemWords.accepted(recorded, language);
    }

    @Override
    public String choice(Item.Choice choice) {
      return choice.pass() == null ? "" : choice.pass();
    }

    @Override
    public String tick(Item.Tick tick) {
      return language.of("judge.ticked");
    }
  }

  /**
   * The decision rule with its risk, as ISO/IEC 17025:2017, 7.8.6 asks: what may happen to a value
   * that lies on a limit.
   */
  public static String rule(ItemList list, Language language) {
    ItemList.Decision decision = list.decision();
    double guard = decision.guard().doubleValue();
    double risk = decision.risk() == null ? Budget.risk(guard) : decision.risk().doubleValue();
    String key =
        switch (decision.rule()) {
          case "simple" -> "judge.rule.simple";
          case "guarded" -> "judge.rule.guarded";
          case "managed" -> "judge.rule.managed";
          default -> "judge.rule.risk";
        };
    String coverage = language.number(decision.coverage().toPlainString());
    String factor =
        language.of("judge.coverage", coverage)
            + (Budget.hasFiniteFreedom(list) ? language.of("judge.student") : "");
    String rule = language.of("judge.both", language.of(key, percent(risk, language)), factor);
    BigDecimal prior = list.decision().prior();
    if (prior != null) {
      rule = language.of("judge.both", rule, global(list, prior, language));
    }
    return guard > 0 && hasRecordLimits(list)
        ? language.of("judge.both", rule, language.of("judge.records"))
        : rule;
  }

  /** The greatest global risks of readings with a tolerance on both sides. */
  private static String global(ItemList list, BigDecimal prior, Language language) {
    GlobalRisk worst = GlobalRisk.greatest(list, prior.doubleValue());
    String inside = language.number(prior.movePointRight(2).stripTrailingZeros().toPlainString());
    return worst == null
        ? language.of("judge.no-global", inside)
        : language.of(
            "judge.global",
            inside,
            percent(worst.consumer(), language),
            percent(worst.producer(), language));
  }

  private static boolean hasRecordLimits(ItemList list) {
    return list.items().stream()
        .anyMatch(item -> item instanceof Item.Recorded blank && blank.accepts() != null);
  }

  private static String percent(double share, Language language) {
    String percent =
        new BigDecimal(share * 100)
            .round(new MathContext(2, RoundingMode.UP))
            .stripTrailingZeros()
            .toPlainString();
    return language.number(percent) + " %";
  }

  /** Every attempt with the unit; what was not done in words. */
  public static String reading(Judgement j, Language language) {
    String unit = ItemWords.unit(j.item());
    if (j.item() instanceof Item.Derived && j.value() != null) {
      return language.number(j.value().toPlainString()) + unit;
    }
    List<String> attempts =
        j.item() instanceof Item.Measured
            ? j.attempts().stream().map(language::number).toList()
            : j.item() instanceof Item.Tick
                ? j.attempts().stream().map(one -> ticked(one, language)).toList()
                : j.attempts();
    return attempts.isEmpty() ? word(j.verdict(), language) : attempts(attempts, language) + unit;
  }

  /** {@code yes} in a file is a word of the file's. */
  private static String ticked(String written, Language language) {
    return written.equals("yes") ? language.of("judge.yes") : written;
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
  public static String statement(Judgement j, Language language) {
    Statement statement = j.statement();
    return statement == null
        ? ""
        : language.of("judge.statement." + statement.word().replace(' ', '-'));
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
