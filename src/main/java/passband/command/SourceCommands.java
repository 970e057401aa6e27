package passband.command;

import java.util.List;

/** The commands that an author and a reviewer call on sources. */
final class SourceCommands {
  private static final Operand SOURCES = Operand.of("PATH", ArgumentKind.SOURCES).orMore();
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
  private static final Option WATCH =
      Option.flag("--watch", "run again whenever a file that was read is saved");

  static final List<CommandSpec> ALL =
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
                  ROOT,
                  CommandSpec.TO_FILE),
              true),
          new CommandSpec(
              "detect",
              List.of(SOURCES),
              "show which faults a procedure would catch",
              """
              Works out for each fault of a catalogue (of the generator, of the bench, of the person) the probability
              that the sheet fails at least once, from limits, decision rule and uncertainty: readings that share an
              error are not many chances. First stand the faults that are missed or not read, each with what would catch
              it; then the smallest gain error caught with 95 %, the false fails of a good generator, the gain errors
              that a fault of the bench hides and the rows that add nothing. --as html has a curve for each mode and a
              matrix of faults by mode and outlet.
              """,
              List.of(
                  Option.oneOf("--as", "FORM", List.of("text", "json", "html"), "output format"),
                  ANALYZER,
                  ROOT,
                  CommandSpec.TO_FILE),
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
              status: 0 no difference, 1 different, 2 could not run (including errors in either side, but for
              a released revision with another meaning: that is compared).

              Git itself calls 'passband git-diff' (diff.NAME.command) and 'passband git-text' (diff.NAME.textconv).
              """,
              List.of(
                  Option.oneOf(
                      "--as", "FORM", List.of("text", "markdown", "json", "html"), "output format"),
                  Option.flag("--full", "every change of each cause, in text"),
                  ROOT,
                  ANALYZER,
                  CommandSpec.TO_FILE),
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
              true));

  private SourceCommands() {}
}
