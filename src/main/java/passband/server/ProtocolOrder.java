package passband.server;

import java.util.Set;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.NotificationMessage;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseMessage;
import org.jspecify.annotations.Nullable;

/**
 * What may be said when (Language Server Protocol 3.17, lifecycle messages): before {@code
 * initialize} and after {@code shutdown} a request is refused and a notification but {@code exit}
 * dropped.
 */
final class ProtocolOrder {
  private static final Set<String> ALWAYS = Set.of("exit", "$/cancelRequest");

  private @Nullable MessageConsumer editor;
  private boolean begun;
  private boolean over;

  /** Put before what takes the editor's messages; what goes to the editor stays as it is. */
  MessageConsumer before(MessageConsumer consumer) {
    if (consumer instanceof RemoteEndpoint) {
      return message -> {
        if (isDue(message)) {
          consumer.consume(message);
        }
      };
    }
    editor = consumer;
    return consumer;
  }

  private synchronized boolean isDue(Message message) {
    if (message instanceof RequestMessage request) {
      boolean first = request.getMethod().equals("initialize");
      if (over || first == begun) {
        refuse(request);
        return false;
      }
      begun = true;
      over = request.getMethod().equals("shutdown");
      return true;
    }
    return !(message instanceof NotificationMessage said)
        || ALWAYS.contains(said.getMethod())
        || begun && !over;
  }

  private void refuse(RequestMessage request) {
    ResponseMessage answer = new ResponseMessage();
    answer.setRawId(request.getRawId());
    answer.setJsonrpc("2.0");
    answer.setError(
        begun
            ? new ResponseError(
                ResponseErrorCode.InvalidRequest,
                over ? "the server is shut down" : "the server is initialized",
                null)
            : new ResponseError(
                ResponseErrorCode.ServerNotInitialized, "the server is not initialized", null));
    if (editor != null) {
      editor.consume(answer);
    }
  }
}
