package passband.plan;

import java.util.List;
import passband.source.Span;
import passband.syntax.Word;

/**
 * How leads go on one outlet.
 *
 * @param whole whether no lead is left out because of a fault that has been said
 */
public record Setup(Word name, String title, List<Wire> wires, boolean whole, Span span) {
  /** Copies the wires. */
  public Setup {
    wires = List.copyOf(wires);
  }
}
