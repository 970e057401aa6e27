package passband.transcribe;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.parse.SpreadsheetText;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.transcribe.ColumnHeading.Role;

/** Reads a manual's table from CSV. */
final class TableReader {
  private static final int MOST_ROWS = 2000;

  private final Map<Role, Integer> places = new EnumMap<>(Role.class);
  private final List<ColumnHeading> headings = new ArrayList<>();
  private final Numerals numerals;
  private final List<ManualRow> rows = new ArrayList<>();
  private final List<String> remarks = new ArrayList<>();
  private final ModeCells modes = new ModeCells(remarks);
  private int line;

  private TableReader(boolean comma) {
    this.numerals = new Numerals(comma);
  }

  /**
   * The table.
   *
   * @param comma whether the decimal mark is a comma
   * @throws TableFault when it cannot be read, with the place
   */
  static ManualTable read(byte[] bytes, boolean comma) throws TableFault {
    List<CsvRecord> records = records(bytes);
    if (records.isEmpty()) {
      throw new TableFault("this file is empty: its first line must name the columns");
    }
    if (records.size() > MOST_ROWS + 1) {
      throw new TableFault("more than " + MOST_ROWS + " rows: no manual has such a table");
    }
    TableReader reader = new TableReader(comma);
    int heading = reader.caption(records);
    reader.headings(records.get(heading));
    for (CsvRecord record : records.subList(heading + 1, records.size())) {
      reader.line = (int) record.getStartingLineNumber();
      String alone = alone(record);
      if (alone == null) {
        reader.row(record);
      } else {
        reader.modes.between(alone, reader.line);
      }
    }
    return reader.table();
  }

  private static List<CsvRecord> records(byte[] bytes) throws TableFault {
    Charset charset = SpreadsheetText.charset(bytes);
    try {
      String text =
          Normalizer.normalize(SpreadsheetText.decoded(bytes, charset), Normalizer.Form.NFC)
              .replaceAll("\\p{Zs}", " ");
      return SpreadsheetText.records(text, SpreadsheetText.separator(text));
    } catch (CharacterCodingException e) {
      throw new TableFault(
          "this is not " + charset.name() + " text; let the spreadsheet save it as 'CSV UTF-8'");
    } catch (CsvParseException | IllegalArgumentException e) {
      throw new TableFault("this is not a CSV file: " + e.getMessage());
    }
  }

  // ---- lines that are no rows ----

  /** How many lines stand above the headings: a caption has but one cell. */
  private int caption(List<CsvRecord> records) {
    int at = 0;
    while (at + 1 < records.size() && alone(records.get(at)) != null) {
      remarks.add("Line " + (at + 1) + " is not of the table: '" + alone(records.get(at)) + "'.");
      at++;
    }
    return at;
  }

  /** The words of a line that has but one cell with anything in it; null for any other line. */
  private static @Nullable String alone(CsvRecord record) {
    List<String> said = new ArrayList<>();
    for (String field : record.getFields()) {
      String text = SpreadsheetText.stripped(field);
      if (!text.isEmpty()) {
        said.add(text);
      }
    }
    boolean words =
        record.getFieldCount() > 1
            && said.size() == 1
            && said.get(0).chars().filter(Character::isLetter).count() > 1;
    return words ? said.get(0) : null;
  }

  // ---- headings ----

  private void headings(CsvRecord record) throws TableFault {
    for (int i = 0; i < record.getFieldCount(); i++) {
      String text = SpreadsheetText.stripped(record.getField(i));
      if (text.isEmpty()) {
        throw new TableFault(
            "line " + record.getStartingLineNumber() + ": column " + (i + 1) + " has no heading");
      }
      ColumnHeading heading = ColumnHeading.of(text);
      Role role = heading.role();
      headings.add(heading);
      if (role != Role.NOTE && places.putIfAbsent(role, i) != null) {
        ColumnHeading first = headings.get(places.get(role));
        throw new TableFault(
            "the headings '"
                + first.text()
                + "' and '"
                + heading.text()
                + "' are both of what is called "
                + role.name().toLowerCase(java.util.Locale.ROOT)
                + " here; transcribe one table at a time");
      }
    }
    settle();
  }

  /** A heading such as 'Power' is of the setting, or of limits where something else is set. */
  private void settle() throws TableFault {
    Integer power = places.remove(Role.POWER);
    if (power != null) {
      Role role = places.containsKey(Role.SETTING) ? Role.LIMITS : Role.SETTING;
      if (places.putIfAbsent(role, power) != null) {
        throw new TableFault("what does the column '" + headings.get(power).text() + "' hold?");
      }
    }
    if (!places.containsKey(Role.SETTING)) {
      throw new TableFault("there is no column of settings ('Power (W)', 'Setting/W' or 'Level')");
    }
    if (!places.containsKey(Role.LOAD)) {
      throw new TableFault("there is no column of loads ('Load/ohm'): limits hold into a load");
    }
    boolean ends = places.containsKey(Role.LOWER) || places.containsKey(Role.UPPER);
    boolean limits = places.containsKey(Role.LIMITS);
    if (ends && limits) {
      throw new TableFault(
          "limits stand in one column or in two, 'lower' and 'upper'; not in both");
    }
    boolean rule = places.containsKey(Role.NOMINAL) && places.containsKey(Role.TOLERANCE);
    if (!ends && !limits && !rule) {
      throw new TableFault(
          "there is no column of limits ('Limits/mA', or 'Lower/mA' and 'Upper/mA')");
    }
  }

