package passband.check;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import passband.model.Terminal;
import passband.plan.Wire;

/**
 * A setup as a graph: terminals are its nodes, leads and links its edges. What hangs together by
 * them is one net.
 */
final class Nets {
  private final List<Wire> wires;

  Nets(List<Wire> wires) {
    this.wires = wires;
  }

  /** The identities of all terminals that hang together with one, itself included. */
  Set<String> net(Terminal start) {
    Set<String> reached = new LinkedHashSet<>();
    Deque<String> next = new ArrayDeque<>(List.of(start.id()));
    while (!next.isEmpty()) {
      String at = next.poll();
      if (reached.add(at)) {
        next.addAll(neighbours(at));
      }
    }
    return reached;
  }

  private List<String> neighbours(String at) {
    List<String> found = new ArrayList<>();
    for (Wire wire : wires) {
      if (wire.from().id().equals(at)) {
        found.add(wire.to().id());
      } else if (wire.to().id().equals(at)) {
        found.add(wire.from().id());
      }
    }
    return found;
  }

  /** Whether two terminals hang together. */
  boolean joined(Terminal a, Terminal b) {
    return net(a).contains(b.id());
  }

  /** Whether any of the terminals hangs together with one. */
  boolean reaches(List<Terminal> some, Terminal one) {
    Set<String> net = net(one);
    return some.stream().anyMatch(t -> net.contains(t.id()));
  }

  /** Whether a lead goes to the terminal. */
  boolean wired(Terminal terminal) {
    return !neighbours(terminal.id()).isEmpty();
  }
}
