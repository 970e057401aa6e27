package passband.command;

import java.util.List;

/** The commands for what was read: readings, verdicts, records. */
final class RecordCommands {
  private static final Operand LIMITS = Operand.of("LIMITS", ArgumentKind.FILE);
  private static final Operand READINGS = Operand.of("READINGS", ArgumentKind.FILE);
  private static final Option JUDGED_ON =
      Option.of(
          "--date",
          ArgumentKind.DATE,
          "DATE",
          "date of the judgement (YYYY-MM-DD): warns if a calibration has run out since the"
              + " readings");

  static final List<CommandSpec> ALL =
      List.of(
          new CommandSpec(
              "readings",
              List.of(LIMITS),
              "print the empty table of readings for a sheet filled in on paper",
              """
              Prints a CSV table with a line for each item of LIMITS, a limits.json file, in the order of the sheet: what
              is set and accepted, what may be written, the unit, and the columns that 'judge' reads. Fill in the column
              'reading'; leave it empty where the item was not done or does not apply. A value that was read again is
              another line with 'attempt' 2, with why in 'reason' and who in 'by'; an item that could not be done has the
              kind 'not-done' and a reason. Derived values have no line: 'judge' calculates them. The settings, load and
              limits of a line are compared with LIMITS when it is judged, so a line that was moved is refused.
              """,
              List.of(CommandSpec.TO_FILE),
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
                  JUDGED_ON,
                  CommandSpec.TO_FILE),
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
                  JUDGED_ON,
                  CommandSpec.TO_FILE),
              true),
          new CommandSpec(
              "verify",
              List.of(Operand.of("RECORD", ArgumentKind.FILE)),
              "judge a record again from its parts",
              """
              Makes the record again from the limits and readings that it holds, and says whether anything in it was
              altered: its seal, the digest of a part, or what it says of a verdict. Whoever can write a record can also
              seal a forged one; --seal compares it with the seal on the signed report. --as html prints the report
              again, with what is wrong at its head. Of a folder every .json file below it is verified and named; the
              worst decides. Exit status: 0 unaltered, 1 altered, 2 no record.
              """,
              List.of(
                  Option.oneOf("--as", "FORM", List.of("text", "html"), "output format"),
                  Option.of(
                      "--seal",
                      ArgumentKind.NAME,
                      "SEAL",
                      "the seal on the signed report, or at least its first eight digits"),
                  CommandSpec.TO_FILE),
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
                  Option.oneOf("--as", "FORM", List.of("text", "json", "html"), "output format"),
                  CommandSpec.TO_FILE),
              true),
          new CommandSpec(
              "fleet",
              List.of(Operand.of("FOLDER", ArgumentKind.FOLDER)),
              "put the records of many generators together",
              """
              Reads every .json file below FOLDER as a record: when each generator was last done and is due, how often
              a model and a point failed as found, and what drifts towards its limits. A file that is no record, was
              changed after it was written, is of an unknown format, holds the same readings as another or is of a day
              yet to come is named and left out of every total. Seals are checked; 'verify' judges a record again. Each
              procedure by which a generator is visited is due by itself, and at once where its last visit was not
              passed; of two visits on one day the worse counts as the last. A reading that was taken again counts by its
              last attempt. --instrument lists the records that used the instrument with that serial number, and those
              that do not tell. Serial numbers are the same in any case and with any dashes. Exit status: 1 if a file
              was left out or does not tell.
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
                  Option.oneOf("--as", "FORM", List.of("text", "csv", "html"), "output format"),
                  CommandSpec.TO_FILE),
              true));

  private RecordCommands() {}
}