  // ---- rows ----

  private void row(CsvRecord record) throws TableFault {
    if (record.getFieldCount() > headings.size()) {
      throw new TableFault(
          "line "
              + line
              + " has "
              + record.getFieldCount()
              + " cells, the heading has "
              + headings.size());
    }
    int at =
        modes.of(
            line,
            cell(record, Role.OUTLET),
            cell(record, Role.MODE),
            places.containsKey(Role.MODE));
    Printed setting = number(record, Role.SETTING, true);
    if (setting == null) {
      throw fault(Role.SETTING, "this row has no setting");
    }
    Printed lower = number(record, Role.LOWER, false);
    Printed upper = number(record, Role.UPPER, false);
    String both = cell(record, Role.LIMITS);
    if (!both.isEmpty()) {
      try {
        LimitsCell limits = LimitsCell.of(both, numerals, unit(Role.LIMITS));
        units(Role.LIMITS, both);
        lower = limits.lower();
        upper = limits.upper();
      } catch (TableFault e) {
        throw fault(Role.LIMITS, String.valueOf(e.getMessage()));
      }
    }
    Printed nominal = number(record, Role.NOMINAL, false);
    boolean printed = hasLimits();
    ManualRow.Tolerance tolerance = tolerance(record, printed);
    if (!printed && nominal != null && tolerance != null) {
      lower = limit(nominal, tolerance, Rational.of(-1));
      upper = limit(nominal, tolerance, Rational.ONE);
    }
    if (lower == null && upper == null) {
      throw new TableFault("line " + line + ": this row has no limits");
    }
    rows.add(new ManualRow(line, at, setting, load(record), lower, upper, nominal, tolerance));
  }

  private boolean hasLimits() {
    return places.containsKey(Role.LIMITS)
        || places.containsKey(Role.LOWER)
        || places.containsKey(Role.UPPER);
  }

  private Printed load(CsvRecord record) throws TableFault {
    Printed load = number(record, Role.LOAD, false);
    if (load == null) {
      throw fault(Role.LOAD, "this row has no load");
    }
    if (load.value().isZero()) {
      throw fault(Role.LOAD, "a load of zero: leave the row out, output into a short is no limit");
    }
    return load;
  }

  /** A limit with as many decimals as it takes. */
  private static Printed limit(Printed nominal, ManualRow.Tolerance tolerance, Rational sign) {
    Rational part =
        tolerance.share() ? nominal.value().times(tolerance.value()) : tolerance.value();
    Rational value = nominal.value().plus(sign.times(part)).max(Rational.ZERO);
    Rational step = nominal.step();
    while (!value.over(step).isInteger()) {
      step = step.over(Rational.TEN);
    }
    return new Printed(value, step, "");
  }

  /** Null where the row says none, or what cannot be read although the limits are there. */
  private ManualRow.@Nullable Tolerance tolerance(CsvRecord record, boolean printed)
      throws TableFault {
    String text = cell(record, Role.TOLERANCE);
    if (text.isEmpty()) {
      return null;
    }
    String number =
        SpreadsheetText.stripped(
            text.startsWith("+/-") ? text.substring(3) : text.replace("±", ""));
    try {
      Unit unit = unit(Role.TOLERANCE);
      Printed value = numerals.read(number, unit, false);
      boolean share =
          number.endsWith("%") || (unit != null && unit.dimension().equals(Dimension.NONE));
      return new ManualRow.Tolerance(value.value(), share, text);
    } catch (TableFault e) {
      if (printed) {
        remarks.add(
            "Line "
                + line
                + ": its tolerance, '"
                + text
                + "', is not one that can be read; compare its limits by hand.");
        return null;
      }
      throw fault(Role.TOLERANCE, String.valueOf(e.getMessage()));
    }
  }

  // ---- cells ----

  private String cell(CsvRecord record, Role role) {
    Integer at = places.get(role);
    return at == null || at >= record.getFieldCount()
        ? ""
        : SpreadsheetText.stripped(record.getField(at));
  }

  private @Nullable Unit unit(Role role) {
    Integer at = places.get(role);
    return at == null ? null : headings.get(at).unit();
  }

