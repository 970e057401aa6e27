package passband.pdf;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import passband.draw.Drawing;
import passband.render.Sheet;
import passband.sequence.Seq;

/** From the sheet to parts on pages, in the order of the paper. */
final class SheetParts {
  private static final double SIZE = TextPart.SIZE;
  private static final double LIST_INDENT = 34;

  /** The size of a further setting's value. */
  static final double EXTRA_SIZE = 11;

  /** How high a row is that is written in by hand. */
  private static final double BY_HAND = 20;

  private final Sheet sheet;
  private final Fonts fonts;
  private final double inner;
  private final Flow flow;
  private String section = "Sect:front";
  private int serial;

  SheetParts(Sheet sheet, Fonts fonts, Paper paper) {
    this.sheet = sheet;
    this.fonts = fonts;
    this.inner = paper.inner();
    this.flow = new Flow(paper);
  }

  List<Flow.Page> pages() {
    front();
    for (Sheet.Block block : sheet.blocks()) {
      section = "Sect:block-" + serial++;
      if (block.run() != null) {
        run(block, block.run());
      } else {
        flow.label("");
        heading(block.title());
        note(block.note());
        steps(block.steps());
      }
    }
    back();
    return flow.pages();
  }

  // ---- text ----

  private TextBlock block(double size, boolean bold, double width, String text) {
    return TextBlock.of(fonts, size, width, bold, text);
  }

  private List<String> path(String... more) {
    List<String> path = new ArrayList<>(List.of(section));
    path.addAll(List.of(more));
    return path;
  }

  private void heading(String text) {
    flow.add(
        new TextPart(
            path("H2:" + serial++),
            block(13, true, inner, text),
            null,
            false,
            0,
            10,
            6,
            0,
            1.4,
            0,
            inner,
            true));
  }

  private void small(String text) {
    flow.add(
        TextPart.of(path("H3:" + serial++), block(10.5, true, inner, text), 5, 2, inner).kept());
  }

  private void note(String text) {
    if (text != null) {
      flow.add(paragraph(text, false));
    }
  }

  private TextPart paragraph(String text, boolean bold) {
    return TextPart.of(path("P:" + serial++), block(SIZE, bold, inner, text), 2, 3, inner);
  }

  private void caution(List<String> path, String text) {
    List<TextBlock.Span> spans =
        List.of(new TextBlock.Span("Caution.", true), new TextBlock.Span(text, false));
    TextBlock words = new TextBlock(fonts, 10.5, inner - 20, spans);
    flow.add(new TextPart(path, words, null, false, 0, 2, 3, 2, 0, 0, inner, false));
  }

  private void listed(String list, int number, String text, boolean tick, boolean keep) {
    double indent = tick ? LIST_INDENT : LIST_INDENT - 14;
    TextBlock words = block(SIZE, false, inner - indent, text);
    TextPart part =
        new TextPart(
            path("L:" + list, "LI:" + number),
            words,
            number + ".",
            tick,
            indent,
            1,
            2,
            0,
            0,
            0,
            inner,
            false);
    flow.add(keep ? part.kept() : part);
  }

  private void steps(List<Sheet.StepLine> steps) {
    String list = "steps-" + serial++;
    int number = 0;
    for (Sheet.StepLine step : steps) {
      number++;
      switch (step.kind()) {
        case "caution" -> caution(path("P:" + serial++), step.text());
        case "record" ->
            listed(list, number, step.text() + ": " + blank(step.unit()), false, false);
        case "choose" -> choose(list, number, step);
        default -> listed(list, number, step.text(), true, false);
      }
    }
  }

  private static String blank(String unit) {
    return "_".repeat(40) + (unit == null ? "" : " " + unit);
  }

  private void choose(String list, int number, Sheet.StepLine step) {
    listed(list, number, step.text(), false, true);
    for (int i = 0; i < step.outcomes().size(); i++) {
      String outcome = step.outcomes().get(i);
      String says = outcome + (outcome.equals(step.pass()) ? " (passes)" : "");
      TextPart part =
          new TextPart(
              path("L:" + list, "LI:" + number + "-" + i, "LBody"),
              block(SIZE, false, inner - 60, says),
              null,
              true,
              LIST_INDENT + 14,
              1,
              2,
              0,
              0,
              0,
              inner,
              false);
      flow.add(i + 1 < step.outcomes().size() ? part.kept() : part);
    }
  }

