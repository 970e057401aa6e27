package passband.plan;

import passband.model.Lead;
import passband.model.Terminal;
import passband.source.Span;

/**
 * A lead or link with the terminals at its ends, on one outlet. An accessory is a chain of them
 * from terminal to terminal, those that carry output first; one at a single terminal has both ends
 * there.
 */
public record Wire(Lead lead, Terminal from, Terminal to, Span span) {

  /** Whether its ends are joined: all but an accessory at a contact, which it only closes. */
  public boolean conducts() {
    return !lead.accessory() || (from.kind().carriesOutput() && to.kind().carriesOutput());
  }

  /** Whether one of its ends is there. */
  public boolean touches(Terminal terminal) {
    return from.same(terminal) || to.same(terminal);
  }

  /** Whether both ends are where the other's are. */
  public boolean same(Wire other) {
    return from.same(other.from) && to.same(other.to);
  }
}
