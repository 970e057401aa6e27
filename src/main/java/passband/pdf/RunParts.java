package passband.pdf;

import java.util.List;
import passband.draw.Drawing;
import passband.render.Sheet;

/** One run of a test: the leads, the state and the readings. */
final class RunParts {
  private static final double SIZE = TextPart.SIZE;

  private final PartWriter write;

  RunParts(PartWriter write) {
    this.write = write;
  }

  void add(Sheet.Block block, Sheet.RunPart run) {
    write.label(run.outlet() == null ? "" : run.outlet());
    String phase = run.phase() == null ? "" : " (" + run.phase() + ")";
    write.heading(block.number() + ". " + block.title() + phase);
    if (block.note() != null) {
      write.add(write.paragraph(block.note(), false).kept());
    }
    if (run.outlet() != null) {
      TextBlock name = write.block(24, true, write.inner() - 30, run.outlet());
      write.add(
          TextPart.of(write.path("P:outlet-" + write.next()), name, 2, 6, write.inner())
              .barred(13)
              .kept());
    }
    if (run.setup() != null) {
      write.add(setup(run.setup()));
    }
    Sheet.StateLines state = run.state();
    if (state != null) {
      write.small("Enter " + state.title());
      write.ask("enter-" + write.next(), PartWriter.ALONE, state.enter());
    }
    write.steps(run.before());
    run.groups().forEach(g -> group(g));
    run.formulas().forEach(f -> write.note(f));
    if (state != null) {
      write.small("Leave " + state.title());
      write.ask("leave-" + write.next(), PartWriter.ALONE, state.leave());
    }
    write.steps(run.after());
  }

  private SetupPart setup(Sheet.SetupLines setup) {
    Drawing drawing = setup.drawing();
    double wide = SetupPart.textWidth(drawing, write.inner());
    double move = SetupPart.moveWidth(drawing, write.inner());
    List<SetupPart.Ticked> moves =
        setup.moves().stream()
            .map(m -> new SetupPart.Ticked(write.block(SIZE, false, move, m.text()), m.id()))
            .toList();
    String said =
        setup.moves().isEmpty()
            ? "Leave the leads as they are."
            : setup.stays().isEmpty()
                ? null
                : "Already in place: " + String.join(", ", setup.stays()) + ".";
    TextBlock off =
        new TextBlock(
            write.fonts(),
            SIZE,
            wide,
            List.of(
                new TextBlock.Span("Output off", true),
                new TextBlock.Span("before you touch any lead.", false)));
    return new SetupPart(
        write.path("Div:setup-" + write.next()),
        drawing,
        write.block(10.5, true, wide, setup.title()),
        off,
        moves,
        said == null ? null : write.block(SIZE, false, wide, said),
        write.inner());
  }

  private void group(Sheet.Group group) {
    write.small(group.title() == null ? "Readings" : group.title());
    String list = "how-" + write.next();
    int number = 0;
    for (Sheet.StepLine step : group.steps()) {
      if (step.kind().equals("caution")) {
        write.caution(write.path("P:" + write.next()), step.text());
      } else {
        write.listed(list, ++number, step.text(), true);
      }
    }
    TableColumns columns = new TableColumns(group, write.fonts(), write.inner());
    List<String> table = write.path("Table:" + write.next());
    RowPart head = write.headRow(table, columns.widths(), columns.titles());
    write.add(head);
    ReadingRows readings = new ReadingRows(table, columns, head, group, write);
    for (int i = 0; i < group.lines().size(); i++) {
      boolean last = i + 1 == group.lines().size();
      Sheet.Line line = group.lines().get(i);
      write.add(readings.line(line, last ? 6 : 0));
      line.asks().forEach(ask -> asked(line, ask));
    }
  }

  /** What a step of one line asks for. */
  private void asked(Sheet.Line line, Sheet.Ask ask) {
    String text = "Line " + line.number() + ": " + ask.text();
    write.ask(
        "line-" + write.next(),
        PartWriter.ALONE,
        new Sheet.Ask(ask.id(), ask.kind(), text, ask.unit(), ask.options(), ask.pass()));
  }
}