  // ---- tables ----

  private RowPart.Cell words(String text, boolean bold, double width, double size) {
    return RowPart.Words.of(block(size, bold, width - 7, text));
  }

  private RowPart.Cell head(String text, double width) {
    return new RowPart.Words(List.of(block(9, true, width - 7, text)), "TH");
  }

  private RowPart headRow(List<String> table, List<Double> widths, List<String> titles) {
    List<RowPart.Cell> cells = new ArrayList<>();
    for (int i = 0; i < titles.size(); i++) {
      cells.add(head(titles.get(i), widths.get(i)));
    }
    return new RowPart(table, "head", widths, List.of(cells), null, 0);
  }

  /** A table of words; blank rows are as high as a signature. */
  private void table(List<Double> widths, List<String> titles, List<List<String>> rows) {
    List<String> table = path("Table:" + serial++);
    RowPart head = headRow(table, widths, titles);
    flow.add(head);
    for (int i = 0; i < rows.size(); i++) {
      List<RowPart.Cell> cells = new ArrayList<>();
      for (int c = 0; c < widths.size(); c++) {
        String text = rows.get(i).get(c);
        cells.add(
            text.equals("\u2610")
                ? new RowPart.Ticks(List.of(List.of("")), SIZE)
                : text.isEmpty()
                    ? new RowPart.Blank(BY_HAND)
                    : words(text, false, widths.get(c), SIZE));
      }
      flow.add(
          new RowPart(table, "r" + i, widths, List.of(cells), head, i + 1 == rows.size() ? 4 : 0));
    }
  }

  private List<Double> shares(double... shares) {
    List<Double> widths = new ArrayList<>();
    for (double share : shares) {
      widths.add(inner * share);
    }
    return widths;
  }

  // ---- the first page ----

  private void front() {
    flow.add(TextPart.of(path("H1"), block(19, true, inner, sheet.title()), 0, 6, inner).kept());
    identity();
    heading("Cautions");
    sheet.cautions().forEach(c -> caution(path("P:" + serial++), c));
    note(
        "The maker\u2019s service manual, local codes and licensed practice come first; this sheet"
            + " takes the place of none of them.");
    heading("Collect");
    table(
        shares(0.07, 0.4, 0.18, 0.2, 0.15),
        List.of("No.", "Lead or link", "Colour", "Rating", "Here, sound"),
        Seq.of(sheet.leads())
            .map(
                l ->
                    List.of(
                        l.mark(),
                        l.title() + (l.kind().equals("link") ? " (link)" : ""),
                        l.colour(),
                        l.rating(),
                        "\u2610"))
            .toList());
    small("Settings as found");
    flow.add(paragraph("_".repeat(90), false));
    note(sheet.decision() + " Write every digit that the display shows.");
  }

  private void identity() {
    List<Double> widths = shares(0.14, 0.41, 0.17, 0.28);
    List<String> table = path("Table:identity");
    String[][] rows = {
      {"Procedure", sheet.name(), "Revision", sheet.revision() + ", " + sheet.date()},
      {"Generator", sheet.device(), "Serial number", ""},
      {"Analyzer", sheet.analyzer(), "Serial, cal. due", ""},
      {"Done by", "", "Day", ""}
    };
    for (int i = 0; i < rows.length; i++) {
      List<RowPart.Cell> cells = new ArrayList<>();
      for (int c = 0; c < 4; c++) {
        boolean heads = c % 2 == 0;
        TextBlock text = block(SIZE, heads, widths.get(c) - 7, rows[i][c]);
        cells.add(new RowPart.Words(List.of(text), heads ? "TH:row" : "TD"));
      }
      flow.add(new RowPart(table, "i" + i, widths, List.of(cells), EMPTY, 0));
    }
    List<Double> two = shares(0.14, 0.86);
    flow.add(
        new RowPart(
            table,
            "digest",
            two,
            List.of(
                List.of(
                    new RowPart.Words(
                        List.of(block(SIZE, true, two.get(0) - 7, "Digest")), "TH:row"),
                    new RowPart.Words(
                        List.of(block(8.5, false, two.get(1) - 7, sheet.digest())), "TD", 3))),
            EMPTY,
            4));
  }

