package passband.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Set;
import java.util.function.UnaryOperator;
import passband.edit.EditorFiles;
import passband.library.UsageException;
import passband.render.ReadingsTemplate;
import passband.render.Schemas;

/** Does what a command line asks for, once or whenever a file is saved. */
final class Verbs {
  private static final String WATCH = "--watch";

  private final Invocation invocation;
  private final PrintStream out;

  Verbs(Invocation invocation) {
    this.invocation = invocation;
    this.out = invocation.out();
  }

  /** Runs a command; the exit status. */
  int run(CommandSpec command, Arguments arguments) throws UsageException, IOException {
    if (arguments.has(CommandSpec.HELP.name())) {
      out.print(Help.of(command));
      return ExitStatus.FINE;
    }
    String file =
        command.options().contains(CommandSpec.TO_FILE)
            ? arguments.valueOrNull(CommandSpec.TO_FILE.name())
            : null;
    if (file != null) {
      return intoFile(file, command, arguments);
    }
    Verb verb = verb(command.name());
    return command.option(WATCH) != null && arguments.has(WATCH)
        ? watched(verb, arguments)
        : verb.run(arguments);
  }

  /** What is printed goes into a file, unless the command could not run. */
  private int intoFile(String file, CommandSpec command, Arguments arguments)
      throws UsageException, IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream to = new PrintStream(bytes, false, StandardCharsets.UTF_8);
    int status = new Verbs(invocation.printingTo(to)).verb(command.name()).run(arguments);
    to.flush();
    if (status != ExitStatus.CANNOT_RUN) {
      WholeFile.write(invocation.workingDirectory().resolve(file), bytes.toByteArray());
    }
    return status;
  }

  /** What a command does. */
  Verb verb(String name) {
    return switch (name) {
      case "new" -> new NewCommand(invocation);
      case "transcribe" -> new TranscribeCommand(invocation);
      case "check" -> new CheckCommand(invocation);
      case "build" -> new BuildCommand(invocation);
      case "format" -> new FormatCommand(invocation);
      case "steps" -> new StepsCommand(invocation);
      case "detect" -> new DetectCommand(invocation);
      case "diff" -> new DiffCommand(invocation);
      case "release" -> new ReleaseCommand(invocation);
      case "readings" -> this::readings;
      case "judge" -> new JudgeCommand(invocation);
      case "record" -> new RecordCommand(invocation);
      case "verify" -> new VerifyCommand(invocation);
      case "fleet" -> new FleetCommand(invocation);
      case "history" -> new HistoryCommand(invocation);
      case "schema" -> this::schema;
      case "explain" -> new ExplainCommand(out);
      case "server" -> new ServerCommand(invocation);
      case "editor" -> printed(EditorFiles::text);
      case "completion" -> printed(ShellCompletion::of);
      case "help" -> this::help;
      case "version" -> this::version;
      case "git-diff" -> new GitCommands(invocation)::diff;
      case "git-text" -> new GitCommands(invocation)::text;
      default -> throw new IllegalArgumentException(name);
    };
  }

  private int watched(Verb verb, Arguments arguments) throws UsageException, IOException {
    Watch.Command command =
        new Watch.Command() {
          @Override
          public int run() throws UsageException, IOException {
            int status = verb.run(arguments);
            OutputFailure.check(invocation);
            return status;
          }

          @Override
          public Set<Path> read() {
            return verb.read();
          }
        };
    return new Watch(invocation.err(), invocation.mostRuns())
        .run(command, invocation.workingDirectory().getFileSystem());
  }

  /** Prints one of several texts by its name. */
  private Verb printed(UnaryOperator<String> text) {
    return arguments -> {
      out.print(text.apply(arguments.operands().get(0)));
      return ExitStatus.FINE;
    };
  }

  private int schema(Arguments arguments) {
    if (arguments.operands().isEmpty()) {
      Schemas.NAMES.forEach(out::println);
    } else {
      out.print(Schemas.text(arguments.operands().get(0)));
    }
    return ExitStatus.FINE;
  }

  private int readings(Arguments arguments) throws UsageException, IOException {
    RecordedFiles files = new RecordedFiles(invocation.workingDirectory());
    out.print(ReadingsTemplate.of(files.limits(arguments.operands().get(0))));
    return ExitStatus.FINE;
  }

  private int help(Arguments arguments) {
    CommandSpec command =
        arguments.operands().isEmpty() ? null : CommandTable.find(arguments.operands().get(0));
    out.print(command == null ? Help.overview() : Help.of(command));
    return ExitStatus.FINE;
  }

  private int version(Arguments arguments) {
    out.println("passband " + Version.text());
    return ExitStatus.FINE;
  }
}
