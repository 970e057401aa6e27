package passband.server;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;
import passband.edit.Analysis;
import passband.source.SourceFile;

/**
 * The documents that are open in the editor. Each change is counted when it comes in, before it is
 * worked in, so that a request about a text that has changed since is answered with an error that
 * says so.
 */
final class Documents {
  private final Workspace workspace;
  private final Work work;
  private final Map<String, Integer> versions = new HashMap<>();
  private int changes;

  Documents(Workspace workspace, Work work) {
    this.workspace = workspace;
    this.work = work;
  }

  /** How often a document has been opened, changed or closed. */
  synchronized int version(String uri) {
    return versions.getOrDefault(uri, 0);
  }

  /** How often any document has been opened, changed or closed. */
  synchronized int changes() {
    return changes;
  }

  private synchronized void count(String uri) {
    changes++;
    versions.merge(uri, 1, Integer::sum);
  }

  /** Takes the text of a document that is opened. */
  void open(String uri, String text) {
    count(uri);
    work.inOrder(() -> workspace.put(uri, text));
  }

  /** Changes the text of an open document. */
  void change(String uri, List<TextDocumentContentChangeEvent> changes) {
    count(uri);
    work.inOrder(
        () -> {
          String text = workspace.text(uri);
          for (TextDocumentContentChangeEvent change : changes) {
            text = edited(text == null ? "" : text, change);
          }
          workspace.put(uri, text);
        });
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

  /** From now on the file on the disk counts again. */
  void close(String uri) {
    count(uri);
    work.inOrder(() -> workspace.put(uri, null));
  }

  /** What a request is answered from. */
  interface Answer<T> {
    @Nullable T from(Analysis analysis) throws IOException;
  }

  /**
   * Answers a request about a document as it is when the request comes in.
   *
   * @param none the answer where the document cannot be read or the program is at fault
   */
  <T> CompletableFuture<T> ask(String uri, @Nullable T none, Answer<T> answer) {
    int version = version(uri);
    CompletableFuture<T> reply = new CompletableFuture<>();
    work.inOrder(
        () -> {
          if (reply.isCancelled()) {
            return;
          }
          if (version(uri) == version) {
            answer(uri, none, answer, reply);
          } else {
            reply.completeExceptionally(
                refused(ResponseErrorCode.ContentModified, "the text has changed since"));
          }
        });
    return reply;
  }

  private <T> void answer(
      String uri, @Nullable T none, Answer<T> answer, CompletableFuture<T> reply) {
    try {
      Analysis analysis = workspace.analysis(uri);
      reply.complete(analysis == null ? none : answer.from(analysis));
    } catch (ResponseErrorException e) {
      reply.completeExceptionally(e);
    } catch (IOException | RuntimeException | StackOverflowError e) {
      work.report(e);
      reply.complete(none);
    }
  }

  /** An answer that is an error. */
  static ResponseErrorException refused(ResponseErrorCode code, @Nullable String message) {
    return new ResponseErrorException(new ResponseError(code, message, null));
  }
}
