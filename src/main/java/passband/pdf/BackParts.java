package passband.pdf;

import java.util.List;
import passband.render.Sheet;

/** The last pages: what to do when a reading fails, and the result. */
final class BackParts {
  private final Sheet sheet;
  private final PartWriter write;

  BackParts(Sheet sheet, PartWriter write) {
    this.sheet = sheet;
    this.write = write;
  }

  void add() {
    write.section("Sect:end");
    write.label("");
    write.begin();
    write.heading("If a reading fails");
    write.note(
        "Stop. Output off. Check the lead, the jack and the load, and take the reading once more;"
            + " of a value that is calculated, all its readings. Keep both. If it fails again, tag the"
            + " generator out of service and follow the maker\u2019s service manual.");
    List<String> blank = List.of("", "", "", "");
    write.table(
        write.shares(0.1, 0.25, 0.25, 0.4),
        List.of("Line", "First reading", "Second reading", "What was checked"),
        List.of(blank, blank, blank));
    write.small("If you stop here");
    write.note(
        "Turn the output off, leave the state as described above and disconnect the leads, at the"
            + " generator first. Tick \u201cnot done\u201d on every remaining line: a line without a"
            + " reading is not a pass.");
    write.end();
    write.begin();
    write.heading("Result");
    write.ask("result-" + write.next(), PartWriter.ALONE, sheet.result());
    write.table(
        write.shares(0.18, 0.3, 0.32, 0.2),
        List.of("Who", "Name", "Signature", "Date"),
        List.of(List.of("Done by", "", "", ""), List.of("Reviewed by", "", "", "")));
    write.end();
  }
}
