package passband.command;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import passband.library.Paths;

/**
 * Runs the commands once over a library, so that Java can keep the classes that they need as it has
 * them in memory: the launcher asks for this when it makes the archive of classes. What is printed
 * goes nowhere; the outputs go to a folder of the launcher's.
 */
final class CdsTraining {
  private CdsTraining() {}

  /**
   * @param arguments the library's folder, and the folder for outputs
   */
  public static void main(String[] arguments) throws IOException {
    Path library = Path.of(arguments[0]).toAbsolutePath();
    Path target = Path.of(arguments[1]).toAbsolutePath();
    Files.createDirectories(target);
    String broken = target.resolve("broken.pband").toString();
    Files.writeString(Path.of(broken), "device 1 {\nmode a on (\n}\nprocedur p \"P\" {\n  test\n");
    Main.prefetch("check");
    System.console();
    String all = library.toString();
    String one = first(library);
    String out = target.resolve("out").toString();
    List<List<String>> commands =
        List.of(
            List.of("version"),
            List.of("check", all),
            List.of("check", one),
            List.of("check", broken),
            List.of("check", "--as", "json", broken),
            List.of("build", all, "-o", out),
            List.of("build", one, "-o", out, "--without", "pdf,pictures"),
            List.of("build", one, "-o", out, "--without", "pdf,pictures"), // nothing has changed
            List.of("format", "--check", all),
            List.of("diff", one, one),
            List.of("explain", "unknown-unit"));
    for (List<String> command : commands) {
      PrintStream nowhere =
          new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
      Main.run(
          new Invocation(Paths.folder(library), nowhere, nowhere, 0, "rehearsal", false), command);
    }
  }

  /** A file of the library with a procedure in it. */
  private static String first(Path library) throws IOException {
    try (Stream<Path> files = Files.walk(library)) {
      return files
          .filter(file -> file.toString().endsWith(".pband"))
          .filter(CdsTraining::procedure)
          .sorted()
          .findFirst()
          .orElse(library)
          .toString();
    }
  }

  private static boolean procedure(Path file) {
    try {
      return Files.readString(file).contains("\nprocedure ");
    } catch (IOException e) {
      return false;
    }
  }
}
