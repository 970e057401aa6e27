package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import passband.render.Sheet;

/** One run of a test: the leads, the state and the readings. */
final class RunParts {
  private static final double SIZE = TextPart.SIZE;

  private final PartWriter write;
  private final Sheet.Block block;
  private final Sheet.RunPart run;

  RunParts(PartWriter write, Sheet.Block block, Sheet.RunPart run) {
    this.write = write;
    this.block = block;
    this.run = run;
  }

  /**
   * Writes them.
   *
   * @param named whether the outlet's name stands above already
   */
  void add(boolean named) {
    write.label(run.outlet() == null ? "" : run.outlet());
    write.begin();
    if (run.outlet() != null && !named) {
      TextBlock name = write.block(24, true, write.inner() - 30, run.outlet());
      write.add(
          TextPart.of(write.path("P:outlet-" + write.next()), name, 8, 4, write.inner())
              .barred(13)
              .kept());
    }
    String outlet = run.outlet() == null || !named ? "" : " \u00b7 " + run.outlet();
    TextPart heading = write.heading(title() + outlet);
    Part continued = write.paragraph(write.says("continued", title()), true);
    if (block.note() != null) {
      write.add(write.paragraph(block.note(), false).kept());
    }
    if (run.setup() != null) {
      setup(run.setup());
    }
    Sheet.StateLines state = run.state();
    if (state != null) {
      write.small(write.says("enter", state.title()));
      write.ask("enter-" + write.next(), PartWriter.ALONE, state.enter());
    }
    write.steps(run.before());
    for (int i = 0; i < run.groups().size(); i++) {
      boolean last = i + 1 == run.groups().size();
      List<String> formulas = last ? run.formulas() : List.of();
      group(run.groups().get(i), new Part.Heading(heading, continued), formulas);
    }
    if (state != null) {
      write.small(write.says("leave", state.title()));
      write.ask("leave-" + write.next(), PartWriter.ALONE, state.leave());
    }
    write.steps(run.after());
    write.end();
  }

  private String title() {
    String phase = run.phase() == null ? "" : " (" + run.phase() + ")";
    return block.number() + ". " + block.title() + phase;
  }

  private void setup(Sheet.SetupLines setup) {
    if (setup.drawing() == null && !setup.changes()) {
      List<TextBlock.Span> words =
          List.of(
              new TextBlock.Span(setup.title() + ":", true),
              new TextBlock.Span(write.says("leads.stay"), false));
      TextBlock text = new TextBlock(write.fonts(), SIZE, write.inner(), words);
      write.add(TextPart.of(write.path("P:" + write.next()), text, 2, 3, write.inner()).kept());
    } else {
      write.add(wiring(setup));
    }
  }

  private SetupPart wiring(Sheet.SetupLines setup) {
    double width = SetupPart.width(setup.drawing(), write.inner());
    List<String> path = write.path("Div:setup-" + write.next());
    List<Part> words = new ArrayList<>();
    words.add(text(path, "H3", write.block(10.5, true, width, setup.title()), width));
    if (setup.drawnAt() != null) {
      String drawn = write.says("leads.drawn", setup.drawnAt());
      words.add(text(path, "P:drawn", write.block(SIZE, false, width, drawn), width));
    }
    words.add(text(path, "P:off", outputOff(width), width));
    words.addAll(WiringTable.of(write, path, setup, width));
    return new SetupPart(path, setup.drawing(), words, write.inner());
  }

  private static TextPart text(List<String> path, String role, TextBlock text, double width) {
    List<String> longer = new ArrayList<>(path);
    longer.add(role);
    return TextPart.of(longer, text, 0, 3, width);
  }

  private TextBlock outputOff(double width) {
    return new TextBlock(
        write.fonts(),
        SIZE,
        width,
        List.of(
            new TextBlock.Span(write.says("output-off"), true),
            new TextBlock.Span(write.says("output-off.leads"), false)));
  }

  private void group(Sheet.Group group, Part.Heading under, List<String> formulas) {
    String title = group.title() == null ? write.says("readings") : group.title();
    write.begin();
    List<Sheet.Line> lines = group.lines();
    String heading =
        lines.size() == 1
            ? write.says("group.one", title, lines.get(0).number())
            : write.says("group.each", title);
    write.add(write.smallPart(heading).under(under));
    List<Part> steps = StepsOfGroup.of(group, write);
    steps.forEach(write::add);
    List<Part> above = new ArrayList<>();
    above.add(write.paragraph(write.says("continued", title() + ", " + title), true));
    above.addAll(steps);
    table(group, above, formulas);
    write.end();
  }

  /** A line with what its steps ask for, and the formulas with the last, are on one page. */
  private void table(Sheet.Group group, List<Part> above, List<String> formulas) {
    ReadingRows readings =
        new ReadingRows(write.path("Table:" + write.next()), group, above, write);
    write.add(readings.head());
    for (int i = 0; i < group.lines().size(); i++) {
      boolean last = i + 1 == group.lines().size();
      Sheet.Line line = group.lines().get(i);
      write.together(true);
      write.add(readings.line(line, last ? 5 : 0));
      line.asks().forEach(ask -> asked(line, ask));
      if (last) {
        formulas.forEach(write::note);
      }
      write.together(false);
    }
  }

  /** What a step of one line asks for. */
  private void asked(Sheet.Line line, Sheet.Ask ask) {
    String text = write.says("line", line.number(), ask.text());
    write.ask("line-" + write.next(), PartWriter.ALONE, ask.saying(text));
  }
}
