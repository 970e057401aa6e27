package passband.diff;

import passband.limit.Limit;
import passband.source.Span;

/**
 * One thing that a compiled procedure says.
 *
 * @param area what it is about, and so who judges a change of it
 * @param key unique in a procedure, the same in the other one
 * @param subject what it is about in words
 * @param value what it says in words; equal for equal meaning
 * @param limit the limit, for a fact that is one; null for others
 * @param cause where it is written; null where nothing in particular is
 */
public record Fact(Area area, String key, String subject, String value, Limit limit, Span cause) {
  /** What facts are about. */
  enum Area {
    REVISION,
    TEXT,
    DECISION,
    CAUTION,
    ALLOW,
    WIRE,
    LEAD,
    CONTACT,
    STATE,
    DUTY,
    STOP,
    STEPS,
    ORDER,
    POINT,
    LIMIT,
    ANALYZER,
    PROFILE
  }
}
