package passband.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Contacts;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.plan.WiredLoads;
import passband.quantity.Rational;

/**
 * Leads that are not where the setup has them. Whether output still comes, and still goes through
 * the load, is asked of the same nets and contacts as the setup itself.
 */
final class LeadEffects {
  private final Plan plan;
  private final SheetLines lines;

  LeadEffects(SheetLines lines) {
    this.plan = lines.plan();
    this.lines = lines;
  }

  /** The instances of a size; null for an effect that is none of these. */
  @Nullable List<Instance> of(Fault fault, Fault.Size size) {
    if (!fault.effect().startsWith("lead-")) {
      return null;
    }
    boolean missing = fault.effect().equals("lead-missing");
    Map<String, Instance> instances = new TreeMap<>();
    for (Stage.Run run : lines.runs()) {
      Setup setup = run.setup();
      if (setup == null || !run.output().activates()) {
        continue;
      }
      for (Wire wire : setup.wires()) {
        for (List<Wire> wires : missing ? without(setup, wire, run) : further(setup, wire)) {
          String where = setup.name().text() + " " + run.id() + ": " + wire.lead().name().text();
          Instance instance = instance(fault, size, where, run, rewired(setup, wires));
          if (instance != null) {
            instances.putIfAbsent(where, instance);
          }
        }
      }
    }
    return List.copyOf(instances.values());
  }

  private static Setup rewired(Setup setup, List<Wire> wires) {
    return new Setup(setup.name(), setup.title(), wires, setup.whole(), setup.span());
  }

  /** The setup without a lead that goes to the outlet of the return path. */
  private List<List<Wire>> without(Setup setup, Wire wire, Stage.Run run) {
    boolean isReturn = false;
    for (SheetLine line : lines.of(SheetLine.Kind.OUTPUT)) {
      Outlet through = line.mode().through();
      if (line.run() == run && through != null) {
        isReturn |= through.poles().stream().anyMatch(wire::touches);
      }
    }
    if (!isReturn || wire.lead().link()) {
      return List.of();
    }
    List<Wire> others = new ArrayList<>(setup.wires());
    others.remove(wire);
    return List.of(others);
  }

  /** The setup with the lead's end at an instrument one jack or key further. */
  private List<List<Wire>> further(Setup setup, Wire wire) {
    Terminal end = wire.to().onAnalyzer() ? wire.to() : wire.from();
    if (!end.onAnalyzer() || wire.lead().accessory() || wire.lead().link()) {
      return List.of();
    }
    Terminal next = next(end);
    if (next == null) {
      return List.of();
    }
    List<Wire> others = new ArrayList<>(setup.wires());
    Wire moved =
        wire.to() == end
            ? new Wire(wire.lead(), wire.from(), next, wire.span())
            : new Wire(wire.lead(), next, wire.to(), wire.span());
    others.set(others.indexOf(wire), moved);
    return List.of(others);
  }

  private @Nullable Terminal next(Terminal end) {
    for (Analyzer unit : plan.instruments().units()) {
      List<Terminal> same = new ArrayList<>(unit.terminals());
      same.removeIf(terminal -> terminal.kind() != end.kind());
      for (int i = 0; i < same.size(); i++) {
        if (same.get(i).same(end)) {
          return same.size() < 2 ? null : same.get((i + 1) % same.size());
        }
      }
    }
    return null;
  }

  /** What the readings of a run show with other leads; null where nothing changes. */
  private @Nullable Instance instance(
      Fault fault, Fault.Size size, String where, Stage.Run run, Setup other) {
    List<Instance.Change> changes = new ArrayList<>();
    for (SheetLine line : lines.of(SheetLine.Kind.OUTPUT)) {
      if (line.run() == run && !(reaches(line, other) && activates(line, other))) {
        changes.add(Instance.Change.to(line, 0));
      }
    }
    return changes.isEmpty() ? null : new Instance(fault, size, where, changes);
  }

  /** Whether the load that is set still lies between the poles. */
  private boolean reaches(SheetLine line, Setup other) {
    Rational ohms = line.ohms();
    Setup own = line.run().setup();
    if (ohms == null || own == null) {
      return true;
    }
    LoadBank bank =
        WiredLoads.bank(plan.instruments(), own, line.point().mode(), line.outlet(), ohms);
    List<LoadBank> wired =
        WiredLoads.of(plan.instruments(), other, line.point().mode(), line.outlet());
    return bank == null || wired.contains(bank);
  }

  /** Whether what closes the contact is the same as before. */
  private boolean activates(SheetLine line, Setup other) {
    Terminal contact = LimitEffects.contact(line.point());
    Setup own = line.run().setup();
    if (contact == null || own == null) {
      return true;
    }
    Contacts.Closed before = Contacts.closing(plan.instruments(), own, contact);
    Contacts.Closed after = Contacts.closing(plan.instruments(), other, contact);
    return before == null || before.equals(after);
  }
}
