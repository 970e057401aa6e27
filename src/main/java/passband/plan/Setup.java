package passband.plan;

import java.util.List;
import passband.source.Span;
import passband.syntax.Word;

/**
 * How leads go on one outlet.
 *
 * @param whole whether no lead is left out because of a fault that has been said
 * @param nets what hangs together by the wires
 */
public record Setup(
    Word name, String title, List<Wire> wires, boolean whole, Span span, Nets nets) {
  /** With the nets of its wires. */
  public Setup(Word name, String title, List<Wire> wires, boolean whole, Span span) {
    this(name, title, List.copyOf(wires), whole, span, Nets.of(wires));
  }
}
