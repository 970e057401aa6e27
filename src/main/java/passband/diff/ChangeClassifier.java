package passband.diff;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.limit.Decision;
import passband.model.Lead;
import passband.plan.Fact;
import passband.plan.Fact.Area;
import passband.plan.Plan;
import passband.plan.RecordLimit;
import passband.plan.Stage;
import passband.syntax.DecisionKind;
import passband.syntax.LimitExpression;

/** What a difference is. */
final class ChangeClassifier {
  private final @Nullable Plan was;
  private final @Nullable Plan now;

  /**
   * @param was null, likewise {@code now}, for a profile or a rule by itself
   */
  ChangeClassifier(@Nullable Plan was, @Nullable Plan now) {
    this.was = was;
    this.now = now;
  }

  /** Null where a limit's acceptance alone differs, which {@link AcceptanceClassifier} tells. */
  @Nullable Change judge(Difference d) {
    if (d.area() == Area.LIMIT && d.was() != null && d.now() != null) {
      return LimitChangeClassifier.tolerance(d.was(), d.now());
    }
    return new Change(
        kind(d),
        d.subject(),
        shown(d.was(), d.now()),
        shown(d.now(), d.was()),
        d.fact().span(),
        List.of(),
        Ends.of(d.was()),
        Ends.of(d.now()));
  }

  /** In words; of steps those that the other side has not, where that is less than all. */
  private static @Nullable String shown(@Nullable Fact fact, @Nullable Fact other) {
    List<String> own = fact == null ? null : fact.stepsShown();
    List<String> others = other == null ? null : other.stepsShown();
    if (fact == null || own == null || others == null) {
      return fact == null ? null : fact.shown();
    }
    String mine = String.join(" / ", without(own, others));
    boolean moved = mine.equals(String.join(" / ", without(others, own)));
    return moved ? fact.shown() : mine;
  }

  private static List<String> without(List<String> steps, List<String> others) {
    List<String> left = new ArrayList<>(steps);
    others.forEach(left::remove);
    return left;
  }

  private Kind kind(Difference d) {
    if (isOrder(d)) {
      return order(d);
    }
    return switch (d.area()) {
      case REVISION -> Kind.REVISION;
      case TEXT -> Kind.TEXT;
      case NAME -> Kind.RENAMED;
      case DECISION -> decision();
      case CAUTION -> sided(d, Kind.CAUTION_REMOVED, Kind.CAUTION_ADDED, Kind.CAUTION_CHANGED);
      case GATE -> sided(d, Kind.GATE_REMOVED, Kind.GATE_ADDED, Kind.GATE_CHANGED);
      case CONDITION -> Kind.CONDITION;
      case ALLOW -> sided(d, Kind.ALLOW_REMOVED, Kind.ALLOW_ADDED, Kind.ALLOW_ADDED);
      case WIRE, MOVES -> Kind.CONNECTION;
      case LEAD -> lead(d);
      case CONTACT -> Kind.CONTACT;
      case RUN -> sided(d, Kind.TEST_REMOVED, Kind.TEST_ADDED, Kind.STATE);
      case STATE -> Kind.STATE;
      case DUTY -> Kind.DUTY;
      case STOP -> Kind.STOP;
      case STEPS -> steps(d);
      case CALCULATION -> Kind.CALCULATION;
      case ORDER -> Kind.ORDER;
      case RECORD -> record(d);
      case POINT, LIMIT -> sided(d, Kind.POINT_REMOVED, Kind.POINT_ADDED, Kind.RULE);
      case RULE -> written(d, Kind.RULE);
      case UNKNOWN -> Kind.RATING_UNKNOWN;
      case ANALYZER -> Kind.ANALYZER;
      case PROFILE -> written(d, Kind.PROFILE);
    };
  }

  // ---- order ----

  /** The first instrument's load that has the value is the one that is set: no order of words. */
  private static boolean isOrder(Difference d) {
    boolean chosen = d.area() == Area.ANALYZER && d.fact().key().endsWith("/chosen");
    return d.fact().sequence() != null && !chosen;
  }

