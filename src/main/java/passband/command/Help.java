package passband.command;

/** What {@code help} prints. */
final class Help {
  private Help() {}

  static String overview() {
    return """
        passband: output-verification procedures of medical generators, from text to checked limits and a checklist

          passband check PATH...              find faults
          passband build PATH... [-o out]     check, then write each procedure's checklist and limit tables
          passband help [COMMAND]             this page, or a command's own
          passband version

        A PATH is a .pband file or a folder of them.
        Exit status: 0 nothing to report (warnings included), 1 faults found, 2 could not run.
        """;
  }

  static String of(String command) {
    return switch (command) {
      case "check" ->
          """
          passband check PATH... [--analyzer NAME] [--root DIR]

          Finds faults in the procedures, devices, analyzers and leads of the files and of all that they use.
            --analyzer NAME   compile every procedure for this analyzer instead of its own
            --root DIR        the library root that no 'use' may leave
                              (a folder PATH is its own; a file's is the working directory)
          """;
      case "build" ->
          """
          passband build PATH... [-o DIR] [--analyzer NAME] [--root DIR]

          Checks, then writes for every procedure DIR/PROCEDURE/checklist.html, limits.csv, limits.csv-metadata.json
          and limits.json. With an error anywhere nothing is written.
            -o, --out DIR     where to (out)
            --analyzer NAME   compile every procedure for this analyzer instead of its own
            --root DIR        the library root that no 'use' may leave
          """;
      default -> overview();
    };
  }
}
