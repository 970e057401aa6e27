package passband.transcribe;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.quantity.Rational;

/**
 * Writes what was found as a library: the generator with what the table says of it, placeholders
 * for the bench, and the procedure. Nothing that the table does not say is made up: it is unknown,
 * and the sheet's first section asks for it.
 */
final class Draft {
  private static final String NOT_SAID = "\"The table does not say it.\"";

  private final Inference.Found found;
  private final ManualTable table;
  private final RuleWords words;
  private final List<String> names;

  private final DraftOutlets outlets;
  private final String name;
  private final String title;
  private final String date;

  /** Modes whose rule cannot be written although it is settled. */
  private final Set<Integer> onlyStated = new HashSet<>();

  /** By line of the table, why a row is left out. */
  private final Map<Integer, String> leftOut = new TreeMap<>();

  private boolean finer;
  private final Set<Code> allowed = new TreeSet<>();

  private final List<String> lines = new ArrayList<>();

  /** By line of the draft, the row that stands there. */
  private final Map<Integer, ManualRow> rowLines = new HashMap<>();

  Draft(Inference.Found found, String name, String title, String date) {
    this.found = found;
    this.table = found.table();
    this.words = new RuleWords(table);
    this.names = DraftNames.names(table.titles(), "mode");
    this.outlets = new DraftOutlets(table);
    this.name = name;
    this.title = title;
    this.date = date;
    for (ModeFinding mode : found.modes()) {
      for (RowFinding one : mode.differing()) {
        if (!one.isNote() && (!mode.settled() || one.elsewhere())) {
          leftOut.put(one.row().line(), words.finding(one));
        }
      }
      for (ManualRow row : table.of(mode.mode())) {
        Printed lower = row.lower();
        Printed upper = row.upper();
        boolean turned =
            lower != null && upper != null && lower.value().compareTo(upper.value()) > 0;
        if (turned && !mode.settled()) {
          leftOut.putIfAbsent(
              row.line(), words.place(row) + ": its lower limit is above its upper limit");
        }
      }
      if (table.of(mode.mode()).stream().anyMatch(r -> r.lower() == null || r.upper() == null)) {
        onlyStated.add(mode.mode());
      }
    }
  }

  // ---- what a trial changes ----

  void onlyStated(int mode) {
    onlyStated.add(mode);
    for (RowFinding one : found.modes().get(mode).differing()) {
      if (!one.isNote()) {
        leftOut.put(one.row().line(), words.finding(one));
      }
    }
  }

  boolean isStated(int mode) {
    return !found.modes().get(mode).settled() || onlyStated.contains(mode);
  }

  void leaveOut(ManualRow row, String why) {
    leftOut.put(row.line(), words.place(row) + ": " + why);
  }

  void finer() {
    finer = true;
  }

  boolean isFiner() {
    return finer;
  }

  /** Lets the procedure leave untested what the table has no limits for. */
  void allow(Code untested) {
    allowed.add(untested);
  }

  boolean allows(Code untested) {
    return allowed.contains(untested);
  }

  /** The row on a line of the draft, counted from 1; null for none. */
  @Nullable ManualRow row(int line) {
    return rowLines.get(line);
  }

  private List<ManualRow> kept(int mode) {
    return table.of(mode).stream().filter(row -> !leftOut.containsKey(row.line())).toList();
  }

  private List<ManualRow> kept() {
    return table.rows().stream().filter(row -> !leftOut.containsKey(row.line())).toList();
  }

  boolean isEmpty() {
    return kept().isEmpty();
  }

  // ---- the text ----

  /** The whole text. */
  String write() {
    lines.clear();
    rowLines.clear();
    add(
        "# A draft from a table of limits. What the table does not say is unknown or a placeholder here; the section");
    add(
        "# 'To settle before this draft is used' of the procedure lists it, and the sheet prints it.");
    add("");
    device();
    bench();
    procedure();
    return String.join("\n", lines) + "\n";
  }

  private void add(String line) {
    lines.add(line);
  }

  private void device() {
    add("# Placeholders: the outlet, its terminals and the contacts that activate it.");
    add("device generator " + DraftNames.text(title) + " {");
    outlets.declared(kept()).forEach(this::add);
    for (ModeFinding mode : found.modes()) {
      if (!kept(mode.mode()).isEmpty()) {
        mode(mode);
      }
    }
    add("}");
    add("");
  }

