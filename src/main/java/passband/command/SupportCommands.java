package passband.command;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.edit.EditorFiles;
import passband.judge.Cause;
import passband.render.Schemas;

/** The commands that help with the others, and those that programs call. */
final class SupportCommands {

  static final List<CommandSpec> ALL =
      List.of(
          new CommandSpec(
              "schema",
              List.of(Operand.oneOf("NAME", "schema", () -> Schemas.NAMES).orNone()),
              "print the schema of a JSON file that Passband writes",
              """
              Prints the JSON Schema (2020-12) of a format; its $id is urn:passband:NAME:VERSION, and files of it say
              "format": "passband-NAME/VERSION". Without a name, lists the names. limits is written by build, diagnostics
              and coverage by check, diff by diff, verdicts by judge, record by record, history by history, transcript by transcribe,
              each when asked for JSON.
              """,
              List.of(CommandSpec.TO_FILE),
              true),
          new CommandSpec(
              "explain",
              List.of(Operand.oneOf("CODE", "code", SupportCommands::explained).orMore().orNone()),
              "explain a diagnostic: what, why, an example and the fix",
              """
              Prints the manual page of each diagnostic code: what it means, why it matters, an example and the fix; of
              the code of a verdict's cause, what it means. Without a code, lists all of them. 'passband explain bench'
              prints the devices used in the examples.
              """,
              List.of(),
              true),
          new CommandSpec(
              "server",
              List.of(),
              "run the language server for editors",
              """
              The language server (Language Server Protocol 3.17); it communicates over standard input and output.
              It reports errors as you type and offers completion, hover with a row's limits, definitions, references,
              rename, outline, folding, formatting, fixes, highlighting and the limits beside each row. An editor starts
              it; 'passband editor NAME' prints the editor's configuration.
              """,
              List.of(
                  Option.of(
                      "--root",
                      ArgumentKind.FOLDER,
                      "DIR",
                      "root of the library of every file below it (default: the nearest folder at or"
                          + " above a file that holds passband.library or .git; else the editor's"
                          + " folder that the file is in; else the file's own folder)")),
              true),
          new CommandSpec(
              "editor",
              List.of(Operand.oneOf("NAME", "editor file", () -> EditorFiles.NAMES)),
              "print a file that makes an editor support the language",
              """
              Prints a file for editors, generated from the language's own keywords and units: textmate (a TextMate
              grammar), language-configuration (comments and brackets), neovim or emacs (configuration that starts the
              language server).
              """,
              List.of(CommandSpec.TO_FILE),
              true),
          new CommandSpec(
              "completion",
              List.of(Operand.oneOf("SHELL", "shell", () -> ShellCompletion.SHELLS)),
              "print a completion script for a shell: bash, zsh or fish",
              """
              Prints a script for bash, zsh or fish. In bash or zsh, put this into the start-up file:
                eval "$(passband completion bash)"
              In fish:
                passband completion fish > ~/.config/fish/completions/passband.fish
              """,
              List.of(CommandSpec.TO_FILE),
              true),
          new CommandSpec(
              "help",
              List.of(Operand.oneOf("COMMAND", "command", CommandTable::names).orNone()),
              "print this page, or the help of a command",
              "Prints the list of commands, or the help of one.\n",
              List.of(),
              true),
          new CommandSpec(
              "version",
              List.of(),
              "print the version",
              "Prints the version of the program.\n",
              List.of(),
              true),
          new CommandSpec(
              "git-diff",
              List.of(Operand.of("ARGUMENT", ArgumentKind.FILE).orMore()),
              "for git's diff.NAME.command",
              """
              Git calls this with the arguments of an external diff, at the top of the work tree. What the file uses is
              taken from the revisions that git shows; the first line names them, and says so where git does not tell.
              """,
              List.of(),
              false),
          new CommandSpec(
              "git-text",
              List.of(Operand.of("FILE", ArgumentKind.FILE)),
              "for git's diff.NAME.textconv",
              "Prints the facts of a file's procedures, and which revision the used files are from.\n",
              List.of(),
              false));

  private SupportCommands() {}

  private static List<String> explained() {
    List<String> explained = new ArrayList<>(List.of("bench"));
    explained.addAll(Code.ids());
    for (Cause.Code cause : Cause.Code.values()) {
      if (!explained.contains(cause.word())) {
        explained.add(cause.word());
      }
    }
    return explained;
  }
}