  /** For a table that has no heading to say again. */
  private static final RowPart EMPTY = new RowPart(List.of(), "", List.of(), List.of(), null, 0);

  // ---- runs ----

  private void run(Sheet.Block block, Sheet.RunPart run) {
    flow.label(run.outlet() == null ? "" : run.outlet());
    String phase = run.phase() == null ? "" : " (" + run.phase() + ")";
    heading(block.number() + ". " + block.title() + phase);
    if (run.outlet() != null) {
      TextBlock name = block(24, true, inner - 30, run.outlet());
      flow.add(
          new TextPart(
              path("P:outlet-" + serial++), name, null, false, 0, 2, 6, 0, 0, 13, inner, true));
    }
    if (run.setup() != null) {
      flow.add(setup(run));
    }
    if (run.enter() != null) {
      small("Enter " + run.stateTitle());
      listed("enter-" + serial++, 1, run.enter(), true, false);
    }
    steps(run.before());
    run.groups().forEach(g -> group(g));
    run.formulas().forEach(f -> note(f));
    if (run.leave() != null) {
      small("Leave " + run.stateTitle());
      listed("leave-" + serial++, 1, run.leave(), true, false);
    }
    steps(run.after());
  }

  private SetupPart setup(Sheet.RunPart run) {
    Drawing drawing = run.drawing();
    double wide = SetupPart.textWidth(drawing, inner);
    double move = SetupPart.moveWidth(drawing, inner);
    List<TextBlock> moves = Seq.of(run.moves()).map(m -> block(SIZE, false, move, m)).toList();
    String said =
        run.moves().isEmpty()
            ? "The leads stay as they are."
            : run.stays().isEmpty()
                ? null
                : "In place already: " + String.join(", ", run.stays()) + ".";
    TextBlock off =
        new TextBlock(
            fonts,
            SIZE,
            wide,
            List.of(
                new TextBlock.Span("Output off", true),
                new TextBlock.Span("before any lead is touched.", false)));
    return new SetupPart(
        path("Div:setup-" + serial++),
        drawing,
        block(10.5, true, wide, run.setup()),
        off,
        moves,
        said == null ? null : block(SIZE, false, wide, said),
        inner);
  }

  private void group(Sheet.Group group) {
    small(group.title() == null ? "Readings" : group.title());
    String list = "how-" + serial++;
    for (int i = 0; i < group.steps().size(); i++) {
      listed(list, i + 1, group.steps().get(i), false, true);
    }
    TableColumns columns = new TableColumns(group, fonts, inner);
    List<String> table = path("Table:" + serial++);
    RowPart head = headRow(table, columns.widths(), columns.titles());
    flow.add(head);
    for (int i = 0; i < group.lines().size(); i++) {
      boolean last = i + 1 == group.lines().size();
      flow.add(line(table, columns, head, group, group.lines().get(i), last ? 6 : 0));
    }
  }

  private RowPart line(
      List<String> table,
      TableColumns columns,
      RowPart head,
      Sheet.Group group,
      Sheet.Line line,
      double after) {
    List<List<RowPart.Cell>> lines = new ArrayList<>();
    for (Sheet.Box box : line.boxes()) {
      List<RowPart.Cell> cells = new ArrayList<>();
      boolean first = lines.isEmpty();
      beside(cells, first, Integer.toString(line.number()), columns, 11);
      if (group.hasSetting()) {
        beside(cells, first, text(line.setting()), columns, 12);
      }
      line.extras().forEach(e -> beside(cells, first, e, columns, EXTRA_SIZE));
      if (group.hasLoad()) {
        beside(cells, first, text(line.load()), columns, 12);
      }
      cells.add(reading(box, line.boxes().size() > 1, columns.width(cells.size())));
      cells.add(limits(box, columns.width(cells.size())));
      List<List<String>> ticks =
          box.judged()
              ? List.of(List.of("pass", "fail"), List.of("not done"))
              : List.of(List.of("not done"));
      cells.add(new RowPart.Ticks(ticks, 9));
      if (group.hasTimes()) {
        cells.add(first ? times(line, columns.width(cells.size())) : null);
      }
      lines.add(Collections.unmodifiableList(cells));
    }
    return new RowPart(table, "line-" + line.number(), columns.widths(), lines, head, after);
  }

