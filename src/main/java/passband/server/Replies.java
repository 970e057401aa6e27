package passband.server;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DiagnosticTag;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeKind;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Fix;
import passband.edit.Completion;
import passband.edit.Fold;
import passband.edit.Inlay;
import passband.edit.Outline;
import passband.edit.Symbols;
import passband.parse.Marks;
import passband.resolve.Names;
import passband.source.SourceFile;
import passband.source.Span;

/** From what the editor part of the program finds to the protocol's words for it. */
final class Replies {
  /** The kinds of coloured words, in the order of their numbers. */
  static final List<String> TOKENS =
      List.of(
          "keyword",
          "variable",
          "number",
          "type",
          "string",
          "comment",
          "operator",
          "class",
          "property",
          "enumMember",
          "function",
          "parameter");

  static final List<String> MODIFIERS = List.of("declaration");

  private Replies() {}

  // ---- diagnostics ----

  static org.eclipse.lsp4j.Diagnostic diagnostic(Diagnostic found, Uris uris) {
    org.eclipse.lsp4j.Diagnostic reply = new org.eclipse.lsp4j.Diagnostic();
    reply.setRange(Positions.of(found.span()));
    reply.setSeverity(found.isError() ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning);
    reply.setCode(found.code().id());
    reply.setSource("passband");
    reply.setMessage(
        found.hint() == null ? found.message() : found.message() + "\nhint: " + found.hint());
    if (found.code() == Code.ALLOW_UNUSED || found.code() == Code.UNUSED_NAME) {
      reply.setTags(List.of(DiagnosticTag.Unnecessary));
    }
    List<DiagnosticRelatedInformation> notes = new ArrayList<>();
    found
        .notes()
        .forEach(
            n ->
                notes.add(new DiagnosticRelatedInformation(location(n.span(), uris), n.message())));
    reply.setRelatedInformation(notes);
    return reply;
  }

  /** The identifiers of files by their paths. */
  interface Uris {
    String of(String path);
  }

  static Location location(Span span, Uris uris) {
    return new Location(uris.of(span.file().path()), Positions.of(span));
  }

  static WorkspaceEdit edit(List<Fix.Edit> edits, Uris uris) {
    Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
    for (Fix.Edit edit : edits) {
      changes
          .computeIfAbsent(uris.of(edit.span().file().path()), k -> new ArrayList<>())
          .add(new TextEdit(Positions.of(edit.span()), edit.text()));
    }
    return new WorkspaceEdit(changes);
  }

  // ---- completion ----

  static CompletionItem item(Completion one, SourceFile source, int offset, int order) {
    CompletionItem item = new CompletionItem(one.label());
    item.setDetail(one.detail());
    item.setKind(kind(one.kind()));
    item.setSortText(String.format(Locale.ROOT, "%04d", order));
    item.setTextEdit(
        Either.forLeft(
            new TextEdit(Positions.of(new Span(source, one.from(), offset)), one.label())));
    return item;
  }

  private static CompletionItemKind kind(String kind) {
    return switch (kind) {
      case "keyword" -> CompletionItemKind.Keyword;
      case "unit" -> CompletionItemKind.Unit;
      case "quantity" -> CompletionItemKind.Property;
      case "column" -> CompletionItemKind.Field;
      case "file" -> CompletionItemKind.File;
      case "code", "option", "step" -> CompletionItemKind.Constant;
      case "mode" -> CompletionItemKind.EnumMember;
      case "device", "analyzer", "leads", "rule", "part", "procedure" -> CompletionItemKind.Class;
      case "action", "test", "setup" -> CompletionItemKind.Function;
      default -> CompletionItemKind.Variable;
    };
  }

  // ---- outline, folds, hints ----

  static DocumentSymbol symbol(Outline entry) {
    String detail = entry.title().isEmpty() ? entry.kind() : entry.kind() + " — " + entry.title();
    return new DocumentSymbol(
        entry.name(),
        symbolKind(entry.kind()),
        Positions.of(entry.whole()),
        Positions.of(entry.at()),
        detail,
        entry.inside().stream().map(Replies::symbol).toList());
  }

  static SymbolKind symbolKind(String kind) {
    return switch (kind) {
      case "procedure" -> SymbolKind.Module;
      case "device", "analyzer" -> SymbolKind.Class;
      case "leads" -> SymbolKind.Array;
      case "rule" -> SymbolKind.Interface;
      case "mode", "option" -> SymbolKind.EnumMember;
      case "test" -> SymbolKind.Method;
      case "setup", "section", "adjust" -> SymbolKind.Function;
      case "pole", "contact", "jack", "key" -> SymbolKind.Key;
      case "state", "measure", "outlet" -> SymbolKind.Property;
      default -> SymbolKind.Variable;
    };
  }

  static FoldingRange fold(Fold fold) {
    FoldingRange range = new FoldingRange(fold.first() - 1, fold.last() - 1);
    range.setKind(fold.comment() ? FoldingRangeKind.Comment : FoldingRangeKind.Region);
    return range;
  }

  static InlayHint hint(Inlay inlay, SourceFile source) {
    InlayHint hint =
        new InlayHint(Positions.of(source, inlay.offset()), Either.forLeft(inlay.text()));
    hint.setPaddingLeft(true);
    return hint;
  }

  // ---- coloured words ----

  /** Five numbers for each word, each place relative to the one before. */
  static List<Integer> tokens(SourceFile source, Symbols symbols) {
    Map<Integer, Names.Occurrence> named = new TreeMap<>();
    for (Names.Occurrence one : symbols.all()) {
      if (one.span().file().path().equals(source.path())) {
        named.merge(one.span().start(), one, (a, b) -> a.declaration() ? a : b);
      }
    }
    List<Integer> data = new ArrayList<>();
    int lastLine = 1;
    int lastStart = 0;
    for (Marks.Mark mark : Marks.of(source)) {
      Names.Occurrence name = named.get(mark.span().start());
      int type = name == null ? type(mark.kind()) : TOKENS.indexOf(type(name.symbol().kind()));
      if (type < 0) {
        continue;
      }
      int line = source.lineOf(mark.span().start());
      int start = mark.span().start() - source.lineStart(line);
      data.add(line - lastLine);
      data.add(line == lastLine ? start - lastStart : start);
      data.add(mark.span().end() - mark.span().start());
      data.add(type);
      data.add(name != null && name.declaration() ? 1 : 0);
      lastLine = line;
      lastStart = start;
    }
    return data;
  }

  private static int type(Marks.Kind kind) {
    return switch (kind) {
      case KEYWORD -> 0;
      case NAME -> 1;
      case NUMBER -> 2;
      case UNIT -> 3;
      case TEXT -> 4;
      case COMMENT -> 5;
      case OPERATOR -> 6;
      case OPENS, CLOSES -> -1;
    };
  }

  private static String type(String kind) {
    return switch (kind) {
      case "device", "analyzer", "leads", "rule", "part", "procedure" -> "class";
      case "mode", "option" -> "enumMember";
      case "test", "setup", "section", "adjust", "action" -> "function";
      case "quantity" -> "parameter";
      case "record", "confirm", "caution", "phase" -> "variable";
      default -> "property";
    };
  }
}
