package passband.transcribe;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import passband.quantity.Rational;

/** The bench of a draft: placeholders, since no table says what it is measured with. */
final class DraftBench {
  private static final String FILL_IN = "\"Placeholder: fill in from the instrument's manual.\"";

  /** In ohm: IEC 60601-2-2, 201.8.7, from memory. A meter's own may be off by a tenth. */
  private static final Rational HF_NETWORK = Rational.of(200);

  private final ManualTable table;
  private final List<ManualRow> rows;
  private final boolean finer;

  /**
   * @param rows that stand in the draft
   * @param finer whether the analyzer shows one digit more than the table prints
   */
  DraftBench(ManualTable table, List<ManualRow> rows, boolean finer) {
    this.table = table;
    this.rows = rows;
    this.finer = finer;
  }

  /** The different loads of some rows, the lowest first. */
  static String loads(List<ManualRow> rows) {
    TreeMap<Rational, String> loads = new TreeMap<>();
    for (ManualRow row : rows) {
      Printed ohms = row.ohms();
      if (ohms != null) {
        loads.put(ohms.value(), RuleWords.load(ohms));
      }
    }
    return String.join(", ", loads.values());
  }

  /**
   * What leakage flows through: the table's one load where that can be a meter's own resistance.
   * Another load is the modes' own.
   */
  static String meter(List<ManualRow> rows) {
    String loads = loads(rows);
    return rows.stream().allMatch(DraftBench::isThroughAMeter) && !loads.contains(",")
        ? loads
        : HF_NETWORK.toPlain() + " ohm";
  }

  private static boolean isThroughAMeter(ManualRow row) {
    Printed load = row.ohms();
    return load != null
        && load.value().minus(HF_NETWORK).abs().times(Rational.TEN).compareTo(HF_NETWORK) <= 0;
  }

  List<String> analyzer() {
    RuleWords words = new RuleWords(table);
    List<String> lines = new ArrayList<>();
    lines.add("# A placeholder: put 'use' and your analyzer's profile in its place.");
    lines.add("analyzer your-analyzer \"Your analyzer\" {");
    lines.add(
        "  allow error-unknown because \"A placeholder of a draft: nothing is read with it.\"");
    lines.add("  jack high \"HIGH\"" + (table.isLeakage() ? " floating" : ""));
    lines.add("  jack low  \"LOW\"");
    lines.add("  settle 3 s # a guess: fill in from the instrument's manual");
    if (table.isLeakage()) {
      lines.add("  measure hf-leakage from high to low through " + meter(rows) + " {");
    } else {
      lines.add("  load from high to low {");
      lines.add("    values " + loads(rows));
      lines.add("    error  unknown because " + FILL_IN);
      lines.add("    power  unknown because " + FILL_IN);
      lines.add("  }");
      lines.add("  measure " + table.read().name() + " {");
    }
    String unit = table.readUnit().symbol();
    lines.add("    range 0 " + unit + " to " + words.amount(highest().times(Rational.TWO)));
    lines.add("    resolution " + words.amount(resolution()));
    lines.add("    error unknown because " + FILL_IN);
    lines.add("  }");
    lines.add("}");
    lines.add("");
    return lines;
  }

  private Rational highest() {
    Rational highest = Rational.ZERO;
    for (Printed limit : limits()) {
      highest = highest.max(limit.value());
    }
    return highest;
  }

  private Rational resolution() {
    Rational step = null;
    for (Printed limit : limits()) {
      step = step == null ? limit.step() : step.min(limit.step());
    }
    if (step == null) {
      return Rational.ONE;
    }
    return finer ? step.over(Rational.TEN) : step;
  }

  private List<Printed> limits() {
    List<Printed> limits = new ArrayList<>();
    for (ManualRow row : rows) {
      for (Side side : Side.values()) {
        Printed printed = row.limit(side);
        if (printed != null) {
          limits.add(printed);
        }
      }
    }
    return limits;
  }

  static List<String> leads() {
    List<String> lines = new ArrayList<>();
    lines.add("# Placeholders: your leads, with the voltages that are moulded into them.");
    lines.add("leads your-leads \"Your leads\" {");
    lines.add(
        "  allow lead-unrated because \"A placeholder of a draft: no lead is used before its rating is written here.\"");
    for (String colour : List.of("red", "black")) {
      lines.add(
          "  lead %s \"%s lead\", rated unknown because \"Placeholder: read it off the lead.\", colour %s"
              .formatted(colour, colour, colour));
    }
    lines.add("}");
    lines.add("");
    return lines;
  }

  List<String> setup() {
    if (table.isLeakage()) {
      return List.of(
          "  setup to-earth \"From the outlet to earth\" {",
          "    connect red from outlet.first to analyzer.high",
          "    connect black from device.protective-earth.terminal to analyzer.low",
          "    allow pole-unwired because \"The table does not say from which terminal it is measured.\"",
          "  }");
    }
    return List.of(
        "  setup into-load \"Output into the load\" {",
        "    connect red from outlet.first to analyzer.high",
        "    connect black from outlet.second to analyzer.low",
        "  }");
  }
}