  private RowPart.Cell times(Sheet.Line line, double width) {
    List<TextBlock> blocks = new ArrayList<>();
    if (line.on() != null) {
      blocks.add(block(9, false, width - 7, "on " + line.on()));
    }
    if (line.rest() != null) {
      blocks.add(block(9, false, width - 7, "rest " + line.rest()));
    }
    return new RowPart.Words(blocks, "TD");
  }

  private static String text(String value) {
    return value == null ? "" : value;
  }

  private void beside(
      List<RowPart.Cell> cells, boolean first, String text, TableColumns columns, double size) {
    cells.add(first ? words(text, true, columns.width(cells.size()), size) : null);
  }

  private RowPart.Cell reading(Sheet.Box box, boolean named, double width) {
    TextBlock title = named ? block(8.5, false, width - 7, box.title()) : null;
    return new RowPart.Digits(title, box.cells(), box.unit());
  }

  private RowPart.Cell limits(Sheet.Box box, double width) {
    List<TextBlock> blocks = new ArrayList<>();
    blocks.add(block(11, box.judged(), width - 7, box.limits()));
    if (box.tolerance() != null) {
      blocks.add(block(8.5, false, width - 7, "tolerance " + box.tolerance()));
    }
    return new RowPart.Words(blocks, "TD");
  }

  // ---- the last pages ----

  private void back() {
    section = "Sect:end";
    flow.label("");
    heading("If a reading fails");
    note(
        "Stop. Output off. Check the lead, the jack and the load, and read once more; keep both"
            + " readings. If it fails again, tag the generator out of service and follow the"
            + " maker\u2019s service manual.");
    List<String> blank = List.of("", "", "", "");
    table(
        shares(0.1, 0.25, 0.25, 0.4),
        List.of("Line", "First reading", "Second reading", "What was checked"),
        List.of(blank, blank, blank));
    small("If you stop here");
    note(
        "Output off, state left as above, leads off the generator first. Tick \u201cnot done\u201d"
            + " on every line that is left: an unread line is not a pass.");
    heading("Result");
    String list = "result-" + serial++;
    listed(list, 1, "every line passed", true, true);
    listed(list, 2, "a line failed: out of service", true, true);
    listed(list, 3, "incomplete", true, true);
    table(
        shares(0.18, 0.3, 0.32, 0.2),
        List.of("Who", "Name", "Signature", "Date"),
        List.of(List.of("Done by", "", "", ""), List.of("Reviewed by", "", "", "")));
    reviewer();
  }

  private void reviewer() {
    if (sheet.allowed().isEmpty() && sheet.pictures().isEmpty()) {
      return;
    }
    section = "Sect:reviewer";
    heading("For the reviewer");
    if (!sheet.allowed().isEmpty()) {
      small("Warnings allowed");
      note("The compiler warned of these, and the source gives a reason to let them stand.");
      table(
          shares(0.32, 0.2, 0.48),
          List.of("Warning", "Where", "Reason given"),
          Seq.of(sheet.allowed())
              .map(a -> List.of(a.title() + " [" + a.code() + "]", a.place(), a.reason()))
              .toList());
    }
    if (!sheet.pictures().isEmpty()) {
      small("Where the limits lie");
      for (int i = 0; i < sheet.pictures().size(); i += 2) {
        List<Drawing> two = sheet.pictures().subList(i, Math.min(i + 2, sheet.pictures().size()));
        flow.add(new PicturesPart(path("Div:pictures"), two, inner));
      }
    }
  }
}
