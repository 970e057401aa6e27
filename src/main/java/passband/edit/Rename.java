package passband.edit;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Fix;
import passband.parse.CursorContext;
import passband.source.SourceFile;
import passband.source.Span;

/** A new name for something, everywhere. */
public final class Rename {
  private Rename() {}

  /** Why a name cannot be renamed or a new one not be taken; the message is for a person. */
  public static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    Refused(String message) {
      super(message);
    }
  }

  /** The span of the name at an offset; null where nothing there has a name. */
  public static Span name(Symbols symbols, SourceFile file, int offset) {
    List<Symbols.Occurrence> here = symbols.at(file, offset);
    return here.isEmpty() ? null : here.get(0).span();
  }

  /**
   * The places to change.
   *
   * @param symbols of every file that may name it
   */
  public static List<Fix.Edit> to(Symbols symbols, SourceFile file, int offset, String name)
      throws Refused {
    List<Symbols.Occurrence> here = symbols.at(file, offset);
    if (here.isEmpty()) {
      throw new Refused("there is no name to rename here");
    }
    if (!CursorContext.isName(name)) {
      throw new Refused("a name consists of letters, digits and hyphens and starts with a letter");
    }
    List<Fix.Edit> edits = new ArrayList<>();
    for (Symbols.Occurrence one : here) {
      Symbol symbol = one.symbol();
      refuseTaken(symbols, symbol, name);
      symbols.places(symbol).forEach(span -> edits.add(new Fix.Edit(span, name)));
    }
    return edits.stream().distinct().toList();
  }

  /** A name of the same kind in the same file would become two. */
  private static void refuseTaken(Symbols symbols, Symbol symbol, String name) throws Refused {
    for (Symbols.Occurrence one : symbols.all()) {
      Symbol other = one.symbol();
      boolean near = other.name().span().file() == symbol.name().span().file();
      if (one.declaration()
          && near
          && other.kind().equals(symbol.kind())
          && other.text().equals(name)
          && !other.equals(symbol)) {
        throw new Refused("there is a " + symbol.kind() + " '" + name + "' already");
      }
    }
  }
}
