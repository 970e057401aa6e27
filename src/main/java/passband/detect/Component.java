package passband.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Readings that share errors. Given the errors on the side with fewer of them (ranges or loads),
 * those on the other are independent, and each leaves an interval in closed form; over the first
 * ones is integrated by Gauss and Legendre's rule.
 */
final class Component {
  /** Panels a side, for two and three errors; over the last of them is integrated by pieces. */
  private static final int[] PANELS = {0, 12, 12};

  /** A side for two errors of which one has no end. */
  private static final int ENDLESS_PANELS = 48;

  /**
   * The four nodes on [−1, 1] and their weights: Abramowitz and Stegun, 25.4.30, in closed form.
   */
  static final double[] NODES = {
    -Math.sqrt((3 + 2 * Math.sqrt(1.2)) / 7),
    -Math.sqrt((3 - 2 * Math.sqrt(1.2)) / 7),
    Math.sqrt((3 - 2 * Math.sqrt(1.2)) / 7),
    Math.sqrt((3 + 2 * Math.sqrt(1.2)) / 7)
  };

  static final double[] WEIGHTS = {
    (18 - Math.sqrt(30)) / 36,
    (18 + Math.sqrt(30)) / 36,
    (18 + Math.sqrt(30)) / 36,
    (18 - Math.sqrt(30)) / 36
  };

  private final List<String> outer;
  private final List<String> inner;
  final List<Observation> readings;
  private final boolean ownOuter;

  /** By outer error: its spread, and between what values any reading can pass. */
  final Spread[] outerSpreads;

  final double[] from;
  final double[] to;

  /** By reading: the index of its outer and its inner error, or −1. */
  final int[] outerOf;

  final int[] innerOf;
  final Spread[] innerSpreads;

  Component(List<Observation> readings) {
    Set<String> own = Kernel.keys(readings, true);
    Set<String> load = Kernel.keys(readings, false);
    this.readings = readings;
    this.ownOuter = !own.isEmpty() && (load.isEmpty() || own.size() <= load.size());
    this.outer = new ArrayList<>(ownOuter ? own : load);
    this.inner = new ArrayList<>(ownOuter ? load : own);
    this.outerOf = new int[readings.size()];
    this.innerOf = new int[readings.size()];
    this.outerSpreads = new Spread[outer.size()];
    this.innerSpreads = new Spread[inner.size()];
    this.from = new double[outer.size()];
    this.to = new double[outer.size()];
    index();
    cut();
  }

  /** Over how many errors is integrated. */
  int outer() {
    return outer.size();
  }

  /** Over so many errors is integrated; over more is drawn. */
  int mostOuter() {
    for (Spread spread : outerSpreads) {
      if (!spread.ends()) {
        return 2;
      }
    }
    return 3;
  }

  ErrorTerm outerTerm(Observation one) {
    return ownOuter ? one.own() : one.load();
  }

  ErrorTerm innerTerm(Observation one) {
    return ownOuter ? one.load() : one.own();
  }

  private void index() {
    for (int i = 0; i < readings.size(); i++) {
      ErrorTerm out = outerTerm(readings.get(i));
      ErrorTerm in = innerTerm(readings.get(i));
      outerOf[i] = out.half() == 0 ? -1 : outer.indexOf(out.key());
      innerOf[i] = in.half() == 0 ? -1 : inner.indexOf(in.key());
      if (outerOf[i] >= 0) {
        outerSpreads[outerOf[i]] = out.spread();
      }
      if (innerOf[i] >= 0) {
        innerSpreads[innerOf[i]] = in.spread();
      }
    }
    for (int i = 0; i < from.length; i++) {
      from[i] = -outerSpreads[i].reach();
      to[i] = outerSpreads[i].reach();
    }
  }

  /** Outside of the box some reading fails whatever its inner error is. */
  private void cut() {
    for (int i = 0; i < readings.size(); i++) {
      if (outerOf[i] >= 0) {
        Observation one = readings.get(i);
        double half = outerTerm(one).half();
        double slack = innerTerm(one).reach();
        double a = (one.window().low() - one.truth() - slack) / half;
        double b = (one.window().high() - one.truth() + slack) / half;
        from[outerOf[i]] = Math.max(from[outerOf[i]], Math.min(a, b));
        to[outerOf[i]] = Math.min(to[outerOf[i]], Math.max(a, b));
      }
    }
  }

  /** The probability that all pass. */
  double passing() {
    if (inner.isEmpty()) {
      double passing = 1;
      for (int i = 0; i < from.length; i++) {
        passing *= outerSpreads[i].between(from[i], to[i]);
      }
      return passing;
    }
    return integral(new double[outer.size()], 0);
  }

  /** Over the outer errors from one on; over the last of them piece by piece. */
  private double integral(double[] errors, int at) {
    if (at == errors.length - 1) {
      return new Pieces(this, errors).integral();
    }
    Spread spread = outerSpreads[at];
    double low = spread.variable(from[at]);
    double high = spread.variable(to[at]);
    if (high <= low) {
      return 0;
    }
    int panels = mostOuter() == 2 ? ENDLESS_PANELS : PANELS[errors.length - 1];
    double half = (high - low) / panels / 2;
    double sum = 0;
    for (int panel = 0; panel < panels; panel++) {
      double middle = low + (2 * panel + 1) * half;
      for (int node = 0; node < NODES.length; node++) {
        double variable = middle + half * NODES[node];
        double weight = half * WEIGHTS[node] * spread.density(variable);
        errors[at] = spread.error(variable);
        sum += weight * integral(errors, at + 1);
      }
    }
    return sum;
  }
}
