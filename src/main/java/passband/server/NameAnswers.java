package passband.server;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;
import passband.edit.Analysis;
import passband.edit.Rename;
import passband.edit.Symbols;
import passband.library.Library;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Tree;

/** Answers about names: where they are declared and used, in all files of a library. */
final class NameAnswers {
  private final Workspace workspace;

  NameAnswers(Workspace workspace) {
    this.workspace = workspace;
  }

  /** Where the name at a position is declared, or the file that a use names there. */
  List<Location> definition(String uri, Analysis analysis, Position position) {
    int offset = Positions.offset(analysis.source(), position);
    Replies.Uris uris = workspace.uris(uri);
    List<Location> found =
        analysis.symbols().at(analysis.source(), offset).stream()
            .map(o -> Replies.location(o.symbol().name().span(), uris))
            .distinct()
            .toList();
    return found.isEmpty() ? used(uri, analysis, offset) : found;
  }

  private List<Location> used(String uri, Analysis analysis, int offset) {
    for (Tree.Use use : analysis.file().uses()) {
      if (use.path().span().touches(offset)) {
        String path = Library.normalised(workspace.place(uri).path(), use.path().text());
        Range start = new Range(new Position(0, 0), new Position(0, 0));
        return path == null
            ? List.of()
            : List.of(new Location(workspace.uris(uri).of(path), start));
      }
    }
    return List.of();
  }

  /**
   * Where the name at a position is used.
   *
   * @param declared whether its declaration is one of these places
   */
  List<Location> references(String uri, Analysis analysis, Position position, boolean declared)
      throws IOException {
    Symbols all = workspace.everything(uri).symbols();
    int offset = Positions.offset(analysis.source(), position);
    Replies.Uris uris = workspace.uris(uri);
    return all.at(analysis.source(), offset).stream()
        .flatMap(
            here ->
                all.places(here.symbol()).stream()
                    .filter(s -> declared || !s.equals(here.symbol().name().span())))
        .distinct()
        .map(span -> Replies.location(span, uris))
        .toList();
  }

  /** Where what is named at a position is declared and used in the same document. */
  static List<DocumentHighlight> highlights(Analysis analysis, Position position) {
    int offset = Positions.offset(analysis.source(), position);
    Symbols symbols = analysis.symbols();
    Map<Span, DocumentHighlightKind> found = new TreeMap<>();
    for (Names.Occurrence here : symbols.at(analysis.source(), offset)) {
      for (Names.Occurrence one : symbols.all()) {
        boolean same = one.symbol().equals(here.symbol());
        if (same && one.span().file().path().equals(analysis.source().path())) {
          found.merge(
              one.span(),
              one.declaration() ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
              (first, second) -> first == DocumentHighlightKind.Write ? first : second);
        }
      }
    }
    List<DocumentHighlight> highlights = new ArrayList<>();
    found.forEach((at, kind) -> highlights.add(new DocumentHighlight(Positions.of(at), kind)));
    return highlights;
  }

  /** What would be renamed at a position; null where there is no name. */
  static @Nullable Range renamed(Analysis analysis, Position position) {
    int offset = Positions.offset(analysis.source(), position);
    Span name = Rename.name(analysis.symbols(), analysis.source(), offset);
    return name == null ? null : Positions.of(name);
  }

  WorkspaceEdit rename(String uri, Analysis analysis, Position position, String name)
      throws IOException {
    int offset = Positions.offset(analysis.source(), position);
    try {
      return Replies.edit(
          Rename.to(workspace.everything(uri), analysis.source(), offset, name),
          workspace.uris(uri));
    } catch (Rename.Refused e) {
      throw Documents.refused(ResponseErrorCode.RequestFailed, e.getMessage());
    }
  }

  /** What is declared in the libraries of the open documents, by a part of its name in any case. */
  List<WorkspaceSymbol> declared(String part) throws IOException {
    String wanted = part.toLowerCase(Locale.ROOT);
    Map<String, WorkspaceSymbol> found = new LinkedHashMap<>();
    for (String uri : workspace.open()) {
      Replies.Uris uris = workspace.uris(uri);
      for (Names.Occurrence one : workspace.everything(uri).symbols().all()) {
        String name = one.symbol().text();
        if (one.declaration() && name.toLowerCase(Locale.ROOT).contains(wanted)) {
          Location at = Replies.location(one.span(), uris);
          found.putIfAbsent(
              at.toString(),
              new WorkspaceSymbol(
                  name, Replies.symbolKind(one.symbol().kind()), Either.forLeft(at)));
        }
      }
    }
    return List.copyOf(found.values());
  }
}
