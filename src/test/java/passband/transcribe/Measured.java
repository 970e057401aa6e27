package passband.transcribe;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.quantity.Rational;

/** How well tables whose rule is known are transcribed. */
final class Measured {
  int tables;
  int modes;
  int equivalent;
  int exact;
  int stated;
  int wrong;
  int settled;
  final List<String> settledWrong = new ArrayList<>();
  int tablesEquivalent;
  int tablesWithMisprintsExactly;
  int planted;
  int foundPlanted;
  int intended;
  int falseRows;
  int rows;
  final List<Long> milliseconds = new ArrayList<>();

  /** Makes and transcribes tables; each draft is compiled on the way. */
  static Measured of(long seed, int count, int modes, int leastRows, int mostRows, int misprints)
      throws TableFault {
    Random random = new Random(seed);
    Measured measured = new Measured();
    for (int i = 0; i < count; i++) {
      int some = modes > 0 ? modes : 1 + random.nextInt(4);
      int rows = Math.max(some, leastRows + random.nextInt(mostRows - leastRows + 1));
      int bad = misprints >= 0 ? misprints : random.nextInt(3);
      measured.add(ManualTables.of(random, some, rows, bad));
    }
    return measured;
  }

  /** Transcribes one more. */
  void add(ManualTables table) throws TableFault {
    tables++;
    long start = System.nanoTime();
    Transcript transcript =
        Transcript.of(
            table.csv().getBytes(StandardCharsets.UTF_8), false, "made", "Made", "2026-01-01");
    milliseconds.add((System.nanoTime() - start) / 1_000_000);
    TreeMap<Integer, ManualTables.Row> misprints = table.misprints();
    TreeSet<Integer> found = new TreeSet<>();
    boolean all = true;
    for (ModeFinding mode : transcript.found().modes()) {
      all &= mode(table, transcript.found().table(), mode);
      for (RowFinding one : mode.differing()) {
        if (one.isNote()) {
          continue;
        }
        found.add(one.row().line());
        ManualTables.Row row = misprints.get(one.row().line());
        if (row == null) {
          falseRows++;
        } else {
          foundPlanted++;
          intended += meant(one, row) ? 1 : 0;
        }
      }
    }
    rows += table.rows.size();
    planted += misprints.size();
    tablesEquivalent += all ? 1 : 0;
    tablesWithMisprintsExactly += found.equals(misprints.keySet()) ? 1 : 0;
  }

  /** Whether what was meant is what the row should have printed. */
  private static boolean meant(RowFinding one, ManualTables.Row row) {
    if (row.load != row.printedLoad) {
      Printed instead = one.instead();
      return one.slip() == Slip.LOAD
          && instead != null
          && instead.value().equals(Rational.of(row.load));
    }
    return same(one.lower(), one.row().lower(), row.lower)
        && same(one.upper(), one.row().upper(), row.upper);
  }

  private static boolean same(Rational meant, Printed printed, String should) {
    return meant != null
        && meant
            .over(printed.step())
            .floor()
            .toString()
            .equals(String.valueOf(Long.parseLong(should.replace(".", ""))));
  }

  private boolean mode(ManualTables made, ManualTable read, ModeFinding mode) {
    modes++;
    Rule rule = mode.rule();
    ManualTables.Made known = made.made.get(mode.mode());
    if (rule == null) {
      stated++;
      return false;
    }
    Prediction prediction = new Prediction(read);
    boolean same = true;
    for (ManualRow row : read.of(mode.mode())) {
      ManualTables.Row should = made.rows.get(row.line() - 2);
      ManualRow there =
          row.at(row.setting(), new Printed(Rational.of(should.load), Rational.ONE, ""));
      for (Side side : Side.values()) {
        String text = side == Side.LOWER ? should.lower : should.upper;
        long digits = prediction.digits(rule, there, side, row.limit(side).step());
        same &= digits == Long.parseLong(text.replace(".", ""));
      }
    }
    settled += mode.settled() ? 1 : 0;
    equivalent += same ? 1 : 0;
    wrong += same ? 0 : 1;
    boolean one = isExact(rule, known, made);
    exact += one ? 1 : 0;
    if (mode.settled() && !same && !allowsAs(rule, known, made)) {
      settledWrong.add(known + " read as " + rule + "\n" + made.csv());
    }
    return same;
  }

  private static boolean isExact(Rule rule, ManualTables.Made made, ManualTables table) {
    return allowsAs(rule, made, table)
        && rule.basis().rounding().ordinal() == made.rounding()
        && (!made.ofRead()
            || rule.basis().nominal()
                == List.of(Basis.Nominal.EXACT, Basis.Nominal.ROUNDED, Basis.Nominal.CUT)
                    .get(made.nominal()));
  }

  /** Whether a rule has the tolerance that the table was made with. */
  private static boolean allowsAs(Rule rule, ManualTables.Made made, ManualTables table) {
    Rational unit =
        made.ofRead() && table.read == 0 && made.form() != 3 ? Rational.of(1, 1000) : Rational.ONE;
    Rational share = made.form() == 1 ? Rational.ZERO : Rational.of(made.share());
    Rational amount = made.form() == 0 ? Rational.ZERO : Rational.of(made.amount()).times(unit);
    return rule.basis().of() == (made.ofRead() ? Basis.Of.READ : Basis.Of.SETTING)
        && rule.form()
            .name()
            .equals(List.of("SHARE", "AMOUNT", "GREATER", "APART", "SUM").get(made.form()))
        && rule.share().equals(share)
        && rule.amount().equals(amount);
  }

  @Override
  public String toString() {
    List<Long> sorted = milliseconds.stream().sorted().toList();
    return ("tables %d equivalent %d misprints exactly %d; modes %d equivalent %d exact %d stated %d"
            + " wrong %d settled %d settled-wrong %d; planted %d found %d intended %d false %d of %d"
            + " rows; ms median %d worst %d")
        .formatted(
            tables,
            tablesEquivalent,
            tablesWithMisprintsExactly,
            modes,
            equivalent,
            exact,
            stated,
            wrong,
            settled,
            settledWrong.size(),
            planted,
            foundPlanted,
            intended,
            falseRows,
            rows,
            sorted.get(sorted.size() / 2),
            sorted.get(sorted.size() - 1));
  }
}
