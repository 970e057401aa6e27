package passband.command;

import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import passband.diagnostic.Spelling;
import passband.edit.EditorFiles;
import passband.library.BackgroundThread;
import passband.library.UsageException;
import passband.parse.Syntax;

/**
 * The command {@code passband}. Exit status: 0 nothing to report, 1 faults found, 2 could not run.
 *
 * <p>Nothing here reads a clock, a locale or a time zone: the same sources give the same bytes.
 */
public final class Main {
  static final int FINE = 0;
  static final int FAULTS = 1;
  static final int CANNOT_RUN = 2;

  private static final List<String> COMMANDS =
      List.of(
          "check",
          "build",
          "format",
          "diff",
          "release",
          "judge",
          "history",
          "explain",
          "server",
          "editor",
          "completion",
          "help",
          "version");

  /** Commands that parse sources as soon as they have found them. */
  private static final Set<String> PARSING = Set.of("check", "build", "format", "diff", "release");

  private final Path workingDirectory;
  private final PrintStream out;
  private final PrintStream err;
  private final int mostRuns;
  private final String program;
  private final boolean terminal;

  /** A command that works in a directory and prints to two streams. */
  Main(Path workingDirectory, PrintStream out, PrintStream err) {
    this(workingDirectory, out, err, 0, null, false);
  }

  /**
   * @param mostRuns after how many runs {@code --watch} ends; 0 for never
   * @param program what tells this program from one that may write other bytes; null when that is
   *     not known, or not asked for
   * @param terminal whether a person looks at a terminal: then there are colours and progress
   */
  Main(
      Path workingDirectory,
      PrintStream out,
      PrintStream err,
      int mostRuns,
      String program,
      boolean terminal) {
    this.terminal = terminal;
    this.mostRuns = mostRuns;
    this.program = program;
    this.workingDirectory = workingDirectory;
    this.out = out;
    this.err = err;
  }

  /** Runs the command and leaves with its exit status. */
  public static void main(String[] arguments) {
    if (arguments.length > 1) {
      prefetch(arguments[0]);
    }
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    boolean builds = arguments.length > 0 && arguments[0].equals("build");
    int status =
        new Main(Path.of("").toAbsolutePath(), out, err, 0, builds ? program() : null, terminal())
            .run(List.of(arguments));
    out.flush();
    err.flush();
    System.exit(status);
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
  private static String program() {
    try {
      Path jar = Path.of(Main.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      return Files.isRegularFile(jar)
          ? Files.size(jar) + " " + Files.getLastModifiedTime(jar).toMillis()
          : null;
    } catch (URISyntaxException | IOException e) {
      return null;
    }
  }

  private static PrintStream stream(FileDescriptor descriptor) {
    return new PrintStream(
        new java.io.BufferedOutputStream(new FileOutputStream(descriptor), 1 << 14),
        false,
        StandardCharsets.UTF_8);
  }

  /** Runs a command line and gives its exit status. */
  int run(List<String> words) {
    try {
      return command(words);
    } catch (UsageException e) {
      err.println("passband: " + e.getMessage());
      return CANNOT_RUN;
    } catch (IOException e) {
      err.println("passband: " + reason(e));
      return CANNOT_RUN;
    }
  }

  private static String reason(IOException e) {
    if (e instanceof java.nio.file.AccessDeniedException) {
      return "may not be read or written: " + e.getMessage();
    }
    if (e instanceof java.nio.file.FileSystemException f && f.getReason() != null) {
      return f.getFile() + ": " + f.getReason();
    }
    return e instanceof java.nio.file.NoSuchFileException
        ? "there is no " + e.getMessage()
        : String.valueOf(e.getMessage());
  }

  private int command(List<String> words) throws UsageException, IOException {
    if (words.isEmpty()) {
      err.print(Help.overview());
      return CANNOT_RUN;
    }
    String command = words.get(0);
    List<String> rest = words.subList(1, words.size());
    boolean help = rest.contains("--help") || rest.contains("-h");
    return switch (help && COMMANDS.contains(command) ? "help" : command) {
      case "check" -> {
        CheckCommand check = new CheckCommand(workingDirectory, out, err, terminal);
        yield watched(rest, check::run, check::read);
      }
      case "build" -> {
        BuildCommand build = new BuildCommand(workingDirectory, program, out, err, terminal);
        yield watched(rest, build::run, build::read);
      }
      case "format" -> new FormatCommand(workingDirectory, out, err).run(rest);
      case "diff" -> new DiffCommand(workingDirectory, out, err).run(rest);
      case "judge" -> new JudgeCommand(workingDirectory, out).judge(rest);
      case "history" -> new JudgeCommand(workingDirectory, out).history(rest);
      case "release" -> new ReleaseCommand(workingDirectory, out, err).run(rest);
      case "git-diff" -> new GitCommands(workingDirectory, out).diff(rest);
      case "git-text" -> new GitCommands(workingDirectory, out).text(rest);
      case "explain" -> new ExplainCommand(out).run(rest);
      case "server" -> ServerCommand.run(rest);
      case "editor" -> printed(rest, "an editor file", EditorFiles.NAMES, EditorFiles::text);
      case "completion" ->
          printed(
              rest,
              "a shell",
              ShellCompletion.SHELLS,
              shell -> ShellCompletion.of(shell, COMMANDS));
      case "help", "--help", "-h" -> help(help ? List.of(command) : rest);
      case "version", "--version" -> version();
      default -> throw unknown(command);
    };
  }

  /** What a command does with its words. */
  private interface Action {
    int run(List<String> words) throws UsageException, IOException;
  }

  private int watched(List<String> rest, Action action, Supplier<Set<Path>> read)
      throws UsageException, IOException {
    if (!rest.contains("--watch")) {
      return action.run(rest);
    }
    List<String> words = rest.stream().filter(w -> !w.equals("--watch")).toList();
    Watch.Command command =
        new Watch.Command() {
          @Override
          public int run() throws UsageException, IOException {
            int status = action.run(words);
            out.flush();
            return status;
          }

          @Override
          public Set<Path> read() {
            return read.get();
          }
        };
    return new Watch(err, mostRuns).run(command, workingDirectory.getFileSystem());
  }

  /** Prints one of several texts by its name. */
  private int printed(
      List<String> rest, String what, List<String> names, UnaryOperator<String> text)
      throws UsageException {
    if (rest.size() != 1 || !names.contains(rest.get(0))) {
      throw new UsageException("name " + what + ": " + String.join(", ", names));
    }
    out.print(text.apply(rest.get(0)));
    return FINE;
  }

  private int help(List<String> rest) {
    out.print(rest.isEmpty() ? Help.overview() : Help.of(rest.get(0)));
    return FINE;
  }

  private int version() {
    String version = Main.class.getPackage().getImplementationVersion();
    out.println("passband " + (version == null ? "(not packaged)" : version));
    return FINE;
  }

  private static UsageException unknown(String command) {
    String near = Spelling.nearest(command, COMMANDS);
    return new UsageException(
        "there is no command '"
            + command
            + "'"
            + (near == null ? "; 'passband help' lists them" : "; did you mean '" + near + "'?"));
  }
}
