package passband.plan;

import java.util.List;
import passband.source.Span;
import passband.syntax.Word;

/** How leads go on one outlet. */
public record Setup(Word name, String title, List<Wire> wires, Span span) {
  /** Copies the wires. */
  public Setup {
    wires = List.copyOf(wires);
  }
}
