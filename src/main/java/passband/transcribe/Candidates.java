package passband.transcribe;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import passband.quantity.Rational;
import passband.transcribe.Basis.Nominal;
import passband.transcribe.Basis.Of;
import passband.transcribe.Basis.Rounding;
import passband.transcribe.Rule.Form;

/**
 * Proposes rules for some rows: for each basis and form the roundest numbers of the ranges in which
 * most rows agree. Doubles only propose here; {@link Prediction} decides.
 */
final class Candidates {
  private static final int SLACK = 2;
  private static final int LEAST_NOMINALS = 3;
  private static final int MOST_OF_TWO_NUMBERS = 40;

  /** Shares that are tried with an amount, in half per cents: to 25 by 0.5, to 50 by 1. */
  private static final int FINE_SHARES = 50;

  private static final int MOST_HALVES = 100;
  private static final int HALVES = 200;

  private final Prediction prediction;
  private final List<ManualRow> rows;
  private final Set<Rule> found = new LinkedHashSet<>();

  private Candidates(Prediction prediction, List<ManualRow> rows) {
    this.prediction = prediction;
    this.rows = rows;
  }

  /** The rules that may be behind these rows. */
  static Set<Rule> of(Prediction prediction, List<ManualRow> rows) {
    Candidates candidates = new Candidates(prediction, rows);
    List<Basis> bases = candidates.bases();
    bases.forEach(candidates::oneNumber);
    if (candidates.found.stream().noneMatch(candidates::explainsAll)
        && candidates.nominals() >= LEAST_NOMINALS) {
      bases.forEach(candidates::twoNumbers);
    }
    bases.forEach(candidates::printedTolerance);
    return candidates.found;
  }

  private List<Basis> bases() {
    List<Basis> bases = new ArrayList<>();
    for (Of of : Of.values()) {
      for (Nominal nominal : Nominal.values()) {
        if (of == Of.SETTING && nominal != Nominal.EXACT) {
          continue;
        }
        for (Rounding rounding : Rounding.values()) {
          Basis basis = new Basis(of, nominal, rounding);
          if (rows.stream().allMatch(row -> prediction.applies(basis, row))
              && !(of == Of.READ && nominal != Nominal.PRINTED && !prediction.converts())) {
            bases.add(basis);
          }
        }
      }
    }
    return bases;
  }

  private long nominals() {
    return rows.stream().map(ManualRow::point).distinct().count();
  }

  private boolean explainsAll(Rule rule) {
    return rows.stream().allMatch(row -> prediction.fits(rule, row, row));
  }

  // ---- deviations ----

  /** By how much a limit may deviate from a nominal value before it was rounded. */
  private record Deviation(Side side, double nominal, double low, double high) {}

  private List<Deviation> deviations(Basis basis) {
    List<Deviation> all = new ArrayList<>();
    for (ManualRow row : rows) {
      for (Side side : Side.values()) {
        Printed printed = row.limit(side);
        if (printed != null && printed.value().signum() > 0) {
          all.add(deviation(basis, row, side, printed));
        }
      }
    }
    return all;
  }

  private Deviation deviation(Basis basis, ManualRow row, Side side, Printed printed) {
    double x = printed.value().doubleValue();
    double q = printed.step().doubleValue();
    boolean lower = side == Side.LOWER;
    double low =
        switch (basis.rounding()) {
          case NEAREST -> x - q / 2;
          case CUT -> x;
          case INWARD -> lower ? x - q : x;
          case OUTWARD -> lower ? x : x - q;
        };
    double high = low + q;
    Rational exact = prediction.nominal(basis, row);
    double nominal =
        exact == null ? Math.sqrt(prediction.square(row).doubleValue()) : exact.doubleValue();
    if (basis.of() == Of.SETTING && prediction.converts()) {
      double factor = prediction.factor(row).doubleValue();
      low = Math.max(low, 0) * Math.max(low, 0) / factor;
      high = high * high / factor;
    }
    return lower
        ? new Deviation(side, nominal, nominal - high, nominal - low)
        : new Deviation(side, nominal, low - nominal, high - nominal);
  }

