package passband.render;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemWords;
import passband.judge.Budget;
import passband.words.Language;

/**
 * A column of the table of limits, as {@code limits.csv} and {@code limits.xlsx} have it.
 *
 * @param required whether it is never blank
 * @param unit what its numbers are in; empty for a column of words
 * @param description what it holds
 * @param cell what it holds of a row; null for a blank
 */
record LimitColumn(
    String name,
    Type type,
    boolean required,
    String unit,
    String description,
    Function<Row, @Nullable String> cell) {

  /** An item with limits, in its list. */
  record Row(ItemList list, Item.Measured item, Item.Limits limits) {}

  /** What cells hold, by its name among the datatypes of CSV on the Web. */
  enum Type {
    WORDS("string"),
    DAY("date"),
    COUNT("integer"),
    DECIMAL("decimal");

    private final String datatype;

    Type(String datatype) {
      this.datatype = datatype;
    }

    String datatype() {
      return datatype;
    }

    /** Whether it is calculated with. */
    boolean isNumber() {
      return this == COUNT || this == DECIMAL;
    }
  }

  private static final String READING = "the unit in the column 'unit'";
  private static final String NONE = "1 (a plain number)";

  /** The columns, in order. */
  static final List<LimitColumn> ALL =
      List.of(
          always("procedure", "Procedure", r -> r.list().source().procedure()),
          always("revision", "Revision of the procedure", r -> r.list().source().revision()),
          day("revision_date", "Date of the revision", r -> r.list().source().date()),
          always("device", "Generator", r -> r.list().source().device()),
          always("analyzer", "Analyzer", r -> r.list().source().analyzers()),
          always("point", "Identity of the test point", r -> r.item().id()),
          always("test", "Test", r -> r.item().where().test()),
          words("outlet", "Outlet", r -> r.item().where().outlet()),
          words("mode", "Mode", r -> r.item().where().mode()),
          words("phase", "Phase of the procedure", r -> r.item().head().phase()),
          number(
              "setting",
              "the unit in the column 'setting_unit'",
              "Setting",
              r -> r.item().where().setting()),
          words("setting_unit", "Unit of the setting (UCUM)", r -> r.item().where().settingUnit()),
          number(
              "load", "the unit in the column 'load_unit'", "Load", r -> r.item().where().load()),
          words("load_unit", "Unit of the load (UCUM)", r -> r.item().where().loadUnit()),
          words(
              "further_settings",
              "Further settings as printed, NAME=VALUE, separated by semicolons",
              LimitColumn::further),
          always(
              "kind",
              "'reading' is read from the analyzer, 'derived' is calculated from readings",
              r -> r.item() instanceof Item.Derived ? "derived" : "reading"),
          always("quantity", "Quantity", r -> r.item().scale().quantity()),
          always(
              "unit", "Unit of the quantity and its limits (UCUM)", r -> r.item().scale().unit()),
          number(
              "nominal",
              READING,
              "Nominal value, six significant digits",
              r -> r.limits().nominal()),
          number(
              "lower",
              READING,
              "Lower tolerance limit, inclusive, rounded inward; blank: no lower limit",
              r -> r.limits().lower()),
          number(
              "upper",
              READING,
              "Upper tolerance limit, inclusive, rounded inward; blank: no upper limit",
              r -> r.limits().upper()),
          number(
              "accept_lower",
              READING,
              "Lower acceptance limit, inclusive: a lower reading is not accepted; blank: no lower"
                  + " limit",
              r -> r.limits().acceptLower()),
          number(
              "accept_upper",
              READING,
              "Upper acceptance limit, inclusive: a higher reading is not accepted; blank: no upper"
                  + " limit",
              r -> r.limits().acceptUpper()),
          number("resolution", READING, "Step of the reading", r -> r.item().scale().resolution()),
          new LimitColumn(
              "decimals",
              Type.COUNT,
              true,
              NONE,
              "Decimals that a reading must be recorded with; with fewer it cannot be judged",
              r -> String.valueOf(r.item().scale().decimals())),
          number(
              "uncertainty",
              READING,
              "Expanded uncertainty U = k u of the reading, the larger of those at the two ends,"
                  + " three significant digits rounded up; blank: not known",
              r -> r.limits().uncertainty()),
          number(
              "coverage_factor",
              NONE,
              "Coverage factor k of the expanded uncertainty",
              r -> Budget.coverage(r.list().decision().coverage(), r.item())),
          number(
              "accuracy_ratio",
              NONE,
              "Accuracy ratio, two decimals rounded down; blank: there is none",
              r -> r.limits().accuracyRatio()),
          always(
              "decision",
              "Decision rule: simple, guarded, managed, or risk with the accepted risk in percent",
              r -> decision(r.list().decision())),
          always(
              "source",
              "Where the limits come from: computed by the 'rule', or 'stated' in the row",
              r -> r.limits().source()),
          always(
              "digest",
              "Digest of the compiled procedure (SHA-256)",
              r -> r.list().source().digest()),
          always(
              "release",
              "Whether the procedure was released when this was written: 'released' or 'not"
                  + " released'; 'unknown' where the limits file does not say",
              r -> release(r.list().source())));

  private static String release(ItemList.Source source) {
    return source.isUnreleased()
        ? "not released"
        : source.released() == null ? "unknown" : "released";
  }

  /** The rows, in the order of the sheet. */
  static List<Row> rows(ItemList list) {
    List<Row> rows = new ArrayList<>();
    for (Item item : list.items()) {
      if (item instanceof Item.Measured measured && measured.limits() != null) {
        rows.add(new Row(list, measured, measured.limits()));
      }
    }
    return rows;
  }

  /** What a reader of the table has to know who has nothing else, a sentence or two each. */
  static List<String> notes(ItemList list) {
    return List.of(
        "Limits are inclusive: a reading on a limit is within it.",
        "A blank limit means that this side has no limit; any other blank means that the row has no"
            + " such thing.",
        "A reading is accepted from accept_lower to accept_upper when it is recorded in the row's"
            + " unit with at least as many decimals as the column 'decimals' says; with fewer it is"
            + " unclear, which is not a pass.",
        "How the acceptance limits follow from the tolerance limits, "
            + JudgeReport.rule(list, Language.ENGLISH)
            + ".",
        "A row of kind 'derived' is calculated from readings, never typed. Where the decision rule"
            + " has a guard band, 'passband judge' moves its limits inward by the uncertainty of"
            + " those readings; its acceptance limits in this table are the tolerance limits.",
        "This table has limits only. 'passband judge' with limits.json also needs every tick, choice"
            + " and record of the sheet before anything passes.");
  }

  private static LimitColumn always(String name, String description, Function<Row, String> cell) {
    return new LimitColumn(name, Type.WORDS, true, "", description, cell::apply);
  }

  private static LimitColumn day(String name, String description, Function<Row, String> cell) {
    return new LimitColumn(name, Type.DAY, true, "", description + " (YYYY-MM-DD)", cell::apply);
  }

  private static LimitColumn words(
      String name, String description, Function<Row, @Nullable String> cell) {
    return new LimitColumn(name, Type.WORDS, false, "", description, cell);
  }

  private static LimitColumn number(
      String name, String unit, String description, Function<Row, @Nullable BigDecimal> cell) {
    return new LimitColumn(
        name,
        Type.DECIMAL,
        false,
        unit,
        description,
        row -> {
          BigDecimal value = cell.apply(row);
          return value == null ? null : value.toPlainString();
        });
  }

  private static @Nullable String further(Row row) {
    String further = ItemWords.furtherSettings(row.item());
    return further.isEmpty() ? null : further;
  }

  private static String decision(ItemList.Decision decision) {
    return decision.risk() == null
        ? decision.rule()
        : decision.rule()
            + " "
            + decision.risk().movePointRight(2).stripTrailingZeros().toPlainString()
            + " %";
  }
}