  private void mode(ModeFinding mode) {
    int at = mode.mode();
    add(
        "  mode "
            + names.get(at)
            + " "
            + DraftNames.text(table.title(at))
            + " on "
            + outlets.names(at)
            + " {");
    add("    setting " + table.set().name() + " " + settings(at));
    add(
        "    load "
            + (table.isLeakage() ? "unknown because " + NOT_SAID : DraftBench.loads(kept(at))));
    Rule rule = mode.rule();
    if (rule != null && !isStated(at) && !usesTarget(mode)) {
      add("    output " + words.limit(rule));
    }
    add("    peak-voltage " + peakVoltage(at));
    add("    duty unknown because " + NOT_SAID);
    add("    activate unknown because " + NOT_SAID);
    add("  }");
  }

  /** The highest that a table of peak voltages accepts. */
  private String peakVoltage(int mode) {
    Rational highest = Rational.ZERO;
    for (ManualRow row : kept(mode)) {
      Printed upper = row.upper();
      if (upper == null || !table.read().name().equals("peak-voltage")) {
        return "unknown because " + NOT_SAID;
      }
      highest = highest.max(upper.value());
    }
    return "at most " + words.amount(highest);
  }

  private String settings(int mode) {
    TreeMap<Rational, String> settings = new TreeMap<>();
    kept(mode).forEach(row -> settings.put(row.setting().value(), words.setting(row.setting())));
    return String.join(", ", settings.values());
  }

  private void bench() {
    DraftBench bench = new DraftBench(table, kept(), finer);
    bench.analyzer().forEach(this::add);
    DraftBench.leads().forEach(this::add);
  }

  private String unit() {
    return table.readUnit().symbol();
  }

  private void procedure() {
    add("procedure " + name + " " + DraftNames.text(title + ": output") + " {");
    add("  revision \"draft\" on " + date);
    add("  device generator");
    add("  analyzer your-analyzer");
    add("  leads your-leads");
    add("  decision simple");
    for (Code code : allowed) {
      add("  allow " + code.id() + " because " + DraftNames.text(untested(code)));
    }
    add("");
    add(
        "  caution burn \"High-frequency output burns. Touch no lead, pin or jack while the output is on.\"");
    add(
        "  caution patient \"Never with a patient connected. Keep people with pacemakers or other implants away.\"");
    add(
        "  caution authority \"The maker's service manual and local rules come first. Qualified staff only.\"");
    add("");
    add("  section to-settle \"To settle before this draft is used\" {");
    for (String one : toSettle()) {
      add("    confirm " + DraftNames.text(one));
    }
    add("  }");
    add("");
    new DraftBench(table, kept(), finer).setup().forEach(this::add);
    found.modes().forEach(this::test);
    add("}");
  }

  private void test(ModeFinding mode) {
    int at = mode.mode();
    boolean none = kept(at).isEmpty();
    add("");
    if (none) {
      add(
          "  # "
              + DraftNames.comment(table.title(at))
              + ": no row of this mode can be used as it is.");
      table.of(at).forEach(this::comment);
      return;
    }
    boolean stated = isStated(at);
    String accepted = stated ? table.read().name() : ofOutput(mode);
    boolean converted = !accepted.equals(table.read().name());
    boolean target = !stated && usesTarget(mode);
    add("  test " + names.get(at) + " " + DraftNames.text(table.title(at)) + " {");
    add("    outlet " + outlets.names(at));
    add("    setup " + (table.isLeakage() ? "to-earth" : "into-load"));
    Rule rule = mode.rule();
    String limit =
        accepted
            + (stated ? " from stated" : " from output")
            + (converted ? ", read as " + table.read().name() : "");
    add("    accept " + (target && rule != null ? words.limit(rule) : limit));
    if (limitsOfOneMode(at) > 1) {
      add("    allow stated-tighter because \"The table has a limit for each setting.\"");
    }
    add("    table {");
    add(
        "      mode | setting"
            + (table.setUnit().symbol().isEmpty() ? "" : "/" + table.setUnit().symbol())
            + (table.isLeakage() ? "" : " | load/ohm")
            + (target ? " | target/" + unit() : "")
            + " | stated"
            + (converted ? " " + table.read().name() : "")
            + "/"
            + unit());
    for (ManualRow row : table.of(at)) {
      if (leftOut.containsKey(row.line())) {
        comment(row);
      } else {
        row(mode, row, target);
      }
    }
    add("    }");
    add("  }");
  }

  /** How many different peak voltages a mode may have; none where the table has others. */
  private long limitsOfOneMode(int mode) {
    return peakVoltage(mode).startsWith("unknown")
        ? 0
        : kept(mode).stream().map(row -> row.limit(Side.UPPER)).distinct().count();
  }

