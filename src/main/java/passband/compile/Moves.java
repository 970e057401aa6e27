package passband.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
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
    for (Wire old : before) {
      Wire now = find(after, old);
      Terminal leaves = now == null ? null : movedEnd(old, now, before);
      if (now == null || (leaves == null && !same(old, now))) {
        moves.add(new Move(Move.Kind.REMOVE, old.lead(), old.from(), old.to()));
      }
    }
    for (Wire now : after) {
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
