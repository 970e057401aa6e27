package passband.pdf;

import java.util.List;
import passband.render.Sheet;

/** From the sheet to parts on pages, in the order of the paper. */
final class SheetParts {
  private final Sheet sheet;
  private final PartWriter write;

  SheetParts(Sheet sheet, Fonts fonts, Paper paper) {
    this.sheet = sheet;
    this.write = new PartWriter(fonts, paper);
  }

  List<Flow.Page> pages() {
    new FrontParts(sheet, write).add();
    for (Sheet.Block block : sheet.blocks()) {
      write.section("Sect:block-" + write.next());
      if (block.run() != null) {
        new RunParts(write).add(block, block.run());
      } else {
        // A gate closes what stands before it, and needs no page of its own.
        if (!block.kind().equals("gate")) {
          write.label("");
        }
        write.heading(block.title());
        write.note(block.note());
        write.asks(block.adjusted() == null ? List.of() : List.of(block.adjusted()));
        write.asks(block.moves());
        write.steps(block.steps());
      }
    }
    new BackParts(sheet, write).add();
    return write.pages();
  }
}
