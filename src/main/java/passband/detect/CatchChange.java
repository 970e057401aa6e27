package passband.detect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.plan.Plan;

/** What a change of a procedure costs or gains: what was caught, and what is now. */
public final class CatchChange {
  /** A smaller change of a probability is none. */
  private static final double NOTHING = 0.02;

  private static final double[] OVER_TOLERANCE = {1.02, 1.05, 1.1, 1.15, 1.2, 1.25, 1.35, 1.5};

  private final Kernel kernel = new Kernel();
  private final SheetLines was;
  private final SheetLines now;
  private final List<Line> lines = new ArrayList<>();

  /**
   * What is caught otherwise.
   *
   * @param what a mode, outlet and load with a gain error, or a fault of the catalogue
   * @param was its probability or its outcome in words
   */
  public record Line(String what, String was, String now) {
    /** In one sentence. */
    public String text() {
      return what + ": " + was + ", now " + now;
    }
  }

  private CatchChange(Plan was, Plan now) {
    this.was = SheetLines.of(was);
    this.now = SheetLines.of(now);
  }

  /**
   * A line for each mode, outlet and load whose gain errors are caught otherwise, and one for each
   * fault of the catalogue with another outcome; empty where nothing is caught otherwise.
   */
  public static List<Line> between(Plan was, Plan now) {
    CatchChange change = new CatchChange(was, now);
    change.gains();
    change.faults();
    return List.copyOf(change.lines);
  }

  private void gains() {
    Map<String, List<SheetLine>> old = SheetLines.byLoad(was.output());
    Map<String, List<SheetLine>> fresh = SheetLines.byLoad(now.output());
    old.forEach((key, some) -> gain(key, some, fresh.get(key)));
    fresh.forEach(
        (key, some) -> {
          if (!old.containsKey(key)) {
            gain(key, null, some);
          }
        });
  }

  /** The gain error at which most changes, on each side of the tolerance. */
  private void gain(String key, @Nullable List<SheetLine> old, @Nullable List<SheetLine> fresh) {
    List<SheetLine> tolerated = old == null ? fresh : old;
    if (tolerated == null) {
      return;
    }
    Gain of = Gain.of(tolerated, kernel, false);
    double worst = NOTHING;
    Line said = null;
    for (boolean above : new boolean[] {false, true}) {
      double tolerance = above ? of.toleranceHigh() : of.toleranceLow();
      for (double times : Double.isInfinite(tolerance) ? new double[0] : OVER_TOLERANCE) {
        double percent = Math.round(tolerance * times * 100);
        double before = old == null ? 0 : Gain.power(old, kernel, percent / 100, false);
        double after = fresh == null ? 0 : Gain.power(fresh, kernel, percent / 100, false);
        if (Math.abs(after - before) > worst) {
          worst = Math.abs(after - before);
          said =
              new Line(
                  key + ": " + Math.round(Math.abs(percent)) + " % " + (above ? "high" : "low"),
                  old == null ? "not read" : "caught " + two(before),
                  fresh == null ? "not read" : "caught " + two(after));
        }
      }
    }
    if (said != null) {
      lines.add(said);
    }
  }

  private static String two(double power) {
    return Chance.ofPassing(1 - power, Chance.Proof.QUADRATURE).text();
  }

  private void faults() {
    Map<String, Map<String, Outcome>> old = outcomes(was);
    Map<String, Map<String, Outcome>> fresh = outcomes(now);
    for (Fault fault : Fault.all()) {
      Map<String, Outcome> before = old.getOrDefault(fault.id(), Map.of());
      Map<String, Outcome> after = fresh.getOrDefault(fault.id(), Map.of());
      if (worst(before) != worst(after)) {
        Map<String, Outcome> stays = new HashMap<>(before);
        stays.keySet().retainAll(after.keySet());
        boolean gone =
            !isGeneral(fault)
                && worst(after).compareTo(worst(before)) > 0
                && worst(stays) == worst(after);
        lines.add(
            new Line(
                fault.id() + " " + fault.name(),
                worst(before).word(),
                gone
                    ? worst(after).word()
                        + "; the rows where it was "
                        + worst(before).word()
                        + " are gone"
                    : worst(after).word()));
      }
    }
  }

  /** Whether it is of the generator: it is there whether a row is or not. */
  private static boolean isGeneral(Fault fault) {
    return fault.who().equals("generator");
  }

  private static Outcome worst(Map<String, Outcome> outcomes) {
    Outcome worst = Outcome.NOT_APPLICABLE;
    for (Outcome one : outcomes.values()) {
      worst = one.compareTo(worst) < 0 ? one : worst;
    }
    return worst;
  }

  /** By entry, the worst outcome at each of its places. */
  private Map<String, Map<String, Outcome>> outcomes(SheetLines sheet) {
    Map<String, Map<String, Outcome>> all = new HashMap<>();
    Proposals proposals = new Proposals(sheet, kernel);
    for (Instance one : Instances.of(sheet)) {
      Outcome outcome = proposals.outcome(one, one.failing(kernel), null);
      all.computeIfAbsent(one.fault().id(), f -> new HashMap<>())
          .merge(one.where() + one.size().text(), outcome, (a, b) -> b.compareTo(a) < 0 ? b : a);
    }
    return all;
  }
}
