package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The kernel against the plainest way there is: over the load's error by very many nodes, and at
 * each of them over the error of each range from one place where something turns to the next.
 */
class ManyNodesTest {
  /** What the report states. */
  private static final double STATED = 3e-5;

  private static final int NODES = 1_000;
  private static final int PLACES_TRIED = 12;

  @ParameterizedTest
  @CsvSource({
    "sedge-170/sedge-170-full.pband, 12",
    "worked, 4",
    "worked-guarded, 4",
    "tussock-4/tussock-4-output.pband, 20",
    "fescue-3/fescue-3-service.pband, 15",
    "quecke-2/quecke-2-ausgang.pband, 6",
    "campion-2/campion-2-energy.pband, 2"
  })
  void agree(String name, int open) {
    Kernel kernel = new Kernel();
    int compared = 0;
    for (List<SheetLine> some : Gain.read(SheetLines.of(CatalogueTest.plan(name))).values()) {
      for (int side : new int[] {-1, 1}) {
        double tolerance = Math.abs(Gain.tolerance(some, side > 0));
        for (int i = 0; i < PLACES_TRIED && Double.isFinite(tolerance); i++) {
          double gain = side * tolerance * 1.4 * i / PLACES_TRIED;
          for (boolean shared : new boolean[] {false, true}) {
            double power = Gain.power(some, kernel, gain, shared);
            Visit visit = visit(some, gain);
            Set<String> loads = new TreeSet<>();
            visit.readings().forEach(one -> loads.add(one.load().key()));
            if (power > 1e-3 && power < 1 - 1e-3 && loads.size() == 1) {
              double plain = 1 - passing(visit, shared, loads.iterator().next());
              assertEquals(plain, power, STATED, some.get(0).placeAndLoad() + " " + gain);
              compared++;
            }
          }
        }
      }
    }
    assertTrue(compared >= open, compared + " compared");
  }

  private static Visit visit(List<SheetLine> some, double gain) {
    Visit visit = new Visit();
    Gain.withParts(some).forEach(line -> visit.add(line, line.at(line.scaled(1 + gain))));
    return visit;
  }

  /** Something that passes or fails, with all the readings that it hangs on. */
  private interface Thing {
    List<Observation> parts();

    boolean passes(double[] displayed);
  }

  private static Thing thing(Observation one) {
    return new Thing() {
      @Override
      public List<Observation> parts() {
        return List.of(one);
      }

      @Override
      public boolean passes(double[] displayed) {
        return one.window().passes(one.window().displayed(displayed[0]));
      }
    };
  }

  private static Thing thing(Reckoning value) {
    return new Thing() {
      @Override
      public List<Observation> parts() {
        return value.parts();
      }

      @Override
      public boolean passes(double[] displayed) {
        return value.criterion().passes(displayed);
      }
    };
  }

  private static double passing(Visit visit, boolean shared, String load) {
    List<Observation> readings = new ArrayList<>();
    List<Reckoning> values = new ArrayList<>();
    visit.readings().forEach(one -> readings.add(shared ? one.sharingItsRange() : one));
    for (Reckoning value : visit.reckonings()) {
      List<Observation> parts = new ArrayList<>();
      value.parts().forEach(one -> parts.add(shared ? one.sharingItsRange() : one));
      values.add(new Reckoning(value.criterion(), parts));
    }
    List<Thing> things = new ArrayList<>();
    new LinkedHashSet<>(readings).forEach(one -> things.add(thing(one)));
    for (Reckoning value : new LinkedHashSet<>(values)) {
      if (!value.alwaysPasses()) {
        things.add(thing(value));
      }
    }
    Map<String, List<Thing>> byRange = new TreeMap<>();
    for (Thing one : things) {
      Set<String> ranges = new TreeSet<>();
      one.parts().stream()
          .filter(part -> part.own().half() != 0)
          .forEach(part -> ranges.add(part.own().key()));
      assertEquals(1, ranges.size(), "each hangs on one range: " + ranges);
      byRange.computeIfAbsent(ranges.iterator().next(), r -> new ArrayList<>()).add(one);
    }
    double sum = 0;
    for (int node = 0; node < NODES; node++) {
      double error = (2 * node + 1.0) / NODES - 1;
      double passing = 1;
      for (List<Thing> range : byRange.values()) {
        passing *= passing > 0 ? passing(range, error) : 1;
      }
      sum += passing / NODES;
    }
    return sum;
  }

  /** Over the error of one range, that of the load given: both are rectangular here. */
  private static double passing(List<Thing> things, double loadError) {
    Set<Double> turns = new TreeSet<>(List.of(-1.0, 1.0));
    for (Thing one : things) {
      for (Observation part : one.parts()) {
        assertTrue(part.own().spread().isRectangular() && part.load().spread().isRectangular());
        double half = Math.abs(part.own().half());
        if (half == 0) {
          continue;
        }
        double middle = part.truth() + part.load().half() * loadError;
        double step = part.window().step();
        for (double k = Math.floor((middle - half) / step) - 0.5; k * step < middle + half; k++) {
          double turn = (k * step - middle) / part.own().half();
          if (turn > -1 && turn < 1) {
            turns.add(turn);
          }
        }
      }
    }
    double sum = 0;
    double before = -1;
    for (double turn : turns) {
      double error = (before + turn) / 2;
      boolean passes = true;
      for (int i = 0; passes && i < things.size(); i++) {
        List<Observation> parts = things.get(i).parts();
        double[] displayed = new double[parts.size()];
        for (int k = 0; k < displayed.length; k++) {
          displayed[k] = parts.get(k).displayed(error, loadError);
        }
        passes = things.get(i).passes(displayed);
      }
      sum += passes ? (turn - before) / 2 : 0;
      before = turn;
    }
    return sum;
  }
}
