package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Messages at a moment when the protocol does not allow them. */
@Timeout(60)
class ProtocolOrderTest {
  private Process server;
  private int last;

  @BeforeEach
  void start() throws IOException {
    server =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "passband.command.Main",
                "server")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
  }

  @AfterEach
  void stop() {
    server.destroyForcibly();
  }

  private void send(String json) throws IOException {
    byte[] body = json.getBytes(StandardCharsets.UTF_8);
    OutputStream to = server.getOutputStream();
    to.write(("Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
    to.write(body);
    to.flush();
  }

  private void notify(String method, String params) throws IOException {
    send("{\"jsonrpc\":\"2.0\",\"method\":\"" + method + "\",\"params\":" + params + "}");
  }

  /** Asks, and reads on to the answer. */
  private JsonObject ask(String method, String params) throws IOException {
    last++;
    send(
        "{\"jsonrpc\":\"2.0\",\"id\":"
            + last
            + ",\"method\":\""
            + method
            + "\",\"params\":"
            + params
            + "}");
    DataInputStream from = new DataInputStream(server.getInputStream());
    while (true) {
      int length = 0;
      for (String line = line(from); !line.isEmpty(); line = line(from)) {
        if (line.startsWith("Content-Length: ")) {
          length = Integer.parseInt(line.substring("Content-Length: ".length()));
        }
      }
      String text = new String(from.readNBytes(length), StandardCharsets.UTF_8);
      JsonObject answer = JsonParser.parseString(text).getAsJsonObject();
      if (answer.has("id") && answer.get("id").getAsInt() == last) {
        return answer;
      }
    }
  }

  private static String line(DataInputStream from) throws IOException {
    StringBuilder line = new StringBuilder();
    for (int c = from.read(); c != '\n'; c = from.read()) {
      assertTrue(c >= 0, "the server has ended");
      if (c != '\r') {
        line.append((char) c);
      }
    }
    return line.toString();
  }

  private static int refused(JsonObject answer) {
    assertTrue(answer.has("error"), answer.toString());
    return answer.getAsJsonObject("error").get("code").getAsInt();
  }

  private static final String SYMBOLS = "{\"query\":\"\"}";
  private static final String FILE =
      "{\"textDocument\":{\"uri\":\"untitled:One\",\"languageId\":\"passband\",\"version\":1,"
          + "\"text\":\"device d \\\"D\\\" {\\n}\\n\"}}";
  private static final String OUTLINE = "{\"textDocument\":{\"uri\":\"untitled:One\"}}";

  /** The codes are the protocol's and JSON-RPC's. */
  @Test
  void fromBeginningToEnd() throws Exception {
    assertEquals(-32002, refused(ask("workspace/symbol", SYMBOLS)));
    assertEquals(-32002, refused(ask("shutdown", "null")));
    notify("textDocument/didOpen", FILE);
    assertTrue(ask("initialize", "{\"capabilities\":{}}").has("result"));
    assertEquals(-32600, refused(ask("initialize", "{\"capabilities\":{}}")));
    notify("initialized", "{}");
    assertEquals(
        "[]", ask("textDocument/documentSymbol", OUTLINE).get("result").toString(), "was dropped");
    notify("textDocument/didOpen", FILE);
    assertEquals(1, ask("textDocument/documentSymbol", OUTLINE).getAsJsonArray("result").size());
    assertTrue(ask("shutdown", "null").has("result"));
    assertEquals(-32600, refused(ask("workspace/symbol", SYMBOLS)));
    assertEquals(-32600, refused(ask("shutdown", "null")));
    notify("exit", "null");
    assertTrue(server.waitFor(10, TimeUnit.SECONDS));
    assertEquals(0, server.exitValue());
  }

  @Test
  void anExitWithoutAShutdownIsStatusOne() throws Exception {
    assertTrue(ask("initialize", "{\"capabilities\":{}}").has("result"));
    notify("exit", "null");
    assertTrue(server.waitFor(10, TimeUnit.SECONDS));
    assertEquals(1, server.exitValue());
  }
}
