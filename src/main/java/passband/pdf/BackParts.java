package passband.pdf;

import java.util.List;
import passband.render.Sheet;

/** The last page: room for readings that are taken again, and the result. */
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
    write.heading("Readings taken again");
    List<String> blank = List.of("", "", "", "");
    write.table(
        write.shares(0.1, 0.25, 0.25, 0.4),
        List.of("Line", "First reading", "Second reading", "What was checked"),
        List.of(blank, blank, blank));
    write.end();
    write.begin();
    write.heading("Result");
    write.ask("result-" + write.next(), PartWriter.ALONE, sheet.result());
    write.table(
        write.shares(0.18, 0.3, 0.32, 0.2),
        List.of("Who", "Name", "Signature", "Date"),
        List.of(
            List.of("Done by", "as on the first page", "", "as on the first page"),
            List.of("Reviewed by", "", "", "")));
    write.end();
  }
}