  /** Null where the cell is empty. */
  private @Nullable Printed number(CsvRecord record, Role role, boolean bare) throws TableFault {
    String text = cell(record, role);
    if (text.isEmpty()) {
      return null;
    }
    try {
      Printed number = numerals.read(text, unit(role), bare);
      units(role, text);
      return number;
    } catch (TableFault e) {
      throw fault(role, String.valueOf(e.getMessage()));
    }
  }

  private TableFault fault(Role role, String what) {
    Integer at = places.get(role);
    return new TableFault(
        "line " + line + ", '" + (at == null ? "" : headings.get(at).text()) + "': " + what);
  }

  // ---- quantities ----

  private final Map<Role, Unit> used = new EnumMap<>(Role.class);

  /** Every cell of a column is of one dimension; the first unit is the column's. */
  private void units(Role role, String text) throws TableFault {
    Unit unit = unit(role);
    if (unit == null) {
      Unit own = ColumnHeading.unit(text.replaceFirst("^.*[0-9.,]\\s*", ""));
      unit = own == null ? Unit.ONE : own;
    }
    Unit first = used.putIfAbsent(role, unit);
    if (first != null && !first.dimension().equals(unit.dimension())) {
      throw new TableFault("'" + text + "' is of another quantity than the rows above");
    }
  }

  private static QuantityKind quantity(Unit unit, ColumnHeading heading) throws TableFault {
    ColumnHeading.Kind what = heading.kind();
    if (what != ColumnHeading.Kind.EFFECTIVE) {
      boolean current = unit.dimension().equals(Units.of("A").dimension());
      boolean voltage = unit.dimension().equals(Units.of("V").dimension());
      String name =
          what == ColumnHeading.Kind.LEAKAGE
              ? (current ? "hf-leakage" : "")
              : current ? "peak-current" : voltage ? "peak-voltage" : "";
      QuantityKind kind = QuantityKind.find(name);
      if (kind != null) {
        return kind;
      }
      throw new TableFault(
          "the heading '" + heading.text() + "': " + unit.symbol() + " is no unit of that");
    }
    for (String name : List.of("power", "current", "voltage", "energy", "level")) {
      QuantityKind kind = QuantityKind.find(name);
      if (kind != null && kind.dimension().equals(unit.dimension())) {
        return kind;
      }
    }
    throw new TableFault(
        "the heading '" + heading.text() + "': " + unit.symbol() + " is no unit of an output");
  }

  private Unit readUnit() throws TableFault {
    Unit taken = null;
    for (Role role : List.of(Role.LIMITS, Role.LOWER, Role.UPPER, Role.NOMINAL)) {
      Unit unit = used.getOrDefault(role, unit(role));
      if (unit == null || !places.containsKey(role)) {
        continue;
      }
      if (taken != null && !taken.dimension().equals(unit.dimension())) {
        if (role == Role.NOMINAL) {
          dropNominal();
          continue;
        }
        throw new TableFault("lower and upper limits are of different quantities");
      }
      taken = taken == null ? unit : taken;
    }
    if (taken == null) {
      throw new TableFault("the limits have no unit; write it into the heading: 'Limits/mA'");
    }
    return taken;
  }

  private void dropNominal() {
    remarks.add("The column of nominal values is of another quantity than the limits: not used.");
    rows.replaceAll(
        row ->
            new ManualRow(
                row.line(),
                row.mode(),
                row.setting(),
                row.ohms(),
                row.lower(),
                row.upper(),
                null,
                row.tolerance()));
  }

  /** The heading of the limits, or of the nominal value where there are none. */
  private ColumnHeading ofLimits() {
    for (Role role : List.of(Role.LIMITS, Role.UPPER, Role.LOWER, Role.NOMINAL)) {
      Integer at = places.get(role);
      if (at != null) {
        return headings.get(at);
      }
    }
    throw new IllegalStateException("no limits");
  }

  private ManualTable table() throws TableFault {
    modes.end();
    if (rows.isEmpty()) {
      throw new TableFault("there is no row below the headings");
    }
    ColumnHeading setting = headings.get(places.getOrDefault(Role.SETTING, 0));
    Unit setUnit = used.getOrDefault(Role.SETTING, Unit.ONE);
    Unit readUnit = readUnit();
    QuantityKind read = quantity(readUnit, ofLimits());
    if (read.name().equals("level")) {
      throw new TableFault("limits in % of what? Write them in mA, V, W or J");
    }
    Unit load = used.get(Role.LOAD);
    if (load != null && !load.dimension().equals(Units.of("ohm").dimension())) {
      throw new TableFault("loads are in ohm, not in " + load.symbol());
    }
    boolean oneLoad = rows.stream().map(ManualRow::ohms).distinct().count() == 1;
    if (read.name().equals("hf-leakage") && !oneLoad) {
      throw new TableFault(
          "leakage through several loads: transcribe the rows of one load at a time");
    }
    return new ManualTable(
        modes.all(),
        rows,
        quantity(setUnit, setting),
        setUnit,
        read,
        readUnit,
        hasLimits(),
        remarks);
  }
}
