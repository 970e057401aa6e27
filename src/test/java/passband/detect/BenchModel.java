package passband.detect;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device;
import passband.model.Terminal;
import passband.model.Termination;
import passband.plan.Act;
import passband.plan.Move;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Wire;

/** A bench: leads where somebody has put them, dials where somebody has turned them. */
final class BenchModel {
  /** What one lead, link or accessory joins, and what it touches. */
  private record Lead(List<Terminal> touched, boolean accessory) {}

  private static final Lead OFF = new Lead(List.of(), false);

  private final Plan plan;
  private final Map<String, Lead> leads = new LinkedHashMap<>();

  /** Those of them that somebody has left off. */
  private final Set<String> off = new HashSet<>();

  private final Map<String, Set<String>> nets = new HashMap<>();
  private final Map<String, Act.SetLoad> dials = new HashMap<>();
  private final Map<String, String> settings = new HashMap<>();
  private final Map<String, Terminal> held = new LinkedHashMap<>();

  BenchModel(Plan plan) {
    this.plan = plan;
  }

  // ---- leads ----

  /** A lead that ought to be on is left off, until the next move of it. */
  void forget(Move move) {
    move(move);
    nets.clear();
    off.add(move.lead().name().text());
  }

  void move(Move move) {
    String name = move.lead().name().text();
    off.remove(name);
    nets.clear();
    switch (move.kind()) {
      case REMOVE -> leads.remove(name);
      case CONNECT ->
          leads.put(
              name,
              new Lead(
                  move.at().isEmpty() ? List.of(move.from(), move.to()) : move.at(),
                  move.lead().accessory()));
      case MOVE -> {
        List<Terminal> ends = new ArrayList<>();
        Lead lead = leads.get(name);
        for (Terminal end : lead == null ? List.<Terminal>of() : lead.touched) {
          ends.add(end.same(move.from()) ? move.to() : end);
        }
        leads.put(name, new Lead(ends, move.lead().accessory()));
      }
    }
  }

  /** All that hangs together with a terminal; an accessory only touches a contact or a key. */
  Set<String> net(Terminal start) {
    return nets.computeIfAbsent(start.id(), id -> reached(start));
  }

  private Set<String> reached(Terminal start) {
    Set<String> net = new LinkedHashSet<>(Set.of(start.id()));
    Deque<String> open = new ArrayDeque<>(net);
    while (!open.isEmpty()) {
      String at = open.remove();
      for (Map.Entry<String, Lead> one : leads.entrySet()) {
        Lead lead = off.contains(one.getKey()) ? OFF : one.getValue();
        List<Terminal> ends = new ArrayList<>(lead.touched);
        ends.removeIf(end -> lead.accessory && !end.kind().carriesOutput());
        if (ends.stream().anyMatch(end -> end.id().equals(at))) {
          ends.stream().map(Terminal::id).filter(net::add).forEach(open::add);
        }
      }
    }
    return net;
  }

  /**
   * Whether at every end of a setup's leads hangs together what is to, and no accessory is away.
   */
  boolean isWired(Setup setup) {
    BenchModel drawn = new BenchModel(plan);
    for (Wire wire : setup.wires()) {
      String name = wire.lead().name().text();
      Lead there = leads.get(name);
      if (wire.lead().accessory() && (there == null || off.contains(name))) {
        return false;
      }
      drawn.leads.put(
          name,
          wire.lead().accessory() && there != null
              ? there
              : new Lead(List.of(wire.from(), wire.to()), false));
    }
    return setup.wires().stream()
        .flatMap(wire -> Stream.of(wire.from(), wire.to()))
        .allMatch(end -> net(end).equals(drawn.net(end)));
  }

  boolean joined(Terminal a, Terminal b) {
    return net(a).contains(b.id());
  }

  /** The load of an instrument between two different terminals of these; null where none is. */
  @Nullable LoadBank between(Analyzer unit, List<Terminal> some, List<Terminal> others) {
    for (LoadBank bank : unit.loads()) {
      Set<String> from = net(bank.from());
      Set<String> to = net(bank.to());
      for (Terminal a : some) {
        for (Terminal b : others) {
          boolean forth = from.contains(a.id()) && to.contains(b.id());
          boolean back = from.contains(b.id()) && to.contains(a.id());
          if (!a.same(b) && (forth || back) && !from.contains(bank.to().id())) {
            return bank;
          }
        }
      }
    }
    return null;
  }

  /** What is between two poles, in ohm: nothing for joined ones, infinite where nothing is. */
  double ohms(Terminal a, Terminal b) {
    if (joined(a, b)) {
      return 0;
    }
    for (Analyzer unit : plan.instruments().units()) {
      if (between(unit, List.of(a), List.of(b)) != null) {
        return dial(unit.role());
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  // ---- dials and switches ----

  void turn(Act.SetLoad set) {
    dials.put(set.unit().role(), set);
  }

  /** Where an instrument's load stands, in ohm; infinite for open, or where nobody set it. */
  double dial(String role) {
    Act.SetLoad set = dials.get(role);
    if (set == null || set.termination() == Termination.OPEN) {
      return Double.POSITIVE_INFINITY;
    }
    return set.load() == null ? 0 : set.load().si().doubleValue();
  }

  /** Whether the dial of a point's load stands where the point has it. */
  boolean isAt(Point point) {
    return point.loadAt() == null
        || point.load() == null
        || dial(point.loadAt()) == point.load().si().doubleValue();
  }

  void set(Act.Set set) {
    settings.put(set.id(), set.value());
  }

  /** Every further setting, as one text. */
  String settings() {
    return new TreeMap<>(settings).toString();
  }

  // ---- hands ----

  /** A key closes every contact that leads join it to; a hand only what it can reach. */
  void press(Act.Activate activate) {
    Terminal contact = activate.contact();
    if (contact == null) {
      return;
    }
    if (activate.key() != null) {
      held.put(activate.key().id(), activate.key());
    } else if (activate.accessory() == null ? contact.byHand() : touches(activate, contact)) {
      held.put(contact.id(), contact);
    }
  }

  private boolean touches(Act.Activate activate, Terminal contact) {
    String name = activate.accessory().name().text();
    Lead lead = off.contains(name) ? OFF : leads.get(name);
    return lead != null && lead.touched.stream().anyMatch(contact::same);
  }

  void release(@Nullable Terminal contact) {
    if (contact == null) {
      held.clear();
    } else {
      held.remove(contact.id());
    }
  }

  /** The generator's contacts that are closed, in the order in which they were. */
  List<Terminal> closed(Device device) {
    List<Terminal> closed = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Terminal pressed : held.values()) {
      Set<String> net = net(pressed);
      for (Device.Outlet outlet : device.outlets()) {
        for (Terminal contact : outlet.contacts()) {
          if (net.contains(contact.id()) && seen.add(contact.id())) {
            closed.add(contact);
          }
        }
      }
    }
    return closed;
  }
}
