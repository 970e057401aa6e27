package passband.transcribe;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Tables as manuals print them, made from a rule that is known, with misprints that are known. The
 * limits are calculated with 50-digit decimals and none of the program's arithmetic.
 */
final class ManualTables {
  static final MathContext DIGITS = new MathContext(50);

  /**
   * How a mode's limits are made.
   *
   * @param ofRead whether the tolerance is of what is read, else of the setting
   * @param nominal 0 exact, 1 rounded, 2 cut off
   * @param rounding 0 nearest, 1 inward, 2 cut off, 3 outward
   * @param form 0 share, 1 amount, 2 greater, 3 apart, 4 sum
   */
  record Made(
      boolean ofRead, int nominal, int rounding, int form, BigDecimal share, BigDecimal amount) {}

  /** A row: what it should print, and what it prints. */
  static final class Row {
    int mode;
    int setting;
    int load;
    String lower;
    String upper;
    String printedLower;
    String printedUpper;
    int printedLoad;

    boolean misprinted() {
      return !lower.equals(printedLower) || !upper.equals(printedUpper) || load != printedLoad;
    }
  }

  private static final int[] SETTINGS = {
    5, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120, 150, 180, 200, 250, 300
  };
  private static final int[] LOADS = {50, 75, 100, 150, 200, 250, 300, 350, 400, 500};
  private static final String[] SHARES = {"0.05", "0.1", "0.12", "0.15", "0.2", "0.25", "0.075"};

  private final Random random;
  final List<Row> rows = new ArrayList<>();
  final List<Made> made = new ArrayList<>();

  /** What is read: 0 current, 1 voltage, 2 the power itself. */
  final int read;

  final int decimals;

  private ManualTables(Random random, int read) {
    this.random = random;
    this.read = read;
    this.decimals = read == 0 ? 0 : random.nextInt(2);
  }

  /** A table of this many rows in all. */
  static ManualTables of(Random random, int modes, int rowCount, int misprints) {
    int kind = random.nextInt(10);
    ManualTables table = new ManualTables(random, kind < 6 ? 0 : kind < 8 ? 1 : 2);
    Made shared = table.rule();
    boolean share = random.nextInt(3) < 2;
    for (int mode = 0; mode < modes; mode++) {
      int count = rowCount / modes + (mode < rowCount % modes ? 1 : 0);
      table.mode(mode, share ? shared : table.rule(), count);
    }
    table.misprint(misprints);
    return table;
  }

  /** A table of one mode made by this rule. */
  static ManualTables of(Random random, Made rule, int read, int rowCount, int misprints) {
    ManualTables table = new ManualTables(random, read);
    table.mode(0, rule, rowCount);
    table.misprint(misprints);
    return table;
  }

  private Made rule() {
    boolean ofRead = read != 2 && random.nextInt(3) == 0;
    int form = new int[] {0, 0, 0, 1, 2, 2, 3, 4}[random.nextInt(8)];
    BigDecimal share = new BigDecimal(SHARES[random.nextInt(SHARES.length)]);
    BigDecimal amount = amount(ofRead);
    if (form == 1) {
      amount = ofRead ? amount : BigDecimal.valueOf(1 + random.nextInt(3));
    } else if (form == 3) {
      amount = share.add(new BigDecimal("0.05"));
    } else if (form == 4) {
      share = new BigDecimal("0.1");
    }
    return new Made(ofRead, ofRead ? random.nextInt(3) : 0, random.nextInt(4), form, share, amount);
  }

  private BigDecimal amount(boolean ofRead) {
    int one = new int[] {1, 2, 3, 5}[random.nextInt(4)];
    return BigDecimal.valueOf(ofRead ? (read == 0 ? 10L * one : one) : one);
  }

  private void mode(int mode, Made rule, int count) {
    made.add(rule);
    Set<Integer> points = new TreeSet<>();
    boolean varying = random.nextInt(3) == 0;
    int load = LOADS[random.nextInt(LOADS.length)];
    for (int tries = 0; points.size() < count && tries < 10_000; tries++) {
      int at = varying ? LOADS[random.nextInt(LOADS.length)] : load;
      int setting = SETTINGS[random.nextInt(SETTINGS.length)];
      if (isRange(rule, setting, at)) {
        points.add(setting * 1000 + at);
      }
    }
    for (int point : points) {
      Row row = new Row();
      row.mode = mode;
      row.setting = point / 1000;
      row.load = point % 1000;
      row.printedLoad = row.load;
      row.lower = limit(rule, row.setting, row.load, -1);
      row.upper = limit(rule, row.setting, row.load, 1);
      row.printedLower = row.lower;
      row.printedUpper = row.upper;
      rows.add(row);
    }
  }

  // ---- limits ----

  /** No manual prints a lower limit of nothing, or one that is not below the upper. */
  private boolean isRange(Made rule, int setting, int load) {
    BigDecimal lower = new BigDecimal(limit(rule, setting, load, -1));
    return lower.signum() > 0 && lower.compareTo(new BigDecimal(limit(rule, setting, load, 1))) < 0;
  }

