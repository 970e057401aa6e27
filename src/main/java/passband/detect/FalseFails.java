package passband.detect;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.quantity.Real;

/**
 * How often a good generator fails while every reading uses up one share of its tolerance: of
 * output, of a peak, a leakage, a time or an alarm alike, with all that is worked out from them.
 */
final class FalseFails {
  private static final double[] SHARES = {0, 0.5, 0.8, 0.9, 1};

  private FalseFails() {}

  static List<Detection.FalseFail> of(SheetLines lines, Kernel kernel) {
    List<Detection.FalseFail> fails = new ArrayList<>();
    for (double share : SHARES) {
      Chance low = visit(lines, share, false).failing(kernel);
      Chance high = visit(lines, share, true).failing(kernel);
      fails.add(new Detection.FalseFail(share, low, high));
    }
    return fails;
  }

  private static Visit visit(SheetLines lines, double share, boolean above) {
    Visit visit = new Visit();
    for (SheetLine line : lines.all()) {
      double truth = truth(line, share, above);
      if (!Double.isNaN(truth)) {
        visit.add(line, line.at(truth));
        parts(visit, line, truth);
      }
    }
    return visit;
  }

  /** What is read of the same output for a calculation goes with it. */
  private static void parts(Visit visit, SheetLine line, double truth) {
    if (line.kind() == SheetLine.Kind.OUTPUT && line.nominal() > 0) {
      for (SheetLine part : Gain.withParts(List.of(line))) {
        if (part != line) {
          visit.add(part, part.at(part.scaled(line.factor(truth))));
        }
      }
    }
  }

  /**
   * The true value in SI at a share of the way from the nominal value to a tolerance limit. Of a
   * limit without a nominal value, the smaller of limit and value is that share of the greater.
   *
   * @return the nominal value where that side is open; NaN where nothing tells it
   */
  private static double truth(SheetLine line, double share, boolean above) {
    Real limit = above ? line.limit().exact().upper() : line.limit().exact().lower();
    if (limit == null || line.hasNominal()) {
      return between(line.nominal(), limit, share);
    }
    if (!line.uses().isEmpty() && line.kind() == SheetLine.Kind.PEAK) {
      return Double.NaN; // it goes with its wave
    }
    double end = limit.doubleValue();
    return above ? end * share : share == 0 ? Double.NaN : end / share;
  }

  private static double between(double nominal, @Nullable Real limit, double share) {
    return limit == null ? nominal : nominal + share * (limit.doubleValue() - nominal);
  }
}
