package passband.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.plan.Fact;
import passband.plan.Plan;

/** Puts together what has one cause: an edit of one line, or of lines that were edited together. */
final class Causes {
  private final Origins was;
  private final Origins now;
  private final Hunks hunks;

  /** By the edit; what no line tells by its kind. */
  private final Map<Object, List<Change>> byCause = new LinkedHashMap<>();

  /**
   * Of two sides.
   *
   * @param was null, likewise {@code now}, for a profile or a rule by itself
   * @param old what the one says
   * @param fresh what the other says
   */
  Causes(@Nullable Plan was, Iterable<Fact> old, @Nullable Plan now, Iterable<Fact> fresh) {
    this.was = new Origins(was);
    this.now = new Origins(now);
    this.hunks = Hunks.between(Origins.files(old), Origins.files(fresh));
  }

  /** Adds what a difference was found to be. */
  void add(Change change, Difference difference, Aspect aspect) {
    Hunk edit = edit(difference, aspect);
    add(change, edit != null ? edit : change.kind());
  }

  /** Adds what no edit brought about. */
  void add(Change change) {
    add(change, change.kind());
  }

  private void add(Change change, Object cause) {
    byCause.computeIfAbsent(cause, c -> new ArrayList<>()).add(change);
  }

  private @Nullable Hunk edit(Difference difference, Aspect aspect) {
    Fact fresh = difference.now();
    Fact old = difference.was();
    Hunk edit = fresh == null ? null : hunks.ofNew(now.of(fresh, aspect));
    return edit != null || old == null ? edit : hunks.ofOld(was.of(old, aspect));
  }

  /** The groups, the one with the worst change first; of two alike the greater one. */
  List<ChangeGroup> groups() {
    List<ChangeGroup> groups = new ArrayList<>();
    byCause.forEach(
        (cause, changes) -> {
          List<Change> sorted = new ArrayList<>(changes);
          sorted.sort(Comparator.comparing(Change::kind));
          Hunk edit = cause instanceof Hunk hunk ? hunk : null;
          groups.add(new ChangeGroup(sorted.get(0).kind(), edit, sorted));
        });
    groups.sort(
        Comparator.comparing(ChangeGroup::kind).thenComparing(group -> -group.changes().size()));
    return groups;
  }
}
