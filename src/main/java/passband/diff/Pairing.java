package passband.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Puts together what is the same thing on both sides. */
final class Pairing {
  private final List<Compared> old;
  private final List<Compared> fresh;
  private final List<Pair> pairs = new ArrayList<>();

  private Pairing(List<Compared> old, List<Compared> fresh) {
    this.old = new ArrayList<>(old);
    this.fresh = new ArrayList<>(fresh);
  }

  /** One thing before and now; one of them is null for what is gone or new. */
  record Pair(@Nullable Compared was, @Nullable Compared now) {
    private String name() {
      return now != null ? now.name() : was == null ? "" : was.name();
    }

    private boolean isProcedure() {
      Compared any = now != null ? now : was;
      return any != null && any.plan() != null;
    }
  }

  /**
   * By kind and name; then one that is gone with one that is new, where they are the only ones of
   * their kind or say much the same. The procedures come first, each kind by name.
   */
  static List<Pair> of(List<Compared> old, List<Compared> fresh) {
    Pairing pairing = new Pairing(old, fresh);
    pairing.pair((was, now) -> was.name().equals(now.name()));
    pairing.pair((was, now) -> only(was, old) && only(now, fresh) || was.isRenamed(now));
    pairing.old.forEach(gone -> pairing.pairs.add(new Pair(gone, null)));
    pairing.fresh.forEach(came -> pairing.pairs.add(new Pair(null, came)));
    pairing.pairs.sort(
        Comparator.comparing((Pair pair) -> !pair.isProcedure()).thenComparing(Pair::name));
    return pairing.pairs;
  }

  private interface Same {
    boolean test(Compared was, Compared now);
  }

  private static boolean only(Compared one, List<Compared> side) {
    return side.stream().filter(other -> other.kind().equals(one.kind())).count() == 1;
  }

  private void pair(Same same) {
    for (Compared was : List.copyOf(old)) {
      for (Compared now : List.copyOf(fresh)) {
        if (old.contains(was) && was.kind().equals(now.kind()) && same.test(was, now)) {
          pairs.add(new Pair(was, now));
          old.remove(was);
          fresh.remove(now);
        }
      }
    }
  }
}
