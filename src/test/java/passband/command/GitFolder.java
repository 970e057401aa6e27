package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import passband.testing.Repository;

/** A folder in which a test calls Passband and the real git. */
final class GitFolder {
  private final Path folder;
  private String out = "";
  private String err = "";

  GitFolder(Path folder) {
    this.folder = folder;
  }

  /** Puts the tests' library into its folder 'procedures', without its records of releases. */
  void copyLibraryUnreleased() throws IOException {
    Repository.copy(Repository.LIBRARY, folder.resolve("procedures"));
    for (Path record : Repository.files(folder, "released.txt")) {
      Files.delete(record);
    }
  }

  /** Calls Passband; its exit status. */
  int run(String... words) {
    Call call = Call.of(folder, words);
    out = call.out();
    err = call.err();
    return call.status();
  }

  String out() {
    return out;
  }

  String err() {
    return err;
  }

  /** Both outputs of the last call of Passband. */
  String said() {
    return out + err;
  }

  void write(String path, String text) throws IOException {
    Path file = folder.resolve(path);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  void edit(String path, String from, String to) throws IOException {
    String text = Files.readString(folder.resolve(path));
    assertTrue(text.contains(from), from);
    Files.writeString(folder.resolve(path), text.replace(from, to));
  }

  /** A repository with nothing in it yet. */
  void init() throws IOException, InterruptedException {
    git("init", "-q", "-b", "main");
    git("config", "user.email", "someone@example.org");
    git("config", "user.name", "Someone");
  }

  /** Commits all that there is; its name. */
  String commit(String message) throws IOException, InterruptedException {
    git("add", "-A");
    git("commit", "-q", "-m", message);
    return git("rev-parse", "HEAD").strip();
  }

  /** What git says; it must not fail. */
  String git(String... arguments) throws IOException, InterruptedException {
    Ended ended = ended(arguments);
    assertEquals(0, ended.status, String.join(" ", arguments) + "\n" + ended.said);
    return ended.said;
  }

  /** Git's exit status. */
  int status(String... arguments) throws IOException, InterruptedException {
    return ended(arguments).status;
  }

  private record Ended(int status, String said) {}

  private Ended ended(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("git", "-c", "core.pager=cat"));
    command.addAll(List.of(arguments));
    ProcessBuilder builder =
        new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true);
    builder.environment().put("GIT_CONFIG_GLOBAL", "/dev/null");
    builder.environment().put("GIT_CONFIG_SYSTEM", "/dev/null");
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), said);
  }

  /** A command line by which git calls these classes. */
  static String command(String name) {
    return "java -XX:TieredStopAtLevel=1 -cp '"
        + System.getProperty("java.class.path")
        + "' passband.command.Main "
        + name;
  }
}
