package passband.diff;

/** What a change is; the first can do most harm. */
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
  ORDER("order changed"),
  OPENED("limit removed"),
  LOOSENED("loosened"),
  DECISION_LOOSER("decision looser"),
  POINT_REMOVED("point removed"),
  RATING_UNKNOWN("rating unknown"),
  SHIFTED("shifted"),
  ANALYZER("analyzer changed"),
  ALLOW_ADDED("warning allowed"),
  TIGHTENED("tightened"),
  DECISION("decision changed"),
  RE_ROUNDED("re-rounded"),
  RULE("rule changed"),
  POINT_ADDED("point added"),
  CAUTION_ADDED("caution added"),
  GATE_ADDED("gate added"),
  ALLOW_REMOVED("allow removed"),
  STEP("steps changed"),
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
