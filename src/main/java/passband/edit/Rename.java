package passband.edit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Fix;
import passband.parse.CursorContext;
import passband.plan.PlanStep;
import passband.quantity.QuantityKind;
import passband.resolve.Names.Occurrence;
import passband.resolve.Names.Role;
import passband.resolve.Symbol;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * A new name for something, everywhere: in sources and in tables. Where one place names several
 * things, such as a terminal that each outlet of a test has, they are renamed together. A rename
 * after which a name would stand for something else is refused.
 */
public final class Rename {
  private static final List<String> COLUMNS =
      List.of("mode", "setting", "load", "stated", "target", "outlet");

  /** The names of each kind that the language itself asks for. */
  private static final Map<String, Collection<String>> KEPT =
      Map.of("action", PlanStep.REPLACEABLE, "caution", List.of("burn"));

  /** The names that things of each kind cannot take: they mean something else already. */
  private static final Map<String, List<Collection<String>>> RESERVED =
      Map.of(
          "action", List.of(PlanStep.REPLACEABLE),
          "caution", List.of(List.of("burn")),
          "record", List.of(COLUMNS),
          "quantity", List.of(COLUMNS, QuantityKind.names()),
          "setting", List.of(COLUMNS, QuantityKind.names(), PlanStep.REPLACEABLE));

  private final Symbols symbols;
  private final String name;

  private Rename(Symbols symbols, String name) {
    this.symbols = symbols;
    this.name = name;
  }

  /** Why a name cannot be renamed or a new one not be taken; the message is for a person. */
  public static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    Refused(String format, Object... args) {
      super(String.format(java.util.Locale.ROOT, format, args));
    }
  }

  /** The span of the name at an offset; null where nothing there has a name that can be changed. */
  public static @Nullable Span name(Symbols symbols, SourceFile file, int offset) {
    for (Occurrence one : symbols.at(file, offset)) {
      if (one.role() != Role.FORMER) {
        return one.span();
      }
    }
    return null;
  }

  /**
   * The places to change.
   *
   * @param library with every file that may name it
   * @throws Refused when there is nothing to rename, or the name cannot be taken
   * @throws IOException when a file of the library cannot be read any more
   */
  public static List<Fix.Edit> to(WholeLibrary library, SourceFile file, int offset, String name)
      throws Refused, IOException {
    TextEdits edits = new Rename(library.symbols(), name).edits(file, offset);
    RenameTrial.run(library, edits, name);
    return edits.all();
  }

  private TextEdits edits(SourceFile file, int offset) throws Refused {
    List<Symbol> here = new ArrayList<>();
    for (Occurrence one : symbols.at(file, offset)) {
      if (one.role() == Role.FORMER) {
        throw new Refused(
            "'%s' is a former name and stays, so that revisions can be compared",
            one.span().text());
      }
      here.add(one.symbol());
    }
    if (here.isEmpty()) {
      throw new Refused("there is no name to rename here");
    }
    if (!CursorContext.isName(name)) {
      throw new Refused("a name consists of letters, digits and hyphens and starts with a letter");
    }
    SortedSet<Span> places = new TreeSet<>();
    for (Symbol symbol : together(here)) {
      refuseReserved(symbol);
      refuseTaken(symbol);
      places.addAll(present(symbol));
    }
    return new TextEdits(places, name);
  }

  /** These symbols, those that some place names together with one of them, and so on. */
  private List<Symbol> together(List<Symbol> here) {
    List<Symbol> all = new ArrayList<>(here);
    for (int i = 0; i < all.size(); i++) {
      SortedSet<Span> places = present(all.get(i));
      for (Occurrence one : symbols.all()) {
        boolean shared = one.role() != Role.FORMER && places.contains(one.span());
        if (shared && !all.contains(one.symbol())) {
          all.add(one.symbol());
        }
      }
    }
    return all;
  }

  /** Where a symbol goes by the name that it has now. */
  private SortedSet<Span> present(Symbol symbol) {
    SortedSet<Span> places = new TreeSet<>();
    for (Occurrence one : symbols.all()) {
      if (one.symbol().equals(symbol) && one.role() != Role.FORMER) {
        places.add(one.span());
      }
    }
    return places;
  }

  private void refuseReserved(Symbol symbol) throws Refused {
    if (KEPT.getOrDefault(symbol.kind(), List.of()).contains(symbol.text())) {
      throw new Refused(
          "the %s '%s' cannot be renamed: the language looks for it by this name",
          symbol.kind(), symbol.text());
    }
    for (Collection<String> reserved : RESERVED.getOrDefault(symbol.kind(), List.of())) {
      if (reserved.contains(name)) {
        throw new Refused(
            "'%s' is reserved by the language and cannot name a %s", name, symbol.kind());
      }
    }
  }

  /** A former name of one thing is not to become the present name of another. */
  private void refuseTaken(Symbol symbol) throws Refused {
    for (Occurrence one : symbols.all()) {
      boolean near = one.symbol().name().span().file().path().equals(path(symbol));
      boolean former = one.role() == Role.FORMER && one.span().text().equals(name);
      if (near && former && one.symbol().kind().equals(symbol.kind())) {
        throw new Refused(
            "'%s' is the former name of %s '%s'", name, symbol.kind(), one.symbol().text());
      }
    }
  }

  private static String path(Symbol symbol) {
    return symbol.name().span().file().path();
  }
}
