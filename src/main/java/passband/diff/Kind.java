package passband.diff;

/**
 * What a change is; the first can do most harm: first what can hurt somebody at the bench, then
 * what lets a bad generator pass, then what fails a good one, then what only reads otherwise.
 */
public enum Kind {
  SAME_REVISION("same revision, other meaning"),
  CAUTION_REMOVED("caution removed"),
  CAUTION_CHANGED("caution changed"),
  GATE_REMOVED("gate removed"),
  GATE_CHANGED("gate changed"),
  CONDITION("condition changed"),
  CONNECTION("connection changed"),
  LEAD("lead changed"),
  CONTACT("activation changed"),
  STATE("state changed"),
  DUTY("duty or times changed"),
  STOP("stop step changed"),
  ORDER_ACROSS("order changed across a state or gate"),
  OUTLET_UNTESTED("outlet no longer tested"),
  MODE_UNTESTED("mode no longer tested"),
  TEST_REMOVED("test removed"),
  OPENED("limit removed"),
  POINT_REMOVED("point removed"),
  CHECK_REMOVED("check removed"),
  LOOSENED("limits loosened"),
  DECISION_LOOSER("decision looser"),
  GUARD_LESS("guard band less"),
  UNCERTAINTY_LESS("uncertainty less under the same limits"),
  RATING_UNKNOWN("rating unknown"),
  SHIFTED("limits shifted"),
  CHECK_CHANGED("check changed"),
  CALCULATION("calculation changed"),
  UNCERTAINTY_MORE("uncertainty more under the same limits"),
  ANALYZER("analyzer changed"),
  ALLOW_ADDED("warning allowed"),
  TIGHTENED("limits tightened"),
  DECISION("decision changed"),
  GUARD_MORE("guard band more"),
  RE_ROUNDED("re-rounded"),
  RULE("rule changed"),
  TEST_ADDED("test added"),
  POINT_ADDED("point added"),
  CHECK_ADDED("check added"),
  CAUTION_ADDED("caution added"),
  GATE_ADDED("gate added"),
  ALLOW_REMOVED("allow removed"),
  STEP("steps changed"),
  ORDER("order changed"),
  PROFILE("profile changed"),
  RENAMED("renamed"),
  TEXT("text changed"),
  REVISION("revision");

  private final String word;

  Kind(String word) {
    this.word = word;
  }

  /** As printed. */
  public String word() {
    return word;
  }
}
