package passband.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.plan.Naming;
import passband.plan.Plan;
import passband.plan.Profile;
import passband.source.Span;

/**
 * What changed in meaning between two revisions of a procedure, or of a profile or a rule by
 * itself.
 *
 * @param was null for what is new
 * @param now null for what is gone
 * @param groups the changes by what brought them about, the group with the worst first
 */
public record PlanDiff(@Nullable Compared was, @Nullable Compared now, List<ChangeGroup> groups) {

  /** Compares the procedures of two libraries; those without a change are left out. */
  public static List<PlanDiff> between(List<Plan> was, List<Plan> now) {
    return between(was, List.of(), now, List.of());
  }

  /**
   * Compares two libraries by name, what was renamed with what it was; what is without a change is
   * left out.
   *
   * @param wasProfiles what is told by itself where no procedure of either side uses it; likewise
   *     {@code nowProfiles}
   */
  public static List<PlanDiff> between(
      List<Plan> was, List<Profile> wasProfiles, List<Plan> now, List<Profile> nowProfiles) {
    List<Compared> old = Compared.all(was, wasProfiles);
    List<Compared> fresh = Compared.all(now, nowProfiles);
    Set<Span> oldUses = Profile.used(was);
    Set<Span> freshUses = Profile.used(now);
    List<PlanDiff> diffs = new ArrayList<>();
    for (Pairing.Pair pair : Pairing.of(old, fresh)) {
      boolean used = isUsed(pair.was(), oldUses) || isUsed(pair.now(), freshUses);
      PlanDiff diff = used ? null : of(pair.was(), pair.now());
      if (diff != null) {
        diffs.add(diff);
      }
    }
    return diffs;
  }

  private static boolean isUsed(@Nullable Compared one, Set<Span> uses) {
    return one != null && one.profile() != null && one.profile().isUsed(uses);
  }

  /** Null where both are the same. */
  private static @Nullable PlanDiff of(@Nullable Compared was, @Nullable Compared now) {
    if (was == null || now == null) {
      return new PlanDiff(was, now, List.of());
    }
    Plan old = was.plan();
    Plan fresh = now.plan();
    Naming naming = old == null || fresh == null ? Naming.OWN : Renames.between(old, fresh);
    List<ChangeGroup> groups =
        Comparison.groups(old, was.facts(naming), fresh, now.facts(Naming.OWN));
    return groups.isEmpty() ? null : new PlanDiff(was, now, groups);
  }

  /** The same revision for another instrument: that its meaning differs is no fault. */
  public PlanDiff ofOneRevision() {
    List<ChangeGroup> others = new ArrayList<>(groups);
    others.removeIf(group -> group.kind() == Kind.SAME_REVISION);
    return new PlanDiff(was, now, others);
  }

  /** All changes, what can hurt most first, then in the order of the bench. */
  public List<Change> changes() {
    List<Change> changes = new ArrayList<>();
    groups.forEach(group -> changes.addAll(group.changes()));
    changes.sort(Comparator.comparing(Change::kind));
    return changes;
  }

  /** What is compared, by the name that it has now. */
  public Compared subject() {
    return now != null ? now : Objects.requireNonNull(was, "a comparison of nothing");
  }

  /** Its name. */
  public String name() {
    return subject().name();
  }
}
