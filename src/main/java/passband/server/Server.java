package passband.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.edit.Analysis;
import passband.edit.Completion;
import passband.edit.Fix;
import passband.edit.Fold;
import passband.edit.Hover;
import passband.edit.Inlay;
import passband.edit.Outline;
import passband.edit.Rename;
import passband.edit.Symbols;
import passband.format.Formatter;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * The language server (Language Server Protocol 3.17). One thread answers, in the order of the
 * messages, and another finds faults; a request about a text that has changed since is answered
 * with an error that says so, and a fault of this program ends the request, never the server.
 */
public final class Server implements LanguageServer, TextDocumentService, WorkspaceService {
  /** So long a text must rest before its faults are shown. */
  private static final long REST_MILLIS = 80;

  private final Workspace workspace;
  private final Map<String, Integer> versions = new HashMap<>();
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(Server::thread);
  private final Map<String, List<org.eclipse.lsp4j.Diagnostic>> shown = new HashMap<>();
  private final ExecutorService finder = Executors.newSingleThreadExecutor(Server::thread);
  private int changes;
  private LanguageClient client;
  private boolean watches;
  private int status = 1;

  Server(Folders folders) {
    this.workspace = new Workspace(folders);
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(null, work, "passband server", 16L << 20);
    thread.setDaemon(true);
    return thread;
  }

  /** Serves until the editor says exit or goes away; the exit status. */
  public static int serve(InputStream in, OutputStream out, Folders folders) {
    Server server = new Server(folders);
    var launcher = LSPLauncher.createServerLauncher(server, in, out);
    server.client = launcher.getRemoteProxy();
    Future<Void> listening = launcher.startListening();
    try {
      listening.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException | CancellationException e) {
      // the editor has gone
    }
    return server.status;
  }

