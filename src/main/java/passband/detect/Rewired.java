package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Contacts;
import passband.plan.Delivery;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.syntax.TerminalKind;

/**
 * What is read while leads are elsewhere than the setup has them. Whether output still comes and
 * still goes through the load, and what of the generator an instrument still touches, is asked of
 * the same nets and contacts as the setup itself.
 */
final class Rewired {
  private final Plan plan;

  Rewired(Plan plan) {
    this.plan = plan;
  }

  /** The true value in SI, NaN for no number; null where it is what it was. */
  @Nullable Double truth(SheetLine line, Setup own, Setup other) {
    if (line.kind() == SheetLine.Kind.TRIP) {
      return trip(line.run(), own, other);
    }
    Analyzer.Measure measure = plan.measure(line.limit());
    if (measure == null || line.kind() == SheetLine.Kind.TIME) {
      return null;
    }
    boolean through = SheetLines.RMS.contains(measure.quantity().name());
    boolean peak = measure.quantity().name().startsWith("peak-");
    if (!through && !peak) {
      return touched(line, measure, own, other);
    }
    if (!line.run().output().activates()) {
      return null;
    }
    boolean reads = reaches(line, own, other) && activates(line, own, other);
    if (line.run().output() == Delivery.INHIBITED) {
      return reads && bothHalves(line, other) ? LimitEffects.full(line) : null;
    }
    return reads && (bothHalves(line, other) || !bothHalves(line, own)) ? null : Double.valueOf(0);
  }

  /** Whether a bad plate sounds no alarm: nothing asks for output, or the plate is whole. */
  boolean isQuiet(SheetLine line, Setup own, Setup other) {
    return !activates(line, own, other) || (bothHalves(line, other) && !bothHalves(line, own));
  }

  /** Whether the load still lies between the poles, and nothing past it. */
  private boolean reaches(SheetLine line, Setup own, Setup other) {
    List<LoadBank> before = wired(line, own);
    List<LoadBank> after = wired(line, other);
    return before.isEmpty() || after.stream().anyMatch(before::contains);
  }

  private List<LoadBank> wired(SheetLine line, Setup setup) {
    Instruments instruments = plan.instruments();
    List<LoadBank> wired = WiredLoads.of(instruments, setup, line.point().mode(), line.outlet());
    String by = line.limit().read().by();
    if (by != null && !by.equals(Instruments.DEVICE)) {
      wired.removeIf(bank -> !bank.from().owner().equals(instruments.in(by).role()));
    }
    wired.removeIf(bank -> setup.nets().joined(bank.from(), bank.to()));
    return wired;
  }

  /** Whether what closes the contact is the same as before. */
  private boolean activates(SheetLine line, Setup own, Setup other) {
    Terminal contact = LimitEffects.contact(line.point());
    if (contact == null) {
      return true;
    }
    Contacts.Closed before = Contacts.closing(plan.instruments(), own, contact);
    Contacts.Closed after = Contacts.closing(plan.instruments(), other, contact);
    return before == null || before.equals(after);
  }

  /** Whether a plate of two halves is whole: else its monitor lets no output come. */
  private static boolean bothHalves(SheetLine line, Setup setup) {
    Outlet plate = line.point().mode() == null ? null : line.mode().through();
    List<Terminal> poles = plate == null ? List.of() : plate.poles();
    return poles.size() < 2 || setup.nets().joined(poles.get(0), poles.get(1));
  }

  /** Where the load is no longer between the halves, the alarm sounds at once, or never. */
  private @Nullable Double trip(Stage.Run run, Setup own, Setup other) {
    List<Terminal> poles = run.outlet() == null ? List.of() : run.outlet().poles();
    Stage.Swept sweep = run.sweep();
    if (poles.size() < 2 || sweep == null || !between(poles, own) || between(poles, other)) {
      return null;
    }
    boolean whole = other.nets().joined(poles.get(0), poles.get(1));
    return whole ? Double.NaN : sweep.from().si().doubleValue();
  }

  private boolean between(List<Terminal> poles, Setup setup) {
    List<LoadBank> banks =
        WiredLoads.between(
            plan.instruments(), setup.nets(), poles.subList(0, 1), poles.subList(1, poles.size()));
    banks.removeIf(bank -> setup.nets().joined(bank.from(), bank.to()));
    return !banks.isEmpty();
  }

  /** Nothing leaks where nothing is connected; a resistance that is open has no number. */
  private @Nullable Double touched(
      SheetLine line, Analyzer.Measure measure, Setup own, Setup other) {
    String by = line.limit().read().by();
    if (by == null || by.equals(Instruments.DEVICE)) {
      return null;
    }
    boolean output = line.run().output().activates() && line.point().mode() != null;
    boolean comes =
        !output
            || (activates(line, own, other) && (bothHalves(line, other) || !bothHalves(line, own)));
    List<Terminal> jacks =
        measure.from() == null ? plan.instruments().in(by).terminals() : List.of(measure.from());
    boolean same =
        touched(jacks, own.nets(), false).equals(touched(jacks, other.nets(), false))
            && (measure.to() == null
                || touched(List.of(measure.to()), own.nets(), true)
                    .equals(touched(List.of(measure.to()), other.nets(), true)));
    return same && comes
        ? null
        : Double.valueOf(measure.quantity().name().equals("resistance") ? Double.NaN : 0);
  }

  /** The terminals of the generator that some jacks are joined to; of earth alone, or of all. */
  private Set<String> touched(List<Terminal> jacks, Nets nets, boolean earth) {
    List<Terminal> all = new ArrayList<>();
    plan.device().outlets().forEach(outlet -> all.addAll(outlet.terminals()));
    Set<String> touched = new LinkedHashSet<>();
    for (Terminal terminal : all) {
      boolean counts =
          earth ? terminal.kind() == TerminalKind.EARTH : terminal.kind().carriesOutput();
      if (counts && jacks.stream().anyMatch(jack -> nets.joined(jack, terminal))) {
        touched.add(terminal.id());
      }
    }
    return touched;
  }
}
