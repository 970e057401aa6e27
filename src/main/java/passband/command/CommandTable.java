package passband.command;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.edit.EditorFiles;
import passband.judge.Cause;
import passband.render.Schemas;

/**
 * Every command with its arguments. From this one table come what is parsed, what help prints, what
 * shells complete and the list of the README.
 */
final class CommandTable {
  private static final Operand SOURCES = Operand.of("PATH", ArgumentKind.SOURCES).orMore();
  private static final Operand LIMITS = Operand.of("LIMITS", ArgumentKind.FILE);
  private static final Operand READINGS = Operand.of("READINGS", ArgumentKind.FILE);

  private static final Option ANALYZER =
      Option.of(
          "--analyzer",
          ArgumentKind.NAME,
          "NAME",
          "compile every procedure for this analyzer instead of its own");
  private static final Option ROOT =
      Option.of(
          "--root",
          ArgumentKind.FOLDER,
          "DIR",
          "root of the library: no 'use' may leave it (default: the nearest folder at or above a"
              + " file that holds passband.library or .git; else the working folder, if the file is"
              + " below it; else PATH, or the folder of the file PATH)");
  private static final Option AS_DIAGNOSTICS =
      Option.oneOf("--as", "FORM", List.of("text", "json", "sarif"), "output format");
  private static final Option JUDGED_ON =
      Option.of(
          "--date",
          ArgumentKind.DATE,
          "DATE",
          "date of the judgement (YYYY-MM-DD): warns if a calibration has run out since the"
              + " readings");
  private static final Option WATCH =
      Option.flag("--watch", "run again whenever a file that was read is saved");

