package passband.diff;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.plan.Naming;
import passband.plan.Plan;

/**
 * Pairs what was renamed between two revisions, by the {@code renamed from} notes of either: the
 * comparison of new with old is the mirror of that of old with new. A name that is there on both
 * sides stands for itself.
 */
final class Renames {
  /** The names of one kind, each with what it was called before; null where no note says so. */
  private final Map<String, String> was = new HashMap<>();

  private final Map<String, String> now = new HashMap<>();

  private Renames() {}

  /** What the old procedure's names are called in the new one. */
  static Naming between(Plan was, Plan now) {
    Renames tests = new Renames();
    was.runs().forEach(r -> tests.was.put(r.test().text(), r.renamedFrom()));
    now.runs().forEach(r -> tests.now.put(r.test().text(), r.renamedFrom()));
    Renames outlets = new Renames();
    was.device().outlets().forEach(o -> outlets.was.put(o.name().text(), o.renamedFrom()));
    now.device().outlets().forEach(o -> outlets.now.put(o.name().text(), o.renamedFrom()));
    Renames modes = new Renames();
    was.device().modes().forEach(m -> modes.was.put(m.name().text(), m.renamedFrom()));
    now.device().modes().forEach(m -> modes.now.put(m.name().text(), m.renamedFrom()));
    Map<String, String> declared = new HashMap<>();
    declare("device " + was.device().name(), "device " + now.device().name(), now, declared);
    declare("procedure " + was.name(), "procedure " + now.name(), now, declared);
    return new Naming(tests.pairs(), outlets.pairs(), modes.pairs(), declared);
  }

  /** Where nothing is allowed under the old name any more. */
  private static void declare(String old, String fresh, Plan now, Map<String, String> declared) {
    if (now.allowed().stream().noneMatch(allowed -> allowed.place().equals(old))) {
      declared.put(old, fresh);
    }
  }

  private Map<String, String> pairs() {
    Map<String, String> pairs = new HashMap<>();
    Set<String> taken = new HashSet<>();
    for (String name : now.keySet().stream().sorted().toList()) {
      pair(now.get(name), name, pairs, taken);
    }
    for (String name : was.keySet().stream().sorted().toList()) {
      pair(name, was.get(name), pairs, taken);
    }
    return pairs;
  }

  /** Only a name that is gone with one that is new, and each of them once. */
  private void pair(
      @Nullable String old, @Nullable String fresh, Map<String, String> pairs, Set<String> taken) {
    boolean gone = was.containsKey(old) && !now.containsKey(old);
    boolean came = now.containsKey(fresh) && !was.containsKey(fresh);
    if (gone && came && !pairs.containsKey(old) && taken.add(fresh)) {
      pairs.put(old, fresh);
    }
  }
}
