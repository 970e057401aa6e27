package passband.pdf;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.render.Sheet;

/** From the sheet to parts on pages, in the order of the paper. */
final class SheetParts {
  private final Sheet sheet;
  private final PartWriter write;

  SheetParts(Sheet sheet, Fonts fonts, Paper paper) {
    this.sheet = sheet;
    this.write = new PartWriter(sheet.head().language(), fonts, paper);
  }

  List<Flow.Page> pages() {
    new FrontParts(sheet, write).add();
    // The outlet whose name stands above, and what has to be met for the part that says it.
    @Nullable String outlet = null;
    @Nullable String branch = null;
    for (Sheet.Block block : sheet.blocks()) {
      write.section("Sect:block-" + write.next());
      if (block.run() != null) {
        Sheet.RunPart run = block.run();
        boolean left = branch != null && !branch.isEmpty() && !branch.equals(block.branch());
        new RunParts(write, block, run).add(!left && Objects.equals(outlet, run.outlet()));
        outlet = run.outlet();
        branch = block.branch();
      } else {
        outlet = null;
        branch = null;
        write.label("");
        write.begin();
        write.heading(block.title());
        write.note(block.note());
        write.asks(block.adjusted() == null ? List.of() : List.of(block.adjusted()));
        write.asks(block.moves());
        write.steps(block.steps());
        write.end();
      }
    }
    new BackParts(sheet, write).add();
    return write.pages();
  }
}
