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
    write.heading(write.says("again"));
    List<String> blank = List.of("", "", "", "");
    write.table(
        write.shares(0.1, 0.25, 0.25, 0.4),
        List.of(
            write.says("again.line"),
            write.says("again.first"),
            write.says("again.second"),
            write.says("again.checked")),
        List.of(blank, blank, blank));
    write.end();
    write.begin();
    write.heading(write.says("result"));
    write.ask("result-" + write.next(), PartWriter.ALONE, sheet.result());
    write.table(
        write.shares(0.18, 0.3, 0.32, 0.2),
        List.of(write.says("who"), write.says("name"), write.says("signature"), write.says("date")),
        List.of(
            List.of(write.says("done-by"), write.says("first-page"), "", write.says("first-page")),
            List.of(write.says("reviewed-by"), "", "", "")));
    write.end();
  }
}
