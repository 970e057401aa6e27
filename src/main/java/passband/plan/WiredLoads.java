package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.model.Termination;
import passband.quantity.Rational;
import passband.syntax.TerminalKind;

/** Which loads of the instruments a setup puts between the poles that a point measures at. */
public final class WiredLoads {
  private WiredLoads() {}

  /** Those between a pole and a way back. */
  public static List<LoadBank> between(
      Instruments instruments, Nets nets, List<Terminal> active, List<Terminal> back) {
    List<LoadBank> wired = new ArrayList<>(instruments.loads());
    wired.removeIf(bank -> !closes(nets, active, back, bank));
    return wired;
  }

  /**
   * Those that a point's output goes through; without an output those between any two poles.
   *
   * @param mode null for a point without output
   */
  public static List<LoadBank> of(
      Instruments instruments, Setup setup, @Nullable Mode mode, @Nullable Outlet outlet) {
    List<Terminal> active = mode == null || outlet == null ? poles(setup) : outlet.poles();
    Outlet through = mode == null ? null : mode.through();
    List<Terminal> back = through == null ? active : through.poles();
    return between(instruments, setup.nets(), active, back);
  }

  /**
   * The load that is set to a value: of those that are wired, or where none of them has it any one
   * that has; null when no instrument has such a load.
   *
   * @param setup null for a point without one
   */
  public static @Nullable LoadBank bank(
      Instruments instruments,
      @Nullable Setup setup,
      @Nullable Mode mode,
      @Nullable Outlet outlet,
      Rational ohms) {
    LoadBank carrying = carrying(instruments, setup, mode, outlet, ohms);
    return carrying == null ? instruments.load(ohms) : carrying;
  }

  /**
   * The same; null also where others are wired than those that have the value: then none of these
   * takes the output.
   *
   * @param setup null for a point without one
   */
  public static @Nullable LoadBank carrying(
      Instruments instruments,
      @Nullable Setup setup,
      @Nullable Mode mode,
      @Nullable Outlet outlet,
      Rational ohms) {
    List<LoadBank> wired =
        setup == null || instruments.loads().size() < 2
            ? List.of()
            : of(instruments, setup, mode, outlet);
    for (LoadBank bank : wired) {
      if (bank.values().contains(ohms)) {
        return bank;
      }
    }
    return wired.isEmpty() ? instruments.load(ohms) : null;
  }

  /**
   * The load between the wired poles that can be set open or short; null where none can: then open
   * means that no load is wired.
   *
   * @param setup null for a point without one
   */
  public static @Nullable LoadBank bank(
      Instruments instruments,
      @Nullable Setup setup,
      @Nullable Mode mode,
      @Nullable Outlet outlet,
      Termination termination) {
    for (LoadBank bank :
        setup == null ? List.<LoadBank>of() : of(instruments, setup, mode, outlet)) {
      if (bank.terminations().contains(termination)) {
        return bank;
      }
    }
    return null;
  }

  private static boolean closes(
      Nets nets, List<Terminal> active, List<Terminal> back, LoadBank through) {
    for (Terminal a : active) {
      for (Terminal b : back) {
        boolean forth = nets.joined(a, through.from()) && nets.joined(b, through.to());
        boolean other = nets.joined(a, through.to()) && nets.joined(b, through.from());
        if (!a.same(b) && (forth || other)) {
          return true;
        }
      }
    }
    return false;
  }

  /** The poles that leads go to. */
  private static List<Terminal> poles(Setup setup) {
    List<Terminal> poles = new ArrayList<>();
    for (Wire wire : setup.wires()) {
      for (Terminal end : List.of(wire.from(), wire.to())) {
        if (end.kind() == TerminalKind.POLE) {
          poles.add(end);
        }
      }
    }
    return poles;
  }
}
