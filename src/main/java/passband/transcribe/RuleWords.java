package passband.transcribe;

import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Unit;

/** A rule as the language writes it and as a person reads it. */
final class RuleWords {
  private final ManualTable table;

  RuleWords(ManualTable table) {
    this.table = table;
  }

  /** As a line {@code output} says it: {@code power within 15 % of setting}. */
  String limit(Rule rule) {
    boolean ofSetting = rule.basis().of() == Basis.Of.SETTING;
    Unit unit = ofSetting ? table.setUnit() : table.readUnit();
    String of = " of " + nominal(rule.basis());
    String share = percent(rule.share());
    String amount =
        rule.form() == Rule.Form.APART ? percent(rule.amount()) : amount(rule.amount(), unit);
    String within =
        switch (rule.form()) {
          case SHARE -> share + of;
          case AMOUNT -> amount + of;
          case GREATER -> share + of + " or " + amount + ", whichever is greater";
          case SMALLER -> share + of + " or " + amount + ", whichever is smaller";
          case SUM -> share + " + " + amount + of;
          case APART -> "+" + amount + " -" + share + of;
        };
    return (ofSetting ? table.set() : table.read()).name() + " within " + within;
  }

  private String nominal(Basis basis) {
    if (basis.of() == Basis.Of.SETTING) {
      return "setting";
    }
    if (basis.nominal() == Basis.Nominal.PRINTED) {
      return "target";
    }
    return table.read().name().equals("voltage") ? "sqrt(setting * load)" : "sqrt(setting / load)";
  }

  /** With the nominal value and the rounding that it assumes. */
  String full(Rule rule) {
    String made =
        switch (rule.basis().nominal()) {
          case EXACT -> "";
          case PRINTED -> ", target being the printed nominal value";
          case ROUNDED -> ", the nominal value rounded first";
          case CUT -> ", the nominal value cut off first";
        };
    return limit(rule) + made + ", limits " + rule.basis().rounding().words();
  }

  static String percent(Rational share) {
    return share.times(Rational.HUNDRED).toPlain() + " %";
  }

  private static String amount(Rational amount, Unit unit) {
    return amount.over(unit.factor()).toPlain() + " " + unit.symbol();
  }

  /** A setting with its unit. */
  String setting(Printed setting) {
    return setting.value().over(table.setUnit().factor()).toPlain() + unit(table.setUnit());
  }

  private static String unit(Unit unit) {
    return unit.symbol().isEmpty() ? "" : " " + unit.symbol();
  }

  static String load(Printed ohms) {
    return ohms.value().toPlain() + " ohm";
  }

  /** A limit without its unit, with the decimals of the table. */
  String value(Rational value, Rational step) {
    Rational factor = table.readUnit().factor();
    Rational shown = step.over(factor);
    int decimals = 0;
    while (!shown.isInteger()) {
      shown = shown.times(Rational.TEN);
      decimals++;
    }
    return value.over(factor).toFixed(decimals);
  }

  /** An amount of what is read, with its unit and all its digits. */
  String amount(Rational value) {
    return amount(value, table.readUnit());
  }

  /** A value of what is read, with its unit. */
  String shown(Printed printed) {
    return value(printed.value(), printed.step()) + " " + table.readUnit().symbol();
  }

  /** The limits of a row as it prints them. */
  String printed(ManualRow row) {
    return limits(row, null);
  }

  /** The limits of a row as a rule makes them. */
  String meant(RowFinding finding) {
    return limits(finding.row(), finding);
  }

  /** As a rule makes them where there is a finding, else as they are printed. */
  private String limits(ManualRow row, @Nullable RowFinding finding) {
    String lower = limit(row, Side.LOWER, finding);
    String upper = limit(row, Side.UPPER, finding);
    if (upper.isEmpty()) {
      return "at least " + lower;
    }
    return lower.isEmpty() ? "at most " + upper : lower + " to " + upper;
  }

  private String limit(ManualRow row, Side side, @Nullable RowFinding finding) {
    Printed printed = row.limit(side);
    if (printed == null) {
      return "";
    }
    Rational meant = finding == null ? null : finding.meant(side);
    return value(meant == null ? printed.value() : meant, printed.step());
  }

  /** Where a row stands and what it is of. */
  String place(ManualRow row) {
    Printed ohms = row.ohms();
    return "Line "
        + row.line()
        + " ("
        + table.title(row.mode())
        + ", "
        + setting(row.setting())
        + (ohms == null ? "" : ", " + load(ohms))
        + ")";
  }

  /** The setting or load that explains a row; null where none does. */
  @Nullable String instead(RowFinding one) {
    Printed instead = one.instead();
    return instead == null ? null : one.slip() == Slip.LOAD ? load(instead) : setting(instead);
  }

  /** What is odd about a row, in a sentence. */
  String finding(RowFinding one) {
    String read = table.readUnit().symbol();
    String instead = instead(one);
    String why =
        instead == null
            ? one.slip().words()
            : "the " + (one.slip() == Slip.LOAD ? "load" : "setting") + " is probably " + instead;
    return place(one.row())
        + ": the table prints "
        + printed(one.row())
        + " "
        + read
        + ", the rule gives "
        + meant(one)
        + " "
        + read
        + "; "
        + why;
  }
}
