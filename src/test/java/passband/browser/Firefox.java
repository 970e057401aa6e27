package passband.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Debian's Firefox without a window, by WebDriver BiDi, which it speaks itself; {@code .ci/run}
 * installs it.
 */
final class Firefox implements AutoCloseable, WebSocket.Listener {
  private static final Path FIREFOX = Path.of("/usr/bin/firefox-esr");
  private static final String READY = "WebDriver BiDi listening on ";
  private static final int SECONDS = 60;

  private final Process process;
  private final WebSocket socket;
  private final BlockingQueue<JsonObject> answers = new LinkedBlockingQueue<>();
  private final StringBuilder part = new StringBuilder();
  private final Gson gson = new Gson();
  private String tab;
  private int commands;

  /**
   * @param folder for the profile and downloads
   */
  Firefox(Path folder) throws Exception {
    assertTrue(Files.exists(FIREFOX), "this test needs firefox-esr; .ci/run installs it");
    Path profile = Files.createDirectory(folder.resolve("profile"));
    Files.writeString(
        profile.resolve("user.js"),
        "user_pref('browser.download.folderList', 2);\n"
            + "user_pref('browser.download.dir', '%s');\n".formatted(folder)
            + "user_pref('browser.download.alwaysOpenPanel', false);\n"
            + "user_pref('app.update.disabledForTesting', true);\n"
            + "user_pref('datareporting.policy.dataSubmissionEnabled', false);\n");
    Path said = Files.createFile(folder.resolve("firefox.txt"));
    process =
        new ProcessBuilder(
                FIREFOX.toString(),
                "--headless",
                "--no-remote",
                "--remote-debugging-port=0",
                "--profile",
                profile.toString(),
                "about:blank")
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(URI.create(address(said) + "/session"), this)
            .get(SECONDS, TimeUnit.SECONDS);
    send("session.new", Map.of("capabilities", Map.of()));
    tab = firstTab();
  }

  /** What it says is kept in a file, so that it never waits for a reader. */
  private static String address(Path said) throws IOException, InterruptedException {
    for (int i = 0; i < SECONDS * 20; i++) {
      for (String line : Files.readAllLines(said)) {
        if (line.startsWith(READY)) {
          return line.substring(READY.length()).strip();
        }
      }
      Thread.sleep(50);
    }
    throw new IOException("Firefox did not start: " + Files.readString(said));
  }

  private String firstTab() throws Exception {
    return send("browsingContext.getTree", Map.of())
        .getAsJsonArray("contexts")
        .get(0)
        .getAsJsonObject()
        .get("context")
        .getAsString();
  }

  @Override
  public @Nullable CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
    part.append(data);
    if (last) {
      answers.add(JsonParser.parseString(part.toString()).getAsJsonObject());
      part.setLength(0);
    }
    from.request(1);
    return null;
  }

  private JsonObject send(String method, Object parameters) throws Exception {
    int id = ++commands;
    socket.sendText(gson.toJson(Map.of("id", id, "method", method, "params", parameters)), true);
    while (true) {
      JsonObject answer = answers.poll(SECONDS, TimeUnit.SECONDS);
      assertTrue(answer != null, "no answer to " + method);
      if (answer.has("id") && answer.get("id").getAsInt() == id) {
        assertTrue(answer.has("result"), answer.toString());
        return answer.getAsJsonObject("result");
      }
    }
  }

  void open(Path page) throws Exception {
    send(
        "browsingContext.navigate",
        Map.of("context", tab, "url", page.toUri().toString(), "wait", "complete"));
  }

  /** Another tab, which is the one that is used from now on; the one before is returned. */
  String newTab() throws Exception {
    String before = tab;
    tab = send("browsingContext.create", Map.of("type", "tab")).get("context").getAsString();
    return before;
  }

  void use(String other) {
    tab = other;
  }

  /** An expression's value as text: a string's own, of another value its JSON. */
  String text(String expression) throws Exception {
    JsonObject result =
        send(
            "script.evaluate",
            Map.of(
                "expression",
                "((value) => typeof value === 'string' ? value : JSON.stringify(value))("
                    + expression
                    + ")",
                "target",
                Map.of("context", tab),
                "awaitPromise",
                false));
    assertTrue(!result.has("exceptionDetails"), expression + ": " + result);
    JsonElement value = result.getAsJsonObject("result").get("value");
    return value == null ? "undefined" : value.getAsString();
  }

  /** Waits for what an expression is to be. */
  void await(String expression, String expected) throws Exception {
    for (int i = 0; i < 200 && !text(expression).equals(expected); i++) {
      Thread.sleep(50);
    }
    String found = text(expression);
    assertTrue(found.equals(expected), expression + " is " + found);
  }

  /** Keys to whatever has the focus. */
  void type(String keys) throws Exception {
    JsonArray actions = new JsonArray();
    keys.codePoints()
        .forEach(
            c -> {
              for (String way : List.of("keyDown", "keyUp")) {
                JsonObject action = new JsonObject();
                action.addProperty("type", way);
                action.addProperty("value", Character.toString(c));
                actions.add(action);
              }
            });
    send(
        "input.performActions",
        Map.of(
            "context",
            tab,
            "actions",
            List.of(Map.of("type", "key", "id", "keyboard", "actions", actions))));
  }

  @Override
  public void close() throws InterruptedException {
    socket.abort();
    process.destroy();
    assertTrue(process.waitFor(SECONDS, TimeUnit.SECONDS), "Firefox does not end");
  }
}
