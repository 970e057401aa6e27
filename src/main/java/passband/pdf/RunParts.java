package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
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
    String last = setup.moves().size() + ".";
    double numbers = Math.max(16, write.fonts().width(last, SIZE, true) + 3);
    SetupPart.Columns columns = SetupPart.Columns.beside(drawing, write.inner(), numbers);
    List<SetupPart.Paragraph> words = new ArrayList<>();
    TextBlock name = write.block(10.5, true, columns.words(), setup.title());
    words.add(new SetupPart.Paragraph("H3", name, 3, null));
    words.add(new SetupPart.Paragraph("P:off", outputOff(columns.words()), 4, null));
    for (int i = 0; i < setup.moves().size(); i++) {
      Sheet.Ask move = setup.moves().get(i);
      TextBlock text = write.block(SIZE, false, columns.move(), move.text());
      words.add(new SetupPart.Paragraph("LI:" + i, text, 4, move.id()));
    }
    String stays = stays(setup);
    if (stays != null) {
      TextBlock said = write.block(SIZE, false, columns.words(), stays);
      words.add(new SetupPart.Paragraph("P:said", said, 2, null));
    }
    return new SetupPart(
        write.path("Div:setup-" + write.next()), drawing, words, columns, write.inner());
  }

  private TextBlock outputOff(double width) {
    return new TextBlock(
        write.fonts(),
        SIZE,
        width,
        List.of(
            new TextBlock.Span("Output off", true),
            new TextBlock.Span("before you touch any lead.", false)));
  }

  /** What is said of leads that stay; null where all are moved. */
  private static @Nullable String stays(Sheet.SetupLines setup) {
    if (setup.moves().isEmpty()) {
      return "Leave the leads as they are.";
    }
    return setup.stays().isEmpty()
        ? null
        : "Already in place: " + String.join(", ", setup.stays()) + ".";
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
    table(group);
  }

  private void table(Sheet.Group group) {
    ReadingRows readings = new ReadingRows(write.path("Table:" + write.next()), group, write);
    write.add(readings.head());
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
    write.ask("line-" + write.next(), PartWriter.ALONE, ask.saying(text));
  }
}
