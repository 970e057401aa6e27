package passband.transcribe;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import passband.quantity.Rational;

/**
 * What a table's columns of nominal values and of tolerances say, compared with its settings, loads
 * and limits. Where they contradict each other nothing is changed: which of them is misprinted only
 * the manual's text tells.
 */
final class OtherColumns {
  private OtherColumns() {}

  /** The contradictions, a sentence each, in the order of the table. */
  static List<String> contradictions(Inference.Found found) {
    ManualTable table = found.table();
    Prediction prediction = new Prediction(table);
    RuleWords words = new RuleWords(table);
    List<String> said = new ArrayList<>();
    for (ManualRow row : table.rows()) {
      Printed nominal = row.nominal();
      if (nominal != null && !isNominal(table, prediction, row, nominal)) {
        said.add(
            words.place(row)
                + ": the table prints the nominal value "
                + words.shown(nominal)
                + "; the setting and the load give "
                + words.shown(ofSetting(prediction, row, nominal))
                + ".");
      }
      ManualRow.Tolerance tolerance = row.tolerance();
      RowFinding finding = found.modes().get(row.mode()).of(row);
      boolean misprinted = finding != null && !finding.isNote();
      if (tolerance != null
          && table.limitsPrinted()
          && !misprinted
          && !mayBeOf(table, prediction, row, tolerance)) {
        said.add(
            words.place(row)
                + ": the table says a tolerance of "
                + (tolerance.share() ? RuleWords.percent(tolerance.value()) : tolerance.text())
                + "; however rounded, that does not make its limits, "
                + words.printed(row)
                + " "
                + table.readUnit().symbol()
                + ".");
      }
    }
    return said;
  }

  /** Whether a nominal value is what the setting comes to, rounded in any way. */
  private static boolean isNominal(
      ManualTable table, Prediction prediction, ManualRow row, Printed nominal) {
    if (!table.converts()) {
      return true; // a load curve may have another value than the setting
    }
    Rational square = prediction.square(row);
    Rational less = nominal.value().minus(nominal.step()).max(Rational.ZERO);
    Rational more = nominal.value().plus(nominal.step());
    return less.times(less).compareTo(square) < 0 && more.times(more).compareTo(square) > 0;
  }

  private static Printed ofSetting(Prediction prediction, ManualRow row, Printed nominal) {
    Rational half = nominal.step().over(Rational.TWO);
    Rational steps =
        Rational.of(Prediction.floor(prediction.square(row), half, nominal.step()), BigInteger.ONE);
    return new Printed(steps.times(nominal.step()), nominal.step(), "");
  }

  /** Whether some nominal value and some rounding make the row's limits with its tolerance. */
  private static boolean mayBeOf(
      ManualTable table, Prediction prediction, ManualRow row, ManualRow.Tolerance tolerance) {
    boolean possible = false;
    for (Basis.Of of : Basis.Of.values()) {
      for (Basis.Nominal nominal : Basis.Nominal.values()) {
        for (Basis.Rounding rounding : Basis.Rounding.values()) {
          Basis basis = new Basis(of, nominal, rounding);
          boolean made =
              nominal == Basis.Nominal.PRINTED || of == Basis.Of.SETTING || table.converts();
          if (made && prediction.applies(basis, row)) {
            possible = true;
            if (prediction.fits(tolerance.rule(basis), row, row)) {
              return true;
            }
          }
        }
      }
    }
    return !possible;
  }
}
