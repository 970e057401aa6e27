package passband.transcribe;

import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/** What would tell two rules apart: the first setting at which they print different limits. */
final class Telling {
  private static final int MOST_TRIED = 1000;

  private Telling() {}

  /** A sentence; null where no setting up to the table's highest tells them apart. */
  static @Nullable String apart(ManualTable table, int mode, Rule one, Rule other) {
    boolean printed =
        one.basis().nominal() == Basis.Nominal.PRINTED
            || other.basis().nominal() == Basis.Nominal.PRINTED;
    ManualRow row = table.of(mode).get(0);
    if (printed || row.lower() == null || row.upper() == null) {
      return null;
    }
    Prediction prediction = new Prediction(table);
    RuleWords words = new RuleWords(table);
    Rational highest = Rational.ZERO;
    for (ManualRow each : table.of(mode)) {
      highest = highest.max(each.setting().value());
    }
    Rational unit = table.setUnit().factor();
    for (int i = 1; i <= MOST_TRIED && unit.times(Rational.of(i)).compareTo(highest) <= 0; i++) {
      Rational value = unit.times(Rational.of(i));
      ManualRow there = row.at(new Printed(value, unit, ""), row.ohms());
      String first = limits(prediction, words, one, there);
      String second = limits(prediction, words, other, there);
      if (!first.equals(second)) {
        Printed ohms = there.ohms();
        return "at "
            + words.setting(there.setting())
            + (ohms == null ? "" : " into " + RuleWords.load(ohms))
            + " they print "
            + first
            + " or "
            + second
            + " "
            + table.readUnit().symbol();
      }
    }
    return null;
  }

  private static String limits(Prediction prediction, RuleWords words, Rule rule, ManualRow row) {
    StringBuilder limits = new StringBuilder();
    for (Side side : Side.values()) {
      Printed printed = row.limit(side);
      if (printed != null) {
        Rational steps = Rational.of(prediction.digits(rule, row, side, printed.step()));
        limits.append(limits.isEmpty() ? "" : " to ");
        limits.append(words.value(steps.times(printed.step()), printed.step()));
      }
    }
    return limits.toString();
  }
}
