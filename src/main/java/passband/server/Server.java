package passband.server;

import java.io.InputStream;
import java.io.OutputStream;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.jspecify.annotations.Nullable;
import passband.library.LibraryRoot;

/**
 * The language server (Language Server Protocol 3.17) from the editor's first message to its last.
 * What is said and asked in between is for {@link TextService} and {@link FilesService}.
 */
public final class Server implements LanguageServer {
  private final Workspace workspace;
  private final TextService texts;
  private final FilesService files;
  private @Nullable LanguageClient client;
  private boolean watches;
  private int status = 1;

  Server(Folders folders) {
    Work work = new Work(this::report);
    workspace = new Workspace(folders);
    Documents documents = new Documents(workspace, work);
    Publisher publisher =
        new Publisher(workspace, documents, work, found -> client().publishDiagnostics(found));
    NameAnswers names = new NameAnswers(workspace);
    texts = new TextService(workspace, documents, publisher, names);
    files = new FilesService(workspace, work, publisher, names);
  }

  /** Serves until the editor says exit or goes away; the exit status. */
  public static int serve(InputStream in, OutputStream out, Folders folders) {
    Server server = new Server(folders);
    var launcher =
        LSPLauncher.createServerLauncher(
            server, in, out, Executors.newCachedThreadPool(), new ProtocolOrder()::before);
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

  private LanguageClient client() {
    return Objects.requireNonNull(client, "no editor is connected");
  }

  private void report(Throwable fault) {
    client().logMessage(new MessageParams(MessageType.Error, "passband: internal error: " + fault));
  }

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    if (params.getWorkspaceFolders() != null) {
      params.getWorkspaceFolders().stream().map(WorkspaceFolder::getUri).forEach(workspace::add);
    } else if (rootUri(params) != null) {
      workspace.add(rootUri(params));
    }
    watches = watches(params);
    return CompletableFuture.completedFuture(
        new InitializeResult(capabilities(), new ServerInfo("passband")));
  }

  @SuppressWarnings("deprecation") // editors older than workspace folders have nothing else
  private static String rootUri(InitializeParams params) {
    return params.getRootUri();
  }

  /** Whether the editor can be asked to tell of files that change on the disk. */
  private static boolean watches(InitializeParams params) {
    WorkspaceClientCapabilities workspace =
        params.getCapabilities() == null ? null : params.getCapabilities().getWorkspace();
    return workspace != null
        && workspace.getDidChangeWatchedFiles() != null
        && Boolean.TRUE.equals(workspace.getDidChangeWatchedFiles().getDynamicRegistration());
  }

  private static ServerCapabilities capabilities() {
    ServerCapabilities can = new ServerCapabilities();
    can.setTextDocumentSync(TextDocumentSyncKind.Incremental);
    can.setCompletionProvider(new CompletionOptions(false, List.of(" ", ".", "|", "/", "\"", "{")));
    can.setHoverProvider(true);
    can.setDefinitionProvider(true);
    can.setReferencesProvider(true);
    can.setDocumentHighlightProvider(true);
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
    return can;
  }

  @Override
  public void initialized(InitializedParams params) {
    if (watches) {
      DidChangeWatchedFilesRegistrationOptions options =
          new DidChangeWatchedFilesRegistrationOptions(
              List.of(
                  new FileSystemWatcher(
                      Either.forLeft("**/{*.pband,*.csv,*.txt," + LibraryRoot.MARKER + "}"))));
      client()
          .registerCapability(
              new RegistrationParams(
                  List.of(new Registration("files", "workspace/didChangeWatchedFiles", options))));
    }
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
    return texts;
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return files;
  }

  @Override
  public void setTrace(SetTraceParams params) {
    // nothing is traced
  }
}
