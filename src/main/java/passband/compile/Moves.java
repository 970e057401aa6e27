package passband.compile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Move;
import passband.plan.Wire;

/**
 * The changes from one wiring to the next: leads that stay in place are not touched; what comes off
 * comes off first, then leads with one end that moves, then those that are connected, so that no
 * lead is put where another is still to leave.
 */
final class Moves {
  private Moves() {}

  /** From one list of wires to another. */
  static List<Move> between(List<Wire> before, List<Wire> after) {
    List<Move> moves = new ArrayList<>();
    List<Move> moved = new ArrayList<>();
    List<Move> connected = new ArrayList<>();
    accessories(before, after, moves, connected);
    for (Wire old : before) {
      if (old.lead().accessory()) {
        continue;
      }
      Wire now = find(after, old);
      Terminal leaves = now == null ? null : movedEnd(old, now, before);
      if (now == null || (leaves == null && !same(old, now))) {
        moves.add(new Move(Move.Kind.REMOVE, old.lead(), old.from(), old.to()));
      }
    }
    for (Wire now : after) {
      if (now.lead().accessory()) {
        continue;
      }
      Wire old = find(before, now);
      Terminal leaves = old == null ? null : movedEnd(old, now, before);
      if (old == null || (leaves == null && !same(old, now))) {
        connected.add(new Move(Move.Kind.CONNECT, now.lead(), now.from(), now.to()));
      } else if (leaves != null) {
        moved.add(
            new Move(
                Move.Kind.MOVE,
                now.lead(),
                leaves,
                leaves.same(old.from()) ? otherThan(old.to(), now) : otherThan(old.from(), now)));
      }
    }
    moves.addAll(moved);
    moves.addAll(connected);
    return moves;
  }

  /** One that touches something else than before comes off and is connected again. */
  private static void accessories(
      List<Wire> before, List<Wire> after, List<Move> removed, List<Move> connected) {
    Map<Lead, List<Terminal>> were = touched(before);
    Map<Lead, List<Terminal>> are = touched(after);
    were.forEach(
        (lead, at) -> {
          if (!ids(at).equals(ids(are.getOrDefault(lead, List.of())))) {
            removed.add(whole(Move.Kind.REMOVE, lead, at));
          }
        });
    are.forEach(
        (lead, at) -> {
          if (!ids(at).equals(ids(were.getOrDefault(lead, List.of())))) {
            connected.add(whole(Move.Kind.CONNECT, lead, at));
          }
        });
  }

  private static Move whole(Move.Kind kind, Lead lead, List<Terminal> at) {
    return new Move(kind, lead, at.get(0), at.get(at.size() - 1), at);
  }

  /** What each accessory touches, in the order of its chain. */
  private static Map<Lead, List<Terminal>> touched(List<Wire> wires) {
    Map<Lead, List<Terminal>> touched = new LinkedHashMap<>();
    for (Wire wire : wires) {
      if (wire.lead().accessory()) {
        List<Terminal> at = touched.computeIfAbsent(wire.lead(), lead -> new ArrayList<>());
        for (Terminal end : List.of(wire.from(), wire.to())) {
          if (!ids(at).contains(end.id())) {
            at.add(end);
          }
        }
      }
    }
    return touched;
  }

  private static Set<String> ids(List<Terminal> terminals) {
    Set<String> ids = new HashSet<>();
    terminals.forEach(terminal -> ids.add(terminal.id()));
    return ids;
  }

  private static @Nullable Wire find(List<Wire> wires, Wire like) {
    for (Wire wire : wires) {
      if (wire.lead().name().text().equals(like.lead().name().text())) {
        return wire;
      }
    }
    return null;
  }

  /** The same lead between the same two terminals, whichever end was written first. */
  private static boolean same(Wire a, Wire b) {
    return a.same(b) || (a.from().same(b.to()) && a.to().same(b.from()));
  }

  /**
   * The end that leaves its terminal when exactly one does, to one that is free; null otherwise.
   */
  private static @Nullable Terminal movedEnd(Wire old, Wire now, List<Wire> before) {
    boolean fromStays = old.from().same(now.from()) || old.from().same(now.to());
    boolean toStays = old.to().same(now.from()) || old.to().same(now.to());
    if (fromStays == toStays) {
      return null;
    }
    Terminal target = otherThan(fromStays ? old.from() : old.to(), now);
    for (Wire wire : before) {
      if (wire != old && (wire.from().same(target) || wire.to().same(target))) {
        return null;
      }
    }
    return fromStays ? old.to() : old.from();
  }

  /** The end of a wire that is not at the terminal that stays. */
  private static Terminal otherThan(Terminal stays, Wire now) {
    return now.from().same(stays) ? now.to() : now.from();
  }
}
