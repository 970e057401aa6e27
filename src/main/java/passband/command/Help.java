package passband.command;

/** What {@code help} prints. */
final class Help {
  private Help() {}

  static String overview() {
    return """
        passband: output-verification procedures of medical generators, from text to checked limits and a checklist

          passband check PATH...              find faults
          passband build PATH... [-o out]     check, then write each procedure's checklist and limit tables
          passband diff OLD NEW               what changed in meaning between two revisions
          passband release PATH...            record the meaning of a revision that is signed
          passband judge LIMITS READINGS      verdicts on recorded readings
          passband history LIMITS READINGS... how a generator's readings drift
          passband format PATH... [--check]   the one layout of sources
          passband server                     the language server, for editors
          passband editor NAME                a file that makes an editor know the language
          passband completion SHELL           a script that completes commands in a shell
          passband explain [CODE]             a diagnostic, with an example and its mend; or all codes
          passband help [COMMAND]             this page, or a command's own
          passband version

        A PATH is a .pband file or a folder of them.
        Exit status: 0 nothing to report (warnings included), 1 faults found, revisions differ or a reading fails, 2 could not run.
        """;
  }

  static String of(String command) {
    return switch (command) {
      case "check" ->
          """
          passband check PATH... [--analyzer NAME] [--root DIR] [--as FORM] [--coverage]

          Finds faults in the procedures, devices, analyzers and leads of the files and of all that they use.
            --analyzer NAME   compile every procedure for this analyzer instead of its own
            --root DIR        the library root that no 'use' may leave
                              (a folder PATH is its own; a file's is the working directory)
            --as FORM         text, json or sarif (SARIF 2.1.0)
            --coverage        print what is tested of each device: modes, outlets, low, middle and high
            --watch           run again whenever a file that was read is saved
          """;
      case "build" ->
          """
          passband build PATH... [-o DIR] [--analyzer NAME] [--root DIR] [--paper SIZE] [--without PARTS]

          Checks, then writes for every procedure DIR/PROCEDURE/checklist.html, checklist.pdf, limits.csv,
          limits.csv-metadata.json, limits.json, setups/*.svg and limits/*.svg. With an error anywhere nothing is written.
          What has not changed since it was written is left as it stands; DIR/.built holds the digests that tell.
            -o, --out DIR     where to (out)
            --analyzer NAME   compile every procedure for this analyzer instead of its own
            --root DIR        the library root that no 'use' may leave
            --paper SIZE      a4 or letter (a4)
            --without PARTS   leave out pdf or pictures, or both: pdf,pictures
            --watch           run again whenever a file that was read is saved
            --depfile FILE    write a rule in Make's format: the outputs and every file that was read
          """;
      case "diff" ->
          """
          passband diff OLD NEW [--as FORM] [--root DIR] [--analyzer NAME]

          Compares compiled meaning, never text. OLD and NEW are files, folders or REVISION:PATH of git (the path from the
          repository's top). What can hurt most comes first; each change with the line that it comes from and the limits
          worked out again. Exit status: 0 the same, 1 different, 2 could not run (a fault in either among that).
            --as FORM         text, markdown, json or html (to print and sign)
            --root DIR        the library root that no 'use' may leave
            --analyzer NAME   compile both for this analyzer

          Git calls 'passband git-diff' (diff.NAME.command) and 'passband git-text' (diff.NAME.textconv).
          """;
      case "release" ->
          """
          passband release PATH... [--root DIR]

          Adds a line to released.txt beside each procedure's source: its name, revision, date and digest. From then on
          'check' refuses that revision with another meaning, and holds 'replaces "B" digest "..."' against it.
          """;
      case "judge" ->
          """
          passband judge LIMITS READINGS [--as FORM] [--date DAY]

          Compares readings with limits. LIMITS is limits.json (or limits.csv, without budgets); READINGS the sheet's
          readings.csv or any CSV with the columns point, reading, unit and, where there are phases, phase. Readings by
          another digest are refused. Exit status: 0 all pass, 1 one fails or is missing or unclear, 2 could not run.
            --as FORM         text, json or html (to print and sign)
            --date DAY        the day of the judgement: warns of a calibration that was due before it
          """;
      case "history" ->
          """
          passband history LIMITS READINGS READINGS... [--interval DAYS] [--as FORM]

          Puts the readings of several days side by side (the day is in each file's name or in a record 'date'), with the
          straight line of least squares, and warns where it leaves the accepted readings before the next interval ends.
            --interval DAYS   how long that is (365)
            --as FORM         text or html (with a plot for each point)
          """;
      case "format" ->
          """
          passband format PATH... [--check]

          Lays sources out in the one way: indents, spaces, columns. Words and comments stay as they are and where they
          are; a file with a syntax fault is left alone. Names the files that it changes.
            --check           change nothing; exit status 1 when a file is laid out otherwise
          """;
      case "explain" ->
          """
          passband explain [CODE...]

          Prints the manual's page of each code: what it means, why, an example and its mend. Without a code it lists
          all of them; 'passband explain bench' prints the bench that the examples use.
          """;
      case "server" ->
          """
          passband server

          The language server (Language Server Protocol 3.17) on standard input and output: faults as typed, completion,
          hover with the limits of a row, definitions, references, rename, outline, folding, layout, fixes, colours and the
          limits beside each row. An editor starts it; 'passband editor NAME' prints what tells the editor how.
          """;
      case "editor" ->
          """
          passband editor NAME

          Prints a file for editors, made from the language's own words and units: textmate (a TextMate grammar),
          language-configuration (comments and brackets), neovim or emacs (a piece of configuration that starts the server).
          """;
      case "completion" ->
          """
          passband completion SHELL

          Prints a script for bash, zsh or fish: eval "$(passband completion bash)" in the shell's start-up file, or
          passband completion fish > ~/.config/fish/completions/passband.fish
          """;
      default -> overview();
    };
  }
}
