package passband.server;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.jspecify.annotations.Nullable;
import passband.server.Documents.Answer;

/** What the editor says and asks about one document, handed on to what does it. */
final class TextService implements TextDocumentService {
  private final Workspace workspace;
  private final Documents documents;
  private final Publisher publisher;
  private final NameAnswers names;

  TextService(Workspace workspace, Documents documents, Publisher publisher, NameAnswers names) {
    this.workspace = workspace;
    this.documents = documents;
    this.publisher = publisher;
    this.names = names;
  }

  // ---- what the editor says ----

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    documents.open(uri, params.getTextDocument().getText());
    publisher.showSoon(uri);
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    documents.change(uri, params.getContentChanges());
    publisher.showSoon(uri);
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    documents.close(uri);
    publisher.showSoon(uri);
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    // what is saved is what is open
  }

  // ---- what the editor asks ----

  private <T> CompletableFuture<T> ask(
      TextDocumentIdentifier document, @Nullable T none, Answer<T> answer) {
    return documents.ask(document.getUri(), none, answer);
  }

  @Override
  public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(
      CompletionParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        params.getTextDocument(),
        Either.forLeft(List.of()),
        analysis ->
            Either.forLeft(
                TextAnswers.completion(analysis, params.getPosition(), workspace.files(uri))));
  }

  @Override
  public CompletableFuture<Hover> hover(HoverParams params) {
    return ask(
        params.getTextDocument(),
        null,
        analysis -> TextAnswers.hover(analysis, params.getPosition()));
  }

  @Override
  public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(
      DocumentSymbolParams params) {
    return ask(params.getTextDocument(), List.of(), TextAnswers::outline);
  }

  @Override
  public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
    return ask(params.getTextDocument(), List.of(), TextAnswers::folds);
  }

  @Override
  public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
    return ask(
        params.getTextDocument(),
        List.of(),
        analysis -> TextAnswers.hints(analysis, params.getRange()));
  }

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
    return ask(params.getTextDocument(), new SemanticTokens(List.of()), TextAnswers::tokens);
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
    return ask(params.getTextDocument(), List.of(), TextAnswers::formatting);
  }

  @Override
  public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
    Replies.Uris uris = workspace.uris(params.getTextDocument().getUri());
    return ask(
        params.getTextDocument(),
        List.of(),
        analysis -> TextAnswers.fixes(analysis, params.getRange(), uris));
  }

  @Override
  public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>>
      definition(DefinitionParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        params.getTextDocument(),
        Either.forLeft(List.of()),
        analysis -> Either.forLeft(names.definition(uri, analysis, params.getPosition())));
  }

  @Override
  public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
    String uri = params.getTextDocument().getUri();
    boolean declared = params.getContext().isIncludeDeclaration();
    return ask(
        params.getTextDocument(),
        List.of(),
        analysis -> names.references(uri, analysis, params.getPosition(), declared));
  }

  @Override
  public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(
      DocumentHighlightParams params) {
    return ask(
        params.getTextDocument(),
        List.of(),
        analysis -> NameAnswers.highlights(analysis, params.getPosition()));
  }

  @Override
  public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>>
      prepareRename(PrepareRenameParams params) {
    return ask(
        params.getTextDocument(),
        null,
        analysis -> {
          Range renamed = NameAnswers.renamed(analysis, params.getPosition());
          return renamed == null ? null : Either3.forFirst(renamed);
        });
  }

  @Override
  public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        params.getTextDocument(),
        null,
        analysis -> names.rename(uri, analysis, params.getPosition(), params.getNewName()));
  }
}
