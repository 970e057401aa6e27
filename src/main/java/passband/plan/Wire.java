package passband.plan;

import passband.model.Lead;
import passband.model.Terminal;
import passband.source.Span;

/** A lead or link with the terminals at its ends, on one outlet. */
public record Wire(Lead lead, Terminal from, Terminal to, Span span) {

  /** Whether both ends are where the other's are. */
  public boolean same(Wire other) {
    return from.same(other.from) && to.same(other.to);
  }
}