  // ---- one number ----

  private void oneNumber(Basis basis) {
    List<Deviation> deviations = deviations(basis);
    Sweep shares = new Sweep(deviations.size());
    Sweep amounts = new Sweep(deviations.size());
    for (Deviation one : deviations) {
      shares.add(one.low / one.nominal, one.high / one.nominal);
      amounts.add(one.low, one.high);
    }
    for (Rational share : shares(shares)) {
      found.add(new Rule(basis, Form.SHARE, share, Rational.ZERO));
    }
    for (Sweep.Region region : amounts.deepest(SLACK)) {
      for (Rational amount : RoundNumbers.amounts(region.low(), region.high())) {
        found.add(new Rule(basis, Form.AMOUNT, Rational.ZERO, amount));
      }
    }
    Set<Rational> below = shares(deviations, Side.LOWER);
    Set<Rational> above = shares(deviations, Side.UPPER);
    for (Rational one : below) {
      for (Rational other : above) {
        if (!one.equals(other)) {
          found.add(new Rule(basis, Form.APART, one, other));
        }
      }
    }
  }

  private static Set<Rational> shares(List<Deviation> deviations, Side side) {
    Sweep sweep = new Sweep(deviations.size());
    for (Deviation one : deviations) {
      if (one.side == side) {
        sweep.add(one.low / one.nominal, one.high / one.nominal);
      }
    }
    return shares(sweep);
  }

  private static Set<Rational> shares(Sweep sweep) {
    Set<Rational> shares = new LinkedHashSet<>();
    for (Sweep.Region region : sweep.deepest(SLACK)) {
      shares.addAll(RoundNumbers.shares(region.low(), region.high()));
    }
    return shares;
  }

  // ---- two numbers ----

  private record Proposed(Rule rule, double bits, int depth) {}

  private void twoNumbers(Basis basis) {
    List<Deviation> deviations = deviations(basis);
    for (Form form : List.of(Form.GREATER, Form.SUM, Form.SMALLER)) {
      List<Proposed> proposed = new ArrayList<>();
      Sweep sweep = new Sweep(deviations.size());
      for (int halves = 1; halves <= MOST_HALVES; halves += halves < FINE_SHARES ? 1 : 2) {
        Rational share = Rational.of(halves, HALVES);
        sweep.clear();
        deviations.forEach(one -> add(sweep, form, one, share.doubleValue()));
        for (Sweep.Region region : sweep.deepest(SLACK)) {
          for (Rational amount : RoundNumbers.amounts(region.low(), region.high())) {
            Rule rule = new Rule(basis, form, share, amount);
            proposed.add(new Proposed(rule, rule.bits(), region.depth()));
          }
        }
      }
      proposed.sort(
          Comparator.comparingInt((Proposed one) -> -one.depth)
              .thenComparingDouble(one -> one.bits));
      proposed.stream().limit(MOST_OF_TWO_NUMBERS).forEach(one -> found.add(one.rule));
    }
  }

  /** Which amounts explain a limit beside a share. */
  private static void add(Sweep sweep, Form form, Deviation one, double share) {
    double part = share * one.nominal;
    boolean inside = part >= one.low && part <= one.high;
    switch (form) {
      case SUM -> sweep.add(Math.max(0, one.low - part), one.high - part);
      case GREATER -> {
        if (part <= one.high) {
          sweep.add(inside ? 0 : one.low, one.high);
        }
      }
      default -> {
        if (part >= one.low) {
          sweep.add(one.low, inside ? Double.MAX_VALUE : one.high);
        }
      }
    }
  }

  // ---- a column of tolerances ----

  /** What the table itself says of its tolerance, tried as any other rule. */
  private void printedTolerance(Basis basis) {
    for (ManualRow row : rows) {
      ManualRow.Tolerance tolerance = row.tolerance();
      if (tolerance != null) {
        found.add(tolerance.rule(basis));
      }
    }
  }
}
