package passband.command;

import java.io.BufferedOutputStream;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.URISyntaxException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Spelling;
import passband.library.BackgroundThread;
import passband.library.UsageException;
import passband.parse.Syntax;

/**
 * The program {@code passband}.
 *
 * <p>Nothing here reads a clock, a locale or a time zone: the same sources give the same bytes.
 */
public final class Main {
  /** Commands that parse sources as soon as they have found them. */
  private static final Set<String> PARSING = Set.of("check", "build", "format", "diff", "release");

  private Main() {}

  /** Runs the command and leaves with its exit status. */
  public static void main(String[] arguments) {
    if (arguments.length > 1) {
      prefetch(arguments[0]);
    }
    boolean builds = arguments.length > 0 && arguments[0].equals("build");
    Invocation invocation =
        new Invocation(
            Path.of("").toAbsolutePath(),
            stream(FileDescriptor.out, "stdout"),
            stream(FileDescriptor.err, "stderr"),
            0,
            builds ? program() : null,
            terminal());
    System.exit(run(invocation, List.of(arguments)));
  }

  /** Sets up what a command is going to need, on a thread of its own. */
  static void prefetch(String command) {
    if (PARSING.contains(command)) {
      BackgroundThread.of(Syntax::ready).start();
    }
  }

  /** Whether both ends are a terminal that shows colours, and no one has said not to. */
  private static boolean terminal() {
    return System.console() != null
        && isTerminal(System.console())
        && System.getenv("NO_COLOR") == null
        && !"dumb".equals(System.getenv("TERM"));
  }

  /** From Java 22 on there may be a console without a terminal, and a method that tells. */
  private static boolean isTerminal(Console console) {
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }

  /** The jar's size and date; null when this does not run from one. */
  private static @Nullable String program() {
    try {
      Path jar = Path.of(Main.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      return Files.isRegularFile(jar)
          ? Files.size(jar) + " " + Files.getLastModifiedTime(jar).toMillis()
          : null;
    } catch (URISyntaxException | IOException e) {
      return null;
    }
  }

  /** UTF-8 for a file, a pipe and most terminals; another console gets what it shows. */
  private static PrintStream stream(FileDescriptor descriptor, String name) {
    OutputStream to = new BufferedOutputStream(new FileOutputStream(descriptor), 1 << 14);
    Charset shown = System.console() == null ? StandardCharsets.UTF_8 : console(name);
    return new PrintStream(
        shown.equals(StandardCharsets.UTF_8) ? to : new ConsoleStream(to, shown),
        false,
        StandardCharsets.UTF_8);
  }

  /** What Java knows of the console that a stream goes to; its property was named anew in 19. */
  private static Charset console(String stream) {
    String known = System.getProperty(stream + ".encoding");
    String name = known != null ? known : System.getProperty("sun." + stream + ".encoding");
    try {
      return name == null ? StandardCharsets.UTF_8 : Charset.forName(name);
    } catch (IllegalArgumentException e) {
      return StandardCharsets.UTF_8;
    }
  }

  /** Runs a command line; the exit status. Whatever fails is said in a line. */
  static int run(Invocation invocation, List<String> words) {
    String name = words.isEmpty() ? "help" : words.get(0);
    try {
      int status = status(invocation, words);
      OutputFailure.check(invocation);
      return status;
    } catch (UsageException | IOException | RuntimeException | Error e) {
      LastHandler.say(name, e, invocation);
      return ExitStatus.CANNOT_RUN;
    }
  }

  private static int status(Invocation invocation, List<String> words)
      throws UsageException, IOException {
    if (words.isEmpty()) {
      invocation.err().print(Help.overview());
      return ExitStatus.CANNOT_RUN;
    }
    CommandSpec command = CommandTable.find(words.get(0));
    if (command == null) {
      throw unknown(words.get(0));
    }
    Arguments arguments = Arguments.of(command, words.subList(1, words.size()));
    return new Verbs(invocation).run(command, arguments);
  }

  private static UsageException unknown(String command) {
    String near = Spelling.nearest(command, CommandTable.names());
    return new UsageException(
        "there is no command '"
            + command
            + "'"
            + (near == null ? "; 'passband help' lists them" : "; did you mean '" + near + "'?"));
  }
}