  private String ofOutput(ModeFinding mode) {
    Rule rule = mode.rule();
    boolean setting = rule != null && rule.basis().of() == Basis.Of.SETTING;
    return (setting ? table.set() : table.read()).name();
  }

  private static boolean usesTarget(ModeFinding mode) {
    Rule rule = mode.rule();
    return rule != null && rule.basis().nominal() == Basis.Nominal.PRINTED;
  }

  private void comment(ManualRow row) {
    String why = leftOut.getOrDefault(row.line(), words.place(row));
    add("      # Left out. " + DraftNames.comment(why) + ".");
  }

  private void row(ModeFinding mode, ManualRow row, boolean target) {
    RowFinding finding = mode.of(row);
    boolean misprint = false;
    if (finding != null && !finding.isNote()) {
      misprint = true;
      add("      # " + DraftNames.comment(words.finding(finding)) + ".");
    }
    Printed ohms = row.ohms();
    Printed nominal = row.nominal();
    add(
        "      "
            + names.get(row.mode())
            + " | "
            + row.setting().value().over(table.setUnit().factor()).toPlain()
            + (table.isLeakage() || ohms == null ? "" : " | " + ohms.value().toPlain())
            + (target && nominal != null
                ? " | " + words.value(nominal.value(), nominal.step())
                : "")
            + " | "
            + (misprint ? "" : words.printed(row)));
    rowLines.put(lines.size(), row);
  }

  // ---- what is to be settled ----

  private static String untested(Code code) {
    return "The table has no lower limits"
        + (code == Code.MODE_UNTESTED ? " of some modes" : " at some settings")
        + ", so that a generator that delivers nothing passes there: another table of the manual"
        + " has to test the output.";
  }

  List<String> toSettle() {
    List<String> all = new ArrayList<>();
    all.add(
        "The generator's outlets, terminals, contacts, peak voltage and duty cycle are filled in"
            + " from the manual.");
    all.add(
        "The analyzer and the leads of this bench stand in the place of the placeholders; 3 s to settle"
            + " is a guess.");
    all.add(
        "No lead is used before its voltage rating is known to be above the mode's peak voltage.");
    if (table.isLeakage()) {
      all.add(
          "Nothing connects the analyzer's jack to earth that the leakage comes in at, and its meter"
              + " has "
              + DraftBench.meter(kept())
              + ": that is a guess.");
      if (!DraftBench.meter(kept()).equals(DraftBench.loads(kept()))) {
        all.add(
            "The table's load, "
                + DraftBench.loads(kept())
                + ", is no meter's: whether the mode delivers into it meanwhile, the draft does not say.");
      }
    }
    if (!table.limitsPrinted()) {
      all.add("The table prints no limits: they are its nominal values with their tolerances.");
    }
    allowed.forEach(code -> all.add(untested(code)));
    all.addAll(table.remarks());
    all.addAll(outlets.remarks());
    all.addAll(OtherColumns.contradictions(found));
    for (ModeFinding mode : found.modes()) {
      all.add(table.title(mode.mode()) + ": " + rule(mode));
    }
    Set<Integer> said = new TreeSet<>();
    for (ModeFinding mode : found.modes()) {
      for (RowFinding one : mode.differing()) {
        said.add(one.row().line());
        all.add(words.finding(one) + done(one) + ".");
      }
    }
    leftOut.forEach(
        (line, why) -> {
          if (!said.contains(line)) {
            all.add(why + ". It is left out.");
          }
        });
    return all;
  }

  private String done(RowFinding one) {
    if (leftOut.containsKey(one.row().line())) {
      return ". It is left out";
    }
    return one.isNote() ? "" : ". The sheet has the rule's limits";
  }

  private String rule(ModeFinding mode) {
    Rule rule = mode.rule();
    if (rule == null) {
      return "no simple rule makes these limits; they are the table's own.";
    }
    if (!isStated(mode.mode())) {
      return "the manual's text says " + words.full(rule) + ". The table follows it.";
    }
    StringBuilder text = new StringBuilder("the limits are the table's own. They may come from ");
    text.append(words.full(rule));
    Rule other = mode.others().isEmpty() ? null : mode.others().get(0);
    if (other != null) {
      text.append("; or from ").append(words.full(other));
      int more = mode.others().size() - 1;
      text.append(more > 0 ? "; or from " + more + " more" : "");
      String apart = Telling.apart(table, mode.mode(), rule, other);
      text.append(apart == null ? "" : "; " + apart);
    }
    return text.append(". Write what the manual's text says.").toString();
  }
}
