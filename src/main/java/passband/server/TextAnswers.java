package passband.server;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.edit.Analysis;
import passband.edit.Completion;
import passband.edit.Fold;
import passband.edit.Hover;
import passband.edit.Inlay;
import passband.edit.Outline;
import passband.edit.QuickFixes;
import passband.format.Formatter;
import passband.source.SourceFile;
import passband.source.Span;

/** Answers about the text of one document. */
final class TextAnswers {
  private TextAnswers() {}

  /**
   * @param files the paths of the library's files
   */
  static List<CompletionItem> completion(
      Analysis analysis, Position position, Collection<String> files) {
    SourceFile source = analysis.source();
    int offset = Positions.offset(source, position);
    List<CompletionItem> items = new ArrayList<>();
    for (Completion one : Completion.at(analysis, offset, files)) {
      items.add(Replies.item(one, source, offset, items.size()));
    }
    return items;
  }

  /** Null where there is nothing to say. */
  static org.eclipse.lsp4j.@Nullable Hover hover(Analysis analysis, Position position) {
    Hover hover = Hover.at(analysis, Positions.offset(analysis.source(), position));
    return hover == null
        ? null
        : new org.eclipse.lsp4j.Hover(
            new MarkupContent(MarkupKind.MARKDOWN, hover.markdown()), Positions.of(hover.span()));
  }

  static List<Either<SymbolInformation, DocumentSymbol>> outline(Analysis analysis) {
    List<Either<SymbolInformation, DocumentSymbol>> symbols = new ArrayList<>();
    for (Outline entry : Outline.of(analysis.file())) {
      symbols.add(Either.forRight(Replies.symbol(entry)));
    }
    return symbols;
  }

  static List<FoldingRange> folds(Analysis analysis) {
    return Fold.of(analysis.source()).stream().map(Replies::fold).toList();
  }

  static List<InlayHint> hints(Analysis analysis, Range range) {
    SourceFile source = analysis.source();
    int from = Positions.offset(source, range.getStart());
    int to = Positions.offset(source, range.getEnd());
    return Inlay.between(analysis, from, to).stream().map(i -> Replies.hint(i, source)).toList();
  }

  static SemanticTokens tokens(Analysis analysis) {
    return new SemanticTokens(Replies.tokens(analysis.source(), analysis.symbols()));
  }

  // ---- formatting ----

  static List<TextEdit> formatting(Analysis analysis) {
    SourceFile source = analysis.source();
    String laid = Formatter.format(source, new Diagnostics());
    if (laid != null && source.text().contains("\r\n")) {
      laid = laid.replace("\n", "\r\n"); // the document's own line ends, which the editor saves
    }
    return laid == null || laid.equals(source.text())
        ? List.of()
        : List.of(changedPart(source, laid));
  }

  /** What differs of two texts: the lines that they begin and end with alike are left alone. */
  private static TextEdit changedPart(SourceFile source, String laid) {
    String text = source.text();
    int start = 0;
    int most = Math.min(text.length(), laid.length());
    while (start < most && text.charAt(start) == laid.charAt(start)) {
      start++;
    }
    start = source.lineStart(source.lineOf(start));
    int same = 0;
    while (same < most - start
        && text.charAt(text.length() - 1 - same) == laid.charAt(laid.length() - 1 - same)) {
      same++;
    }
    Span span = new Span(source, start, text.length() - same);
    return new TextEdit(Positions.of(span), laid.substring(start, laid.length() - same));
  }

  // ---- quick fixes ----

  /** The quick fixes of what is found in a range. */
  static List<Either<Command, CodeAction>> fixes(
      Analysis analysis, Range range, Replies.Uris uris) {
    SourceFile source = analysis.source();
    int from = Positions.offset(source, range.getStart());
    int to = Positions.offset(source, range.getEnd());
    List<Either<Command, CodeAction>> actions = new ArrayList<>();
    for (Diagnostic one : analysis.diagnostics()) {
      boolean here =
          one.span().file() == source && one.span().start() <= to && from <= one.span().end();
      if (here) {
        QuickFixes.of(one, analysis.file())
            .forEach(fix -> actions.add(Either.forRight(action(fix, one, uris))));
      }
    }
    return actions;
  }

  private static CodeAction action(Fix fix, Diagnostic fixed, Replies.Uris uris) {
    CodeAction action = new CodeAction(fix.title());
    action.setKind(CodeActionKind.QuickFix);
    if (fix.preferred()) {
      action.setIsPreferred(true);
    }
    action.setDiagnostics(List.of(Replies.diagnostic(fixed, uris)));
    action.setEdit(Replies.edit(fix.edits(), uris));
    return action;
  }
}
