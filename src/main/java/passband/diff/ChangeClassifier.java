package passband.diff;

import java.util.List;
import passband.limit.Decision;
import passband.plan.Fact.Area;
import passband.plan.RecordLimit;
import passband.syntax.DecisionKind;

/** What a difference is. */
final class ChangeClassifier {
  private final Decision was;
  private final Decision now;

  ChangeClassifier(Decision was, Decision now) {
    this.was = was;
    this.now = now;
  }

  Change judge(Difference d) {
    if (d.area() == Area.LIMIT && d.was() != null && d.now() != null) {
      return LimitChangeClassifier.judge(d.was(), d.now());
    }
    return new Change(
        kind(d),
        d.subject(),
        d.was() == null ? null : d.was().shown(),
        d.now() == null ? null : d.now().shown(),
        d.fact().span(),
        List.of(),
        Ends.of(d.was()),
        Ends.of(d.now()));
  }

  private Kind kind(Difference d) {
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
      case LEAD -> Kind.LEAD;
      case CONTACT -> Kind.CONTACT;
      case STATE -> Kind.STATE;
      case DUTY -> Kind.DUTY;
      case STOP -> Kind.STOP;
      case STEPS -> Kind.STEP;
      case ORDER -> Kind.ORDER;
      case RECORD -> record(d);
      case POINT, LIMIT -> sided(d, Kind.POINT_REMOVED, Kind.POINT_ADDED, Kind.RULE);
      case UNKNOWN -> Kind.RATING_UNKNOWN;
      case ANALYZER -> Kind.ANALYZER;
      case PROFILE -> Kind.PROFILE;
    };
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

  private static Kind sided(Difference d, Kind removed, Kind added, Kind changed) {
    return d.now() == null ? removed : d.was() == null ? added : changed;
  }

  /** Looser when the limits move less far inward, or k is less. */
  private Kind decision() {
    boolean guard = now.guard().compareTo(was.guard()) < 0;
    boolean wasGuarded = was.kind() != DecisionKind.SIMPLE;
    return wasGuarded && guard ? Kind.DECISION_LOOSER : Kind.DECISION;
  }
}
