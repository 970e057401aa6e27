package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import passband.render.Sheet;

/** The first page: what is tested, the cautions, and what to collect. */
final class FrontParts {
  private static final double SIZE = TextPart.SIZE;

  private final Sheet sheet;
  private final PartWriter write;

  FrontParts(Sheet sheet, PartWriter write) {
    this.sheet = sheet;
    this.write = write;
  }

  void add() {
    write.add(
        TextPart.of(
                write.path("H1"),
                write.block(19, true, write.inner(), sheet.head().title()),
                0,
                6,
                write.inner())
            .kept());
    identity();
    write.begin();
    write.heading("Cautions");
    sheet.cautions().forEach(c -> write.caution(write.path("P:" + write.next()), c));
    write.note(
        "The maker\u2019s service manual, local codes and licensed practice come first; this sheet"
            + " does not replace them.");
    write.end();
    write.begin();
    write.heading("Collect");
    collect();
    write.end();
    write.note(sheet.head().decision() + " Write every digit that the display shows.");
  }

  /** The leads, each with a box to tick. */
  private void collect() {
    List<Double> widths = write.shares(0.07, 0.4, 0.18, 0.2, 0.15);
    List<String> table = write.path("Table:collect");
    RowPart row =
        write.headRow(
            table,
            widths,
            List.of("No.", "Lead or link", "Colour", "Rating", "Present and undamaged"));
    write.add(row);
    Part.Heading head = Part.Heading.of(row);
    for (Sheet.LeadLine lead : sheet.leads()) {
      String title = lead.title() + (lead.kind().equals("link") ? " (link)" : "");
      List<String> texts = List.of(lead.mark(), title, lead.colour(), lead.rating());
      List<TableCell> cells = new ArrayList<>();
      for (int c = 0; c < texts.size(); c++) {
        cells.add(write.words(texts.get(c), false, widths.get(c), SIZE));
      }
      cells.add(write.ticks(List.of(List.of("")), widths.get(4), lead.present().id()));
      boolean last = lead == sheet.leads().get(sheet.leads().size() - 1);
      write.add(new RowPart(table, "r" + lead.mark(), widths, cells, head, last ? 4 : 0));
    }
  }

  private void identity() {
    List<Double> widths = write.shares(0.14, 0.41, 0.17, 0.28);
    List<String> table = write.path("Table:identity");
    String[][] rows = {
      {
        "Procedure",
        sheet.head().name(),
        "Revision",
        sheet.head().revision() + ", " + sheet.head().date()
      },
      {"Generator", sheet.head().device(), "Analyzer", sheet.head().analyzer()}
    };
    for (int i = 0; i < rows.length; i++) {
      List<TableCell> cells = new ArrayList<>();
      for (int c = 0; c < 4; c++) {
        boolean heads = c % 2 == 0;
        TextBlock text = write.block(SIZE, heads, widths.get(c) - 7, rows[i][c]);
        cells.add(new WordsCell(List.of(text), heads ? "TH:row" : "TD"));
      }
      write.add(new RowPart(table, "i" + i, widths, cells, RowPart.NO_HEAD, 0));
    }
    List<Double> two = write.shares(0.14, 0.86);
    write.add(
        new RowPart(
            table,
            "digest",
            two,
            List.of(
                new WordsCell(List.of(write.block(SIZE, true, two.get(0) - 7, "Digest")), "TH:row"),
                new WordsCell(
                    List.of(write.block(8.5, false, two.get(1) - 7, sheet.head().digest())),
                    "TD",
                    3)),
            RowPart.NO_HEAD,
            4));
    asked();
  }

  /** What is asked of the whole visit, two to a row. */
  private void asked() {
    List<Double> widths = write.shares(0.17, 0.33, 0.17, 0.33);
    List<String> table = write.path("Table:asked");
    List<Sheet.Ask> asked = sheet.identity();
    for (int i = 0; i < asked.size(); i += 2) {
      List<TableCell> cells = new ArrayList<>();
      for (int c = 0; c < 2; c++) {
        String title = i + c < asked.size() ? asked.get(i + c).text() : "";
        TextBlock heading = write.block(SIZE, true, widths.get(2 * c) - 7, title);
        cells.add(new WordsCell(List.of(heading), "TH:row"));
        String item = i + c < asked.size() ? asked.get(i + c).id() : null;
        cells.add(new BlankCell(PartWriter.BY_HAND, item));
      }
      double after = i + 2 >= asked.size() ? 4 : 0;
      write.add(new RowPart(table, "asked" + i, widths, cells, RowPart.NO_HEAD, after));
    }
  }
}