  private Kind order(Difference d) {
    List<String> old = d.was() == null ? null : d.was().sequence();
    List<String> fresh = d.now() == null ? null : d.now().sequence();
    boolean parts = d.fact().key().equals("order");
    return parts && old != null && fresh != null && crosses(old, fresh)
        ? Kind.ORDER_ACROSS
        : Kind.ORDER;
  }

  /** Whether two parts change places that are no runs in one and the same state. */
  private boolean crosses(List<String> old, List<String> fresh) {
    for (int i = 0; i < old.size(); i++) {
      for (int j = i + 1; j < old.size(); j++) {
        int first = fresh.indexOf(old.get(i));
        int second = fresh.indexOf(old.get(j));
        if (second >= 0 && second < first && !alike(old.get(i), old.get(j))) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean alike(String one, String other) {
    Stage.Run first = run(one);
    Stage.Run second = run(other);
    return first != null
        && second != null
        && first.output() == second.output()
        && Objects.equals(state(first), state(second));
  }

  private static @Nullable String state(Stage.Run run) {
    return run.state() == null ? null : run.state().name().text();
  }

  /** By its name in the order of the parts; null for what is none. */
  private Stage.@Nullable Run run(String id) {
    for (Stage.Run run : now == null ? List.<Stage.Run>of() : now.runs()) {
      if (run.id().equals(id)) {
        return run;
      }
    }
    return null;
  }

  // ---- leads, steps, limits ----

  /** A lead that bears less than was said can hurt; its colour and its words are text. */
  private Kind lead(Difference d) {
    Lead old = was == null ? null : lead(was, d.fact().key());
    Lead fresh = now == null ? null : lead(now, d.fact().key());
    boolean same =
        old != null
            && fresh != null
            && old.kind() == fresh.kind()
            && Objects.equals(old.rated(), fresh.rated());
    return same ? Kind.TEXT : Kind.LEAD;
  }

  private static @Nullable Lead lead(Plan plan, String key) {
    for (Lead lead : plan.leads()) {
      if (key.equals("lead/" + lead.name().text())) {
        return lead;
      }
    }
    return null;
  }

  private static Kind steps(Difference d) {
    boolean listed =
        d.was() != null && d.was().steps() != null || d.now() != null && d.now().steps() != null;
    return listed
        ? StepChangeClassifier.kind(
            d.was() == null ? null : d.was().steps(), d.now() == null ? null : d.now().steps())
        : Kind.STEP;
  }

  /** By the values that pass; in another unit it is another limit. */
  private static Kind record(Difference d) {
    RecordLimit was = d.was() == null ? null : d.was().record();
    RecordLimit now = d.now() == null ? null : d.now().record();
    if (was == null || now == null) {
      return now == null ? Kind.OPENED : Kind.TIGHTENED;
    }
    Kind moved = LimitChangeClassifier.moved(was.accept(), now.accept());
    return moved == null ? Kind.RULE : moved;
  }

  /** By the line of a profile or a rule, where that alone tells. */
  private static Kind written(Difference d, Kind otherwise) {
    LimitExpression old = d.was() == null ? null : d.was().written();
    LimitExpression fresh = d.now() == null ? null : d.now().written();
    if (old == null || fresh == null) {
      return old != null ? Kind.OPENED : fresh != null ? Kind.TIGHTENED : otherwise;
    }
    Kind moved = WrittenLimits.moved(old, fresh);
    return moved == null ? otherwise : moved;
  }

  private static Kind sided(Difference d, Kind removed, Kind added, Kind changed) {
    return d.now() == null ? removed : d.was() == null ? added : changed;
  }

  /** Looser when the limits move less far inward, or k is less. */
  private Kind decision() {
    if (was == null || now == null) {
      return Kind.DECISION;
    }
    Decision old = was.decision();
    boolean managed =
        now.decision().kind() == DecisionKind.MANAGED && old.kind() != DecisionKind.MANAGED;
    boolean guard = managed || now.decision().guard().compareTo(old.guard()) < 0;
    return old.kind() != DecisionKind.SIMPLE && guard ? Kind.DECISION_LOOSER : Kind.DECISION;
  }
}
