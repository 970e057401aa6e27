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
  /** Panels a side, for one, two and three errors. */
  private static final int[] PANELS = {192, 24, 8};

  /**
   * The four nodes on [−1, 1] and their weights: Abramowitz and Stegun, 25.4.30, in closed form.
   */
  private static final double[] NODES = {
    -Math.sqrt((3 + 2 * Math.sqrt(1.2)) / 7),
    -Math.sqrt((3 - 2 * Math.sqrt(1.2)) / 7),
    Math.sqrt((3 - 2 * Math.sqrt(1.2)) / 7),
    Math.sqrt((3 + 2 * Math.sqrt(1.2)) / 7)
  };

  private static final double[] WEIGHTS = {
    (18 - Math.sqrt(30)) / 36,
    (18 + Math.sqrt(30)) / 36,
    (18 + Math.sqrt(30)) / 36,
    (18 - Math.sqrt(30)) / 36
  };

  private final List<String> outer;
  private final List<String> inner;
  private final List<Observation> readings;
  private final boolean ownOuter;

  /** By outer error: its spread, and between what values any reading can pass. */
  private final Spread[] outerSpreads;

  private final double[] from;
  private final double[] to;

  /** By reading: the index of its outer and its inner error, or −1. */
  private final int[] outerOf;

  private final int[] innerOf;
  private final Spread[] innerSpreads;
  private final double[] least;
  private final double[] most;

  Component(List<Observation> readings) {
    Set<String> own = Kernel.keys(readings, true);
    Set<String> load = Kernel.keys(readings, false);
    this.readings = readings;
    this.ownOuter = own.size() <= load.size();
    this.outer = new ArrayList<>(ownOuter ? own : load);
    this.inner = new ArrayList<>(ownOuter ? load : own);
    this.outerOf = new int[readings.size()];
    this.innerOf = new int[readings.size()];
    this.outerSpreads = new Spread[outer.size()];
    this.innerSpreads = new Spread[inner.size()];
    this.from = new double[outer.size()];
    this.to = new double[outer.size()];
    this.least = new double[inner.size()];
    this.most = new double[inner.size()];
    index();
    cut();
  }

  /** Over how many errors is integrated. */
  int outer() {
    return outer.size();
  }

  private ErrorTerm outerTerm(Observation one) {
    return ownOuter ? one.own() : one.load();
  }

  private ErrorTerm innerTerm(Observation one) {
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
    if (outer.isEmpty()) {
      return given(new double[0]);
    }
    if (inner.isEmpty()) {
      double passing = 1;
      for (int i = 0; i < from.length; i++) {
        passing *= outerSpreads[i].between(from[i], to[i]);
      }
      return passing;
    }
    return integral(new double[outer.size()], 0);
  }

  private double integral(double[] errors, int at) {
    if (at == errors.length) {
      return given(errors);
    }
    Spread spread = outerSpreads[at];
    double low = spread.variable(from[at]);
    double high = spread.variable(to[at]);
    if (high <= low) {
      return 0;
    }
    int panels = PANELS[errors.length - 1];
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

  /** The probability that all pass, given the outer errors. */
  private double given(double[] errors) {
    for (int i = 0; i < least.length; i++) {
      least[i] = -innerSpreads[i].reach();
      most[i] = innerSpreads[i].reach();
    }
    for (int i = 0; i < readings.size(); i++) {
      Observation one = readings.get(i);
      double at = one.truth();
      if (outerOf[i] >= 0) {
        at += outerTerm(one).half() * errors[outerOf[i]];
      }
      if (innerOf[i] < 0) {
        if (at < one.window().low() || at >= one.window().high()) {
          return 0;
        }
        continue;
      }
      double half = innerTerm(one).half();
      double a = (one.window().low() - at) / half;
      double b = (one.window().high() - at) / half;
      least[innerOf[i]] = Math.max(least[innerOf[i]], Math.min(a, b));
      most[innerOf[i]] = Math.min(most[innerOf[i]], Math.max(a, b));
      if (least[innerOf[i]] >= most[innerOf[i]]) {
        return 0;
      }
    }
    double passing = 1;
    for (int i = 0; i < least.length; i++) {
      passing *= innerSpreads[i].between(least[i], most[i]);
    }
    return passing;
  }
}
