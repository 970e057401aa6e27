package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** The same as the kernel's by draws: every visit draws each error once. */
final class Simulation {
  private Simulation() {}

  /** The share of visits in which at least one reading fails. */
  static double failing(List<Observation> readings, int visits, long seed) {
    return failing(readings, List.of(), visits, seed);
  }

  /** The share of visits in which at least one reading, or a value worked out from some, fails. */
  static double failing(List<Observation> readings, List<Reckoning> values, int visits, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Spread> spreads = new ArrayList<>();
    Map<String, Integer> places = new HashMap<>();
    int[][] of = new int[readings.size()][2];
    for (int i = 0; i < readings.size(); i++) {
      of[i][0] = place(readings.get(i).own(), places, spreads);
      of[i][1] = place(readings.get(i).load(), places, spreads);
    }
    List<int[][]> ofParts = new ArrayList<>();
    List<Criterion.Band> bands = new ArrayList<>();
    values.forEach(value -> bands.add(value.band()));
    for (Reckoning value : values) {
      int[][] parts = new int[value.parts().size()][2];
      for (int i = 0; i < parts.length; i++) {
        parts[i][0] = place(value.parts().get(i).own(), places, spreads);
        parts[i][1] = place(value.parts().get(i).load(), places, spreads);
      }
      ofParts.add(parts);
    }
    double[] errors = new double[spreads.size()];
    int failed = 0;
    for (int visit = 0; visit < visits; visit++) {
      for (int i = 0; i < errors.length; i++) {
        errors[i] = spreads.get(i).draw(random);
      }
      boolean passes = true;
      for (int i = 0; passes && i < of.length; i++) {
        passes = passes(readings.get(i), errors[of[i][0]], errors[of[i][1]]);
      }
      for (int i = 0; passes && i < ofParts.size(); i++) {
        passes = passes(values.get(i), bands.get(i), ofParts.get(i), errors);
      }
      failed += passes ? 0 : 1;
    }
    return (double) failed / visits;
  }

  private static boolean passes(Reckoning value, Criterion.Band band, int[][] of, double[] errors) {
    double[] displayed = new double[of.length];
    for (int i = 0; i < displayed.length; i++) {
      displayed[i] = value.parts().get(i).displayed(errors[of[i][0]], errors[of[i][1]]);
    }
    return value.criterion().passes(displayed, band);
  }

  private static int place(ErrorTerm error, Map<String, Integer> places, List<Spread> spreads) {
    return places.computeIfAbsent(
        error.key(),
        key -> {
          spreads.add(error.spread());
          return spreads.size() - 1;
        });
  }

  private static boolean passes(Observation one, double own, double load) {
    if (!one.hasValue()) {
      return false;
    }
    double value = one.truth() + one.own().half() * own + one.load().half() * load;
    return one.window().passes(one.window().displayed(value));
  }
}
