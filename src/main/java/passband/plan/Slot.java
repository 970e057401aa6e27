package passband.plan;

/** What a placeholder of an author's text stands for. */
public enum Slot {
  /** The printed name of the outlet. */
  OUTLET,
  /** The printed name of the mode. */
  MODE,
  /** The setting of the row. */
  SETTING,
  /** The load of the row. */
  LOAD,
  /** The target of the row. */
  TARGET,
  /** Another setting of the row. */
  EXTRA,
  /** The contact that activates the mode. */
  CONTACT,
  /** The analyzer's key to which that contact is wired. */
  KEY,
  /**
   * What is let go of so that output stops: the key, or the button or pedal that a hand pressed.
   */
  HELD,
  /** What another outlet is set to that delivers at the same time. */
  PARTNER,
  /** What another step records. */
  RECORD
}
