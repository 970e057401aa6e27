package passband.model;

import java.util.List;
import passband.source.Span;

/** Two terminals that leads have to join in every setup through which output is delivered. */
public record Join(Terminal one, Terminal other, Span span) {
  /** Both of them. */
  public List<Terminal> both() {
    return List.of(one, other);
  }
}
