package passband.edit;

import java.util.List;
import passband.resolve.Names;
import passband.resolve.Names.Occurrence;
import passband.resolve.Symbol;
import passband.source.SourceFile;
import passband.source.Span;

/** Every place where something is declared or named, as an editor asks for it. */
public final class Symbols {
  private final List<Occurrence> all;

  /** Those that the compiler recorded. */
  public Symbols(Names names) {
    this.all = names.all();
  }

  /** All places, in order. */
  public List<Occurrence> all() {
    return all;
  }

  /** The places at an offset: several when one name stands for several things. */
  public List<Occurrence> at(SourceFile file, int offset) {
    return all.stream()
        .filter(o -> o.span().file().path().equals(file.path()))
        .filter(o -> o.span().touches(offset))
        .toList();
  }

  /** All places of one thing, in order. */
  public List<Span> places(Symbol symbol) {
    return all.stream()
        .filter(o -> o.symbol().equals(symbol))
        .map(Occurrence::span)
        .distinct()
        .sorted()
        .toList();
  }
}
