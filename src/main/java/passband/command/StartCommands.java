package passband.command;

import java.util.List;

/** The part of the {@link CommandTable} with which a library begins. */
final class StartCommands {
  static final List<CommandSpec> ALL =
      List.of(
          new CommandSpec(
              "new",
              List.of(Operand.of("FOLDER", ArgumentKind.FOLDER).orNone()),
              "write a small library with comments, to change into your own",
              """
              Writes generator.pband, bench.pband and output.pband into FOLDER (default: the working folder), with the file
              passband.library that marks the root of a library. They build as they are; the comments say what to change.
              It asks nothing and replaces no file: if one of them is there, nothing is written.
              """,
              List.of(),
              true),
          new CommandSpec(
              "transcribe",
              List.of(Operand.of("TABLE", ArgumentKind.FILE)),
              "make a draft from a service manual's table of limits",
              """
              Reads a CSV file (commas, semicolons or tabs) with the columns of a manual: outlet; mode; power, energy or
              level; load; limits in one column or in two, on one side or on both; perhaps nominal, tolerance (both are
              compared with the limits) and note. Units stand in the headings ('Load/ohm') or the cells. A heading that
              names a peak or a leakage is of that. Finds the simplest rule that prints these limits: of the setting or
              of what is read, a share, an amount or both, and how it was rounded. Writes DIR/TABLE.pband, a draft that
              compiles: generator, placeholders for the bench, procedure. Its section 'To settle before this draft is
              used' names the rows that no rule explains, which are probably misprints, and what cannot be told from the
              table; where that is the rule, the limits stay the table's own. No file is replaced. --as json prints what
              was found for programs.
              """,
              List.of(
                  Option.of("--out", ArgumentKind.FOLDER, "DIR", "output folder")
                      .or("-o")
                      .orElse("."),
                  Option.oneOf(
                      "--decimal", "MARK", List.of("point", "comma"), "decimal mark of the table"),
                  Option.of(
                      "--date",
                      ArgumentKind.DATE,
                      "DATE",
                      "date of the draft (YYYY-MM-DD; else today)"),
                  Option.oneOf("--as", "FORM", List.of("text", "json"), "output format")),
              true));

  private StartCommands() {}
}
