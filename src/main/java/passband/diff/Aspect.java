package passband.diff;

/** Which side of a fact a change is about: of a limit there are three, each with its own lines. */
enum Aspect {
  /** What it says itself; of a limit its tolerance. */
  ITSELF,
  /** How a reading is compared with a limit. */
  DECISION,
  /** How far a reading may be off. */
  UNCERTAINTY
}
