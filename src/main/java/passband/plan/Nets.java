package passband.plan;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.model.Terminal;

/**
 * A setup as a graph: terminals are its nodes, leads and links its edges. What hangs together by
 * them is one net.
 *
 * @param nets by the identity of each terminal that a lead goes to, those of its net
 */
public record Nets(Map<String, Set<String>> nets) {
  /** Without a lead. */
  static final Nets NONE = new Nets(Map.of());

  /** Of these leads and links. */
  static Nets of(List<Wire> wires) {
    Map<String, Set<String>> nets = new HashMap<>();
    for (Wire wire : wires) {
      if (!wire.conducts()) {
        continue;
      }
      Set<String> joined = new LinkedHashSet<>();
      for (String end : List.of(wire.from().id(), wire.to().id())) {
        joined.addAll(nets.getOrDefault(end, Set.of(end)));
      }
      joined.forEach(end -> nets.put(end, joined));
    }
    return new Nets(nets);
  }

  /** The identities of all terminals that hang together with one, itself included. */
  public Set<String> net(Terminal start) {
    return net(start.id());
  }

  private Set<String> net(String id) {
    Set<String> net = nets.get(id);
    return net == null ? Set.of(id) : net;
  }

  /** Whether two terminals hang together. */
  public boolean joined(Terminal a, Terminal b) {
    return net(a).contains(b.id());
  }

  /** Whether any of the terminals hangs together with one. */
  public boolean reaches(List<Terminal> some, Terminal one) {
    return reaches(some, one.id());
  }

  /** Whether any of the terminals hangs together with the one of this identity. */
  public boolean reaches(List<Terminal> some, String id) {
    Set<String> net = net(id);
    for (Terminal terminal : some) {
      if (net.contains(terminal.id())) {
        return true;
      }
    }
    return false;
  }

  /** Whether a lead goes to any of the terminals. */
  public boolean wired(List<Terminal> some) {
    for (Terminal terminal : some) {
      if (nets.containsKey(terminal.id())) {
        return true;
      }
    }
    return false;
  }
}