  // ---- life ----

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    if (params.getWorkspaceFolders() != null) {
      params.getWorkspaceFolders().stream().map(WorkspaceFolder::getUri).forEach(workspace::add);
    } else if (rootUri(params) != null) {
      workspace.add(rootUri(params));
    }
    watches = watches(params);
    ServerCapabilities can = new ServerCapabilities();
    can.setTextDocumentSync(TextDocumentSyncKind.Incremental);
    can.setCompletionProvider(new CompletionOptions(false, List.of(" ", ".", "|", "/")));
    can.setHoverProvider(true);
    can.setDefinitionProvider(true);
    can.setReferencesProvider(true);
    can.setRenameProvider(new RenameOptions(true));
    can.setDocumentSymbolProvider(true);
    can.setWorkspaceSymbolProvider(true);
    can.setFoldingRangeProvider(true);
    can.setDocumentFormattingProvider(true);
    can.setCodeActionProvider(true);
    can.setInlayHintProvider(true);
    can.setSemanticTokensProvider(
        new SemanticTokensWithRegistrationOptions(
            new SemanticTokensLegend(Replies.TOKENS, Replies.MODIFIERS), true));
    return CompletableFuture.completedFuture(new InitializeResult(can, new ServerInfo("passband")));
  }

  @SuppressWarnings("deprecation") // editors older than workspace folders have nothing else
  private static String rootUri(InitializeParams params) {
    return params.getRootUri();
  }

  @Override
  public void initialized(InitializedParams params) {
    if (watches) {
      DidChangeWatchedFilesRegistrationOptions files =
          new DidChangeWatchedFilesRegistrationOptions(
              List.of(new FileSystemWatcher(Either.forLeft("**/*.{pband,csv,txt}"))));
      client.registerCapability(
          new RegistrationParams(
              List.of(new Registration("files", "workspace/didChangeWatchedFiles", files))));
    }
  }

  /** Whether the editor can be asked to tell of files that change on the disk. */
  private static boolean watches(InitializeParams params) {
    WorkspaceClientCapabilities workspace =
        params.getCapabilities() == null ? null : params.getCapabilities().getWorkspace();
    return workspace != null
        && workspace.getDidChangeWatchedFiles() != null
        && Boolean.TRUE.equals(workspace.getDidChangeWatchedFiles().getDynamicRegistration());
  }

  @Override
  public CompletableFuture<Object> shutdown() {
    status = 0;
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void exit() {
    System.exit(status); // the threads are daemons: what they still do is of no use to anyone
  }

  @Override
  public TextDocumentService getTextDocumentService() {
    return this;
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return this;
  }

  @Override
  public void setTrace(org.eclipse.lsp4j.SetTraceParams params) {
    // nothing is traced
  }

  // ---- documents ----

  private synchronized int version(String uri) {
    return versions.getOrDefault(uri, 0);
  }

  /** Counts every change as it comes in, before the work of it is done. */
  private synchronized void changed(String uri) {
    changes++;
    versions.merge(uri, 1, Integer::sum);
  }

  private synchronized int changes() {
    return changes;
  }

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    changed(uri);
    later(() -> workspace.put(uri, params.getTextDocument().getText()));
    showSoon(uri);
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    changed(uri);
    later(
        () -> {
          String text = workspace.text(uri);
          for (TextDocumentContentChangeEvent change : params.getContentChanges()) {
            text = edited(text == null ? "" : text, change);
          }
          workspace.put(uri, text);
        });
    showSoon(uri);
  }

  private static String edited(String text, TextDocumentContentChangeEvent change) {
    if (change.getRange() == null) {
      return change.getText();
    }
    SourceFile source = new SourceFile("", text);
    int start = Positions.offset(source, change.getRange().getStart());
    int end = Math.max(start, Positions.offset(source, change.getRange().getEnd()));
    return text.substring(0, start) + change.getText() + text.substring(end);
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    String uri = params.getTextDocument().getUri();
    changed(uri);
    later(
        () -> {
          workspace.put(uri, null);
          publish(uri, List.of());
          show();
        });
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    // what is saved is what is open
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    later(
        () -> {
          params.getChanges().forEach(change -> workspace.forget(change.getUri()));
          show();
        });
  }

  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {
    // there is nothing to configure
  }

  // ---- work ----

  private void later(Runnable work) {
    worker.execute(() -> guarded(work));
  }

  private void guarded(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException | StackOverflowError e) {
      report(e);
    }
  }

  private void report(Throwable e) {
    client.logMessage(
        new MessageParams(MessageType.Error, "passband: a fault of the program: " + e));
  }

  /** What a request is answered from. */
  private interface Answer<T> {
    T from(Analysis analysis) throws IOException;
  }

  /** Answers a request about a document as it is when the request comes in. */
  private <T> CompletableFuture<T> ask(String uri, T none, Answer<T> answer) {
    int version = version(uri);
    CompletableFuture<T> reply = new CompletableFuture<>();
    worker.execute(
        () -> {
          if (reply.isCancelled()) {
            return;
          }
          if (version(uri) != version) {
            reply.completeExceptionally(
                refused(ResponseErrorCode.ContentModified, "the text has changed since"));
            return;
          }
          try {
            Analysis analysis = workspace.analysis(uri);
            reply.complete(analysis == null ? none : answer.from(analysis));
          } catch (ResponseErrorException e) {
            reply.completeExceptionally(e);
          } catch (IOException | RuntimeException | StackOverflowError e) {
            report(e);
            reply.complete(none);
          }
        });
    return reply;
  }

  private static ResponseErrorException refused(ResponseErrorCode code, String message) {
    return new ResponseErrorException(new ResponseError(code, message, null));
  }

  private Replies.Uris uris(String uri) {
    return path -> workspace.uri(workspace.place(uri).root(), path);
  }

  // ---- diagnostics ----

  private void showSoon(String uri) {
    int version = version(uri);
    worker.schedule(
        () -> {
          if (version(uri) == version) {
            guarded(this::show);
          }
        },
        REST_MILLIS,
        TimeUnit.MILLISECONDS);
  }

  /** Finds what is to be shown in the open documents, on a thread of its own, and shows it. */
  private void show() {
    int change = changes();
    Map<String, Analysis> analyses = new LinkedHashMap<>();
    workspace.open().forEach(uri -> analyses.put(uri, workspace.analysis(uri)));
    analyses.values().removeIf(Objects::isNull);
    finder.execute(
        () ->
            guarded(
                () -> {
                  if (changes() == change) {
                    analyses.values().forEach(Analysis::diagnostics);
                    later(() -> show(analyses, change));
                  }
                }));
  }

  /** Shows what is found in each, by itself and by the open ones that use it. */
  private void show(Map<String, Analysis> analyses, int change) {
    if (changes() != change) {
      return;
    }
    for (String uri : analyses.keySet()) {
      Workspace.Place place = workspace.place(uri);
      Diagnostics here = new Diagnostics();
      analyses.forEach(
          (other, analysis) -> {
            if (workspace.place(other).root().equals(place.root())) {
              analysis.diagnostics().stream()
                  .filter(d -> d.span().file().path().equals(place.path()))
                  .forEach(here::add);
            }
          });
      publish(uri, here.list().stream().map(d -> Replies.diagnostic(d, uris(uri))).toList());
    }
  }

  private void publish(String uri, List<org.eclipse.lsp4j.Diagnostic> found) {
    if (!found.equals(shown.put(uri, found))) {
      client.publishDiagnostics(new PublishDiagnosticsParams(uri, found));
    }
  }

  // ---- requests ----

  @Override
  public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(
      CompletionParams params) {
    return ask(
        params.getTextDocument().getUri(),
        Either.forLeft(List.of()),
        analysis -> {
          SourceFile source = analysis.source();
          int offset = Positions.offset(source, params.getPosition());
          List<CompletionItem> items = new ArrayList<>();
          for (Completion one : Completion.at(analysis, offset)) {
            items.add(Replies.item(one, source, offset, items.size()));
          }
          return Either.forLeft(items);
        });
  }

  @Override
  public CompletableFuture<org.eclipse.lsp4j.Hover> hover(HoverParams params) {
    return ask(
        params.getTextDocument().getUri(),
        null,
        analysis -> {
          Hover hover =
              Hover.at(analysis, Positions.offset(analysis.source(), params.getPosition()));
          return hover == null
              ? null
              : new org.eclipse.lsp4j.Hover(
                  new MarkupContent(MarkupKind.MARKDOWN, hover.markdown()),
                  Positions.of(hover.span()));
        });
  }

  @Override
  public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>>
      definition(DefinitionParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        uri,
        Either.forLeft(List.of()),
        analysis -> {
          int offset = Positions.offset(analysis.source(), params.getPosition());
          List<Location> found =
              analysis.symbols().at(analysis.source(), offset).stream()
                  .map(o -> Replies.location(o.symbol().name().span(), uris(uri)))
                  .distinct()
                  .toList();
          return Either.forLeft(found.isEmpty() ? used(analysis, offset, uri) : found);
        });
  }

  /** The file that a use names. */
  private List<Location> used(Analysis analysis, int offset, String uri) {
    for (Tree.Use use : analysis.file().uses()) {
      if (use.path().span().touches(offset)) {
        String path =
            passband.library.Library.normalised(workspace.place(uri).path(), use.path().text());
        Range start = new Range(new Position(0, 0), new Position(0, 0));
        return path == null ? List.of() : List.of(new Location(uris(uri).of(path), start));
      }
    }
    return List.of();
  }

  @Override
  public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        uri,
        List.of(),
        analysis -> {
          Symbols all = workspace.everything(uri);
          int offset = Positions.offset(analysis.source(), params.getPosition());
          boolean declared = params.getContext().isIncludeDeclaration();
          return all.at(analysis.source(), offset).stream()
              .flatMap(
                  here ->
                      all.places(here.symbol()).stream()
                          .filter(s -> declared || !s.equals(here.symbol().name().span())))
              .distinct()
              .map(span -> Replies.location(span, uris(uri)))
              .toList();
        });
  }

  @Override
  public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>>
      prepareRename(PrepareRenameParams params) {
    return ask(
        params.getTextDocument().getUri(),
        null,
        analysis -> {
          Span name =
              Rename.name(
                  analysis.symbols(),
                  analysis.source(),
                  Positions.offset(analysis.source(), params.getPosition()));
          return name == null ? null : Either3.forFirst(Positions.of(name));
        });
  }

  @Override
  public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        uri,
        null,
        analysis -> {
          int offset = Positions.offset(analysis.source(), params.getPosition());
          try {
            return edit(
                Rename.to(
                    workspace.everything(uri), analysis.source(), offset, params.getNewName()),
                uri);
          } catch (Rename.Refused e) {
            throw refused(ResponseErrorCode.RequestFailed, e.getMessage());
          }
        });
  }

  private WorkspaceEdit edit(List<Fix.Edit> edits, String uri) {
    Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
    for (Fix.Edit edit : edits) {
      changes
          .computeIfAbsent(uris(uri).of(edit.span().file().path()), k -> new ArrayList<>())
          .add(new TextEdit(Positions.of(edit.span()), edit.text()));
    }
    return new WorkspaceEdit(changes);
  }

  @Override
  public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(
      DocumentSymbolParams params) {
    return ask(
        params.getTextDocument().getUri(),
        List.of(),
        analysis -> {
          List<Either<SymbolInformation, DocumentSymbol>> symbols = new ArrayList<>();
          Outline.of(analysis.file())
              .forEach(entry -> symbols.add(Either.forRight(Replies.symbol(entry))));
          return symbols;
        });
  }

  @Override
  public CompletableFuture<
          Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
      symbol(WorkspaceSymbolParams params) {
    CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
        reply = new CompletableFuture<>();
    worker.execute(
        () -> {
          Map<String, WorkspaceSymbol> found = new LinkedHashMap<>();
          try {
            for (String uri : workspace.open()) {
              add(found, workspace.everything(uri), params.getQuery(), uri);
            }
          } catch (IOException | RuntimeException e) {
            report(e);
          }
          reply.complete(Either.forRight(List.copyOf(found.values())));
        });
    return reply;
  }

  private void add(Map<String, WorkspaceSymbol> found, Symbols symbols, String query, String uri) {
    for (Symbols.Occurrence one : symbols.all()) {
      String name = one.symbol().text();
      if (one.declaration() && name.contains(query)) {
        Location at = Replies.location(one.span(), uris(uri));
        found.putIfAbsent(
            at.toString(),
            new WorkspaceSymbol(name, Replies.symbolKind(one.symbol().kind()), Either.forLeft(at)));
      }
    }
  }

  @Override
  public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
    return ask(
        params.getTextDocument().getUri(),
        List.of(),
        analysis -> Fold.of(analysis.source()).stream().map(Replies::fold).toList());
  }

  @Override
  public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
    return ask(
        params.getTextDocument().getUri(),
        List.of(),
        analysis -> {
          SourceFile source = analysis.source();
          String laid = Formatter.format(source, new Diagnostics());
          return laid == null || laid.equals(source.text())
              ? List.of()
              : List.of(changedPart(source, laid));
        });
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

  @Override
  public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
    String uri = params.getTextDocument().getUri();
    return ask(
        uri,
        List.of(),
        analysis -> {
          SourceFile source = analysis.source();
          int from = Positions.offset(source, params.getRange().getStart());
          int to = Positions.offset(source, params.getRange().getEnd());
          List<Either<Command, CodeAction>> actions = new ArrayList<>();
          for (Diagnostic one : analysis.diagnostics()) {
            boolean here =
                one.span().file() == source && one.span().start() <= to && from <= one.span().end();
            if (here) {
              Fix.of(one, analysis.file())
                  .forEach(fix -> actions.add(Either.forRight(action(fix, one, uri))));
            }
          }
          return actions;
        });
  }

  private CodeAction action(Fix fix, Diagnostic mends, String uri) {
    CodeAction action = new CodeAction(fix.title());
    action.setKind(CodeActionKind.QuickFix);
    action.setDiagnostics(List.of(Replies.diagnostic(mends, uris(uri))));
    action.setEdit(edit(fix.edits(), uri));
    return action;
  }

  @Override
  public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
    return ask(
        params.getTextDocument().getUri(),
        List.of(),
        analysis -> {
          SourceFile source = analysis.source();
          int from = Positions.offset(source, params.getRange().getStart());
          int to = Positions.offset(source, params.getRange().getEnd());
          Function<Inlay, InlayHint> hint = inlay -> Replies.hint(inlay, source);
          return Inlay.between(analysis, from, to).stream().map(hint).toList();
        });
  }

  @Override
  public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
    return ask(
        params.getTextDocument().getUri(),
        new SemanticTokens(List.of()),
        analysis -> new SemanticTokens(Replies.tokens(analysis.source(), analysis.symbols())));
  }
}
