package passband.diff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.plan.Fact;
import passband.plan.Meaning;
import passband.plan.Naming;
import passband.plan.Plan;
import passband.plan.Profile;

/**
 * One side of a comparison: a procedure, or a device, an analyzer, leads or a rule by itself.
 *
 * @param kind the word that declares it
 * @param digest of its meaning
 * @param plan null for what is no procedure
 * @param profile null for a procedure
 */
public record Compared(
    String kind, String name, String digest, @Nullable Plan plan, @Nullable Profile profile) {
  /** Half of what one of them says has to be said by the other: else they are two things. */
  private static final int ALIKE = 2;

  static Compared of(Plan plan) {
    return new Compared("procedure", plan.name().text(), plan.digest(), plan, null);
  }

  static Compared of(Profile profile) {
    return new Compared(profile.kind(), profile.name().text(), profile.digest(), null, profile);
  }

  /** All of a side, the procedures first. */
  static List<Compared> all(List<Plan> plans, List<Profile> profiles) {
    List<Compared> all = new ArrayList<>();
    plans.forEach(plan -> all.add(of(plan)));
    profiles.forEach(profile -> all.add(of(profile)));
    return all;
  }

  /** Its facts by key, by the names that another revision has. */
  Map<String, Fact> facts(Naming naming) {
    if (plan != null) {
      return Meaning.of(plan, naming).byKey();
    }
    return profile == null ? Map.of() : Meaning.of(profile).byKey();
  }

  /** Whether it is the other under another name. */
  boolean isRenamed(Compared now) {
    String replaced = now.plan == null ? null : now.plan.revision().replacesDigest();
    if (replaced != null && digest.startsWith(replaced)) {
      return true;
    }
    Set<String> old = said();
    Set<String> fresh = now.said();
    Set<String> both = new HashSet<>(old);
    both.retainAll(fresh);
    return ALIKE * both.size() > Math.max(old.size(), fresh.size());
  }

  private Set<String> said() {
    Set<String> said = new HashSet<>();
    facts(Naming.OWN).forEach((key, fact) -> said.add(key + " " + fact.canonical()));
    return said;
  }
}
