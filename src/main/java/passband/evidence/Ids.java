package passband.evidence;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Identities of items; no two are the same. */
final class Ids {
  private final Set<String> taken = new HashSet<>();
  private final Map<String, Integer> ordinals = new HashMap<>();

  /** {@code PREFIX/NAME}, with an ordinal where that is taken. */
  String of(String prefix, String name) {
    String id = prefix + "/" + name;
    for (int i = 2; !taken.add(id); i++) {
      id = prefix + "/" + name + "-" + i;
    }
    return id;
  }

  /** An identity that is given. */
  void take(String id) {
    if (!taken.add(id)) {
      throw new IllegalStateException("two items have the identity " + id);
    }
  }

  /** The name of the next step of its kind that has no name of its own: {@code confirm-3}. */
  String next(String prefix, String kind) {
    return kind + "-" + ordinals.merge(prefix + "/" + kind, 1, Integer::sum);
  }
}
