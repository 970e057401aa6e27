package passband.server;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.WorkspaceService;

/** What the editor says and asks about the folders that it has open. */
final class FilesService implements WorkspaceService {
  private final Workspace workspace;
  private final Work work;
  private final Publisher publisher;
  private final NameAnswers names;

  FilesService(Workspace workspace, Work work, Publisher publisher, NameAnswers names) {
    this.workspace = workspace;
    this.work = work;
    this.publisher = publisher;
    this.names = names;
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    work.inOrder(
        () -> {
          params.getChanges().forEach(change -> workspace.forget(change.getUri()));
          publisher.show();
        });
  }

  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {
    // there is nothing to configure
  }

  @Override
  public CompletableFuture<
          Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
      symbol(WorkspaceSymbolParams params) {
    CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
        reply = new CompletableFuture<>();
    work.inOrder(() -> reply.complete(Either.forRight(declared(params.getQuery()))));
    return reply;
  }

  private List<WorkspaceSymbol> declared(String part) {
    try {
      return names.declared(part);
    } catch (IOException | RuntimeException e) {
      work.report(e);
      return List.of();
    }
  }
}