  /** In the unit of the table: mA, V or W. */
  String limit(Made rule, int setting, int load, int sign) {
    BigDecimal watts = BigDecimal.valueOf(setting);
    BigDecimal value;
    if (rule.ofRead) {
      BigDecimal nominal = read(watts, load);
      if (rule.nominal > 0) {
        nominal =
            nominal.setScale(
                decimals, rule.nominal == 1 ? RoundingMode.HALF_UP : RoundingMode.FLOOR);
      }
      value = deviated(rule, nominal, sign);
    } else {
      value = read(deviated(rule, watts, sign).max(BigDecimal.ZERO), load);
    }
    return value.max(BigDecimal.ZERO).setScale(decimals, rounding(rule, sign)).toPlainString();
  }

  private BigDecimal read(BigDecimal watts, int load) {
    return switch (read) {
      case 0 ->
          watts
              .divide(BigDecimal.valueOf(load), DIGITS)
              .sqrt(DIGITS)
              .multiply(BigDecimal.valueOf(1000));
      case 1 -> watts.multiply(BigDecimal.valueOf(load)).sqrt(DIGITS);
      default -> watts;
    };
  }

  private static BigDecimal deviated(Made rule, BigDecimal nominal, int sign) {
    BigDecimal part = nominal.multiply(rule.share);
    BigDecimal deviation =
        switch (rule.form) {
          case 0 -> part;
          case 1 -> rule.amount;
          case 2 -> part.max(rule.amount);
          case 3 -> sign < 0 ? part : nominal.multiply(rule.amount);
          default -> part.add(rule.amount);
        };
    return sign < 0 ? nominal.subtract(deviation) : nominal.add(deviation);
  }

  private static RoundingMode rounding(Made rule, int sign) {
    return switch (rule.rounding) {
      case 0 -> RoundingMode.HALF_UP;
      case 1 -> sign < 0 ? RoundingMode.CEILING : RoundingMode.FLOOR;
      case 2 -> RoundingMode.FLOOR;
      default -> sign < 0 ? RoundingMode.FLOOR : RoundingMode.CEILING;
    };
  }

  // ---- misprints ----

  private void misprint(int count) {
    for (int done = 0, tries = 0; done < count && tries < 1000; tries++) {
      Row row = rows.get(random.nextInt(rows.size()));
      if (row.misprinted()) {
        continue;
      }
      slip(row);
      if (row.misprinted() && !isNote(row)) {
        done++;
      } else {
        row.printedLower = row.lower;
        row.printedUpper = row.upper;
        row.printedLoad = row.load;
      }
    }
  }

  /** A limit that is one unit of its last digit off is no misprint that can be told. */
  private static boolean isNote(Row row) {
    return row.load == row.printedLoad
        && near(row.lower, row.printedLower)
        && near(row.upper, row.printedUpper);
  }

  private static boolean near(String one, String other) {
    BigDecimal a = new BigDecimal(one);
    BigDecimal b = new BigDecimal(other);
    return a.subtract(b).abs().compareTo(a.ulp()) <= 0;
  }

  private void slip(Row row) {
    int at = rows.indexOf(row);
    switch (random.nextInt(8)) {
      case 0 -> {
        row.printedLower = row.upper;
        row.printedUpper = row.lower;
      }
      case 1 -> {
        if (at > 0 && rows.get(at - 1).mode == row.mode && !rows.get(at - 1).misprinted()) {
          row.printedLower = rows.get(at - 1).lower;
          row.printedUpper = rows.get(at - 1).upper;
        }
      }
      case 2 -> {
        if (read != 2) {
          row.printedLoad = row.load * 10;
        }
      }
      default -> {
        if (random.nextBoolean()) {
          row.printedLower = slipped(row.lower);
        } else {
          row.printedUpper = slipped(row.upper);
        }
      }
    }
  }

  private String slipped(String text) {
    String digits = text.replace(".", "");
    int at = random.nextInt(digits.length());
    String other =
        switch (random.nextInt(4)) {
          case 0 ->
              at + 1 < digits.length()
                  ? digits.substring(0, at)
                      + digits.charAt(at + 1)
                      + digits.charAt(at)
                      + digits.substring(at + 2)
                  : digits;
          case 1 ->
              digits.length() > 2 ? digits.substring(0, at) + digits.substring(at + 1) : digits;
          case 2 -> digits + "0";
          default -> digits.substring(0, at) + random.nextInt(10) + digits.substring(at + 1);
        };
    BigDecimal value = new BigDecimal(other).movePointLeft(decimals);
    return value.signum() == 0 ? text : value.setScale(decimals).toPlainString();
  }

  // ---- the file ----

  /** As CSV. */
  String csv() {
    String unit = List.of("mA", "V", "W").get(read);
    StringBuilder csv = new StringBuilder("Mode,Power (W),Load (ohm),Limits (" + unit + ")\n");
    for (Row row : rows) {
      csv.append("Mode " + (row.mode + 1) + "," + row.setting + "," + row.printedLoad + ",");
      csv.append(row.printedLower + " - " + row.printedUpper + "\n");
    }
    return csv.toString();
  }

  /** The misprinted rows by their line in the file. */
  TreeMap<Integer, Row> misprints() {
    TreeMap<Integer, Row> misprints = new TreeMap<>();
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).misprinted()) {
        misprints.put(i + 2, rows.get(i));
      }
    }
    return misprints;
  }
}