  private static final List<CommandSpec> ALL =
      List.of(
          new CommandSpec(
              "check",
              List.of(SOURCES),
              "find errors in procedures",
              """
              Reports errors and warnings in the procedures, devices, analyzers and leads of the files and of everything
              they use. --as sarif writes SARIF 2.1.0.
              """,
              List.of(
                  ANALYZER,
                  ROOT,
                  AS_DIAGNOSTICS,
                  Option.flag(
                      "--coverage",
                      "list what is tested of each device: modes, outlets, low, middle and high"
                          + " settings; --as json then prints it as JSON, and what was found as text on"
                          + " standard error"),
                  Option.flag(
                      "--released",
                      "for continuous integration: every procedure must be released as it is, and"
                          + " every released one be there"),
                  Option.of(
                      "--since",
                      ArgumentKind.NAME,
                      "REVISION",
                      "with --released: every entry of released.txt that this commit has must still be"
                          + " there"),
                  WATCH),
              true),
          new CommandSpec(
              "build",
              List.of(SOURCES),
              "check, then write each procedure's checklist and limit tables",
              """
              Checks, then writes for every procedure DIR/PROCEDURE/checklist.html, checklist.pdf, review.pdf, limits.xlsx,
              limits.csv, limits.csv-metadata.json, limits.json, setups/*.svg and limits/*.svg, and DIR/index.html, in which
              sheets are looked for. If there is any error, nothing is written. Unchanged procedures are skipped; DIR/.built
              records the input digests and what was written. No other file in DIR is replaced or removed, and a DIR that
              holds sources is refused.
              """,
              List.of(
                  Option.of("--out", ArgumentKind.FOLDER, "DIR", "output folder")
                      .or("-o")
                      .orElse("out"),
                  ANALYZER,
                  ROOT,
                  AS_DIAGNOSTICS,
                  Option.oneOf("--paper", "SIZE", List.of("a4", "letter"), "paper size of the PDF"),
                  Option.listOf(
                      "--without",
                      "PARTS",
                      List.of("pdf", "pictures", "xlsx"),
                      "parts to leave out, separated by commas"),
                  Option.flag(
                      "--prune",
                      "remove what was written for procedures that are gone from the sources"),
                  Option.of(
                      "--depfile",
                      ArgumentKind.FILE,
                      "FILE",
                      "write a rule in Make's format: the outputs and every file that was read"),
                  WATCH),
              true),
          new CommandSpec(
              "format",
              List.of(SOURCES),
              "lay out sources in the standard format",
              """
              Sets indentation, spacing and columns; words and comments are kept, in their order. A file with a syntax
              error is left alone. Prints the names of the files it changes.
              """,
              List.of(
                  Option.flag(
                      "--check",
                      "change nothing; exit status 1 if a file is not in the standard format")),
              true),
          new CommandSpec(
              "steps",
              List.of(SOURCES),
              "print a procedure's steps with what each changes on the bench",
              """
              Works through every step of each procedure's sheet on a model of the bench: leads, mode, setting, load,
              other settings, output. Below each step stands what it changes, '?' for what is unknown. --as json is for
              programs.
              """,
              List.of(
                  Option.oneOf("--as", "FORM", List.of("text", "json"), "output format"),
                  ANALYZER,
                  ROOT),
              true),
          new CommandSpec(
              "diff",
              List.of(
                  Operand.of("OLD", ArgumentKind.SOURCES),
                  Operand.of("NEW", ArgumentKind.SOURCES).orNone()),
              "show what changed in meaning between two revisions",
              """
              Compares what OLD and NEW compile to, never their text. Each is a file, a folder or REVISION:PATH in git
              (PATH from the top of the repository). A device, an analyzer, leads or a rule that no procedure of either
              side uses is compared by itself, so a profile's file is enough; what was renamed is compared with what it
              was. With OLD alone and --analyzer, it shows what another instrument changes.

              COMMIT..COMMIT alone compares two commits of a repository: it lists which procedures' meaning changed and
              through which file, which use a changed file and mean the same, and which are not affected; then what
              changed. Only what depends on a changed file is compiled.

              What one edit of the sources brought about stands together, the most dangerous first; --full shows every
              change with its source line and its recalculated limits. --as html is for printing and signing. Exit
              status: 0 no difference, 1 different, 2 could not run (including errors in either side).

              Git itself calls 'passband git-diff' (diff.NAME.command) and 'passband git-text' (diff.NAME.textconv).
              """,
              List.of(
                  Option.oneOf(
                      "--as", "FORM", List.of("text", "markdown", "json", "html"), "output format"),
                  Option.flag("--full", "every change of each cause, in text"),
                  ROOT,
                  ANALYZER),
              true),
          new CommandSpec(
              "release",
              List.of(SOURCES),
              "record the meaning of a signed revision",
              """
              Adds an entry to released.txt beside each procedure's source: its name, revision, date and digest, who
              approved it and when, and the digest of the entry before it. A revision has to replace the one released
              before it. From then on, 'check' rejects the same revision with a different meaning, an entry that was
              removed or changed, and releases on two branches of git that nobody approved together; another release
              brings such branches together. What is built from a procedure that is not released says so on every page.
              """,
              List.of(
                  Option.of("--by", ArgumentKind.NAME, "NAME", "who approved it (required)"),
                  Option.of(
                      "--on",
                      ArgumentKind.DATE,
                      "DATE",
                      "when it was approved (YYYY-MM-DD; required)"),
                  Option.of(
                      "--withdraw",
                      ArgumentKind.NAME,
                      "PROCEDURE",
                      "record in released.txt in PATH that a procedure is no longer in use"),
                  ROOT),
              true),
          new CommandSpec(
              "readings",
              List.of(LIMITS),
              "print the empty table of readings for a sheet filled in on paper",
              """
              Prints a CSV table with a line for each item of LIMITS, a limits.json file, in the order of the sheet: what
              is set and accepted, what may be written, the unit, and the columns that 'judge' reads. Fill in the column
              'reading'; leave it empty where the item was not done or does not apply. A value that was read again is
              another line with 'attempt' 2. Derived values have no line: 'judge' calculates them. The settings, load
              and limits of a line are compared with LIMITS when it is judged, so a line that was moved is refused.
              """,
              List.of(),
              true),
          new CommandSpec(
              "judge",
              List.of(LIMITS, READINGS),
              "give verdicts on recorded readings",
              """
              Compares a completed sheet with its limits. LIMITS is a limits.json file; READINGS is the readings.csv
              saved by the checklist, or any CSV file with the columns point, reading and unit and, where needed,
              phase, attempt, kind and digest (the reference lists all columns; any other is an error). Readings taken
              with a different digest are rejected. It passes only if every item that applies is done and passes.
              Readings that an instrument took after its calibration was due are unclear, and so is a due date, a date
              or a serial number that cannot be read as one. --as html is for printing and signing. Exit status: 0
              pass, 1 an item fails, is missing or is unclear, 2 could not run.
              """,
              List.of(
                  Option.oneOf("--as", "FORM", List.of("text", "json", "html"), "output format"),
                  JUDGED_ON),
              true),
          new CommandSpec(
              "record",
              List.of(LIMITS, READINGS),
              "keep what an auditor needs of a visit",
              """
              Judges as 'judge' does and prints a record: both files whole with their digests, the version of the
              program, every attempt with its reason and person, deviations, instruments and verdicts, sealed; what
              failed as found stands first. --as html is the report to print and sign. --particulars is a file of lines
              KEY = TEXT with what the readings do not know: number, laboratory, customer, place, issued, authorized-by,
              and certificate.ROLE for each instrument; what is not known is a blank on the report. Exit status as of
              'judge'.
              """,
              List.of(
                  Option.oneOf("--as", "FORM", List.of("json", "html"), "output format"),
                  Option.of(
                      "--particulars",
                      ArgumentKind.FILE,
                      "FILE",
                      "what the report says beside the readings, a line KEY = TEXT each"),
                  Option.of("--number", ArgumentKind.NAME, "TEXT", "number of the report"),
                  Option.of("--issued", ArgumentKind.DATE, "DATE", "date of issue (YYYY-MM-DD)"),
                  JUDGED_ON),
              true),
          new CommandSpec(
              "verify",
              List.of(Operand.of("RECORD", ArgumentKind.FILE)),
              "judge a record again from its parts",
              """
              Makes the record again from the limits and readings that it holds, and says whether anything in it was
              altered: its seal, the digest of a part, or what it says of a verdict. Whoever can write a record can also
              seal a forged one; --seal compares it with the seal on the signed report. --as html prints the report
              again, with what is wrong at its head. Exit status: 0 unaltered, 1 altered, 2 no record.
              """,
              List.of(
                  Option.oneOf("--as", "FORM", List.of("text", "html"), "output format"),
                  Option.of(
                      "--seal",
                      ArgumentKind.NAME,
                      "SEAL",
                      "the seal on the signed report, or its first characters")),
              true),
          new CommandSpec(
              "history",
              List.of(LIMITS, READINGS, READINGS.orMore()),
              "show how a generator's readings drift",
              """
              Lists the readings of several dates side by side (the date is in each file's name or in its 'date' record)
              with the least-squares line through them, and warns where the next reading may leave the accepted range
              before the next interval ends: by the interval in which it lies with 95 %, or with two readings only by
              the line. It suggests how long the next test can wait. All must have the same 'generator-serial' record. A
              further LIMITS file among the readings, after a revision, applies to the readings that follow it. --as
              html has a plot for each point.
              """,
              List.of(
                  Option.of("--interval", ArgumentKind.DAYS, "DAYS", "days until the next test")
                      .orElse("365"),
                  Option.oneOf("--as", "FORM", List.of("text", "json", "html"), "output format")),
              true),
          new CommandSpec(
              "fleet",
              List.of(Operand.of("FOLDER", ArgumentKind.FOLDER)),
              "put the records of many generators together",
              """
              Reads every .json file below FOLDER as a record: when each generator was last done and is due, how often
              a model and a point failed as found, and what drifts towards its limits. A file that is no record, was
              changed after it was written, is of another format or holds the same readings as another is named and
              left out of every total. Seals are checked; 'verify' judges a record again. --instrument lists the
              records that used the instrument with that serial number. Exit status: 1 if a file was left out.
              """,
              List.of(
                  Option.of(
                          "--interval",
                          ArgumentKind.DAYS,
                          "DAYS",
                          "days from one visit to the next")
                      .orElse("365"),
                  Option.of(
                      "--date",
                      ArgumentKind.DATE,
                      "DATE",
                      "the day on which a generator is overdue or not (YYYY-MM-DD; else today)"),
                  Option.of(
                      "--instrument",
                      ArgumentKind.NAME,
                      "SERIAL",
                      "list the records that used this instrument, by its serial number"),
                  Option.of(
                      "--from", ArgumentKind.DATE, "DATE", "of these, from this day (YYYY-MM-DD)"),
                  Option.of("--to", ArgumentKind.DATE, "DATE", "and to this day (YYYY-MM-DD)"),
                  Option.oneOf("--as", "FORM", List.of("text", "csv", "html"), "output format")),
              true),
          new CommandSpec(
              "schema",
              List.of(Operand.oneOf("NAME", "schema", () -> Schemas.NAMES).orNone()),
              "print the schema of a JSON file that Passband writes",
              """
              Prints the JSON Schema (2020-12) of a format; its $id is urn:passband:NAME:VERSION, and files of it say
              "format": "passband-NAME/VERSION". Without a name, lists the names. limits is written by build, diagnostics
              and coverage by check, diff by diff, verdicts by judge, record by record, history by history, each when asked for JSON.
              """,
              List.of(),
              true),
          new CommandSpec(
              "explain",
              List.of(Operand.oneOf("CODE", "code", CommandTable::explained).orMore().orNone()),
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
              List.of(),
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
              List.of(),
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

  private CommandTable() {}

  /** The commands that a person calls. */
  static List<CommandSpec> listed() {
    List<CommandSpec> listed = new ArrayList<>(ALL);
    listed.removeIf(command -> !command.listed());
    return listed;
  }

  /** Their names. */
  static List<String> names() {
    List<String> names = new ArrayList<>();
    listed().forEach(command -> names.add(command.name()));
    return names;
  }

  /** The command of this name; null for none. */
  static @Nullable CommandSpec find(String written) {
    String name =
        switch (written) {
          case "--help", "-h" -> "help";
          case "--version" -> "version";
          default -> written;
        };
    for (CommandSpec command : ALL) {
      if (command.name().equals(name)) {
        return command;
      }
    }
    return null;
  }

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
