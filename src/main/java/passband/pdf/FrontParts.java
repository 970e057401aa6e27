package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.render.Sheet;

/**
 * The first page: what is tested, the cautions, what to collect, and what to do when a reading
 * fails.
 */
final class FrontParts {
  private static final double SIZE = TextPart.SIZE;

  /** So many leads or more stand in two columns. */
  private static final int MANY = 6;

  /** The parts of the width that the columns of the leads have, in one column and in two. */
  private static final List<List<Double>> SHARES =
      List.of(List.of(0.07, 0.4, 0.18, 0.2, 0.15), List.of(0.035, 0.165, 0.08, 0.1, 0.12));

  private final Sheet sheet;
  private final PartWriter write;

  FrontParts(Sheet sheet, PartWriter write) {
    this.sheet = sheet;
    this.write = write;
  }

  void add() {
    write.begin();
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
    write.heading(write.says("cautions"));
    sheet.cautions().forEach(c -> write.caution(write.path("P:" + write.next()), c));
    write.note(write.says("cautions.note"));
    write.end();
    whenItFails();
    write.end();
    write.begin();
    write.heading(write.says("collect"));
    collect();
    write.end();
    write.note(sheet.head().decision() + " " + write.says("decision.digits"));
  }

  private void whenItFails() {
    write.begin();
    write.heading(write.says("fail"));
    write.note(write.says("fail.text"));
    write.small(write.says("stop"));
    write.note(sheet.head().stopped());
    write.end();
  }

  /** The leads, each with a box to tick; many in two columns, read down the left one first. */
  private void collect() {
    int columns = sheet.leads().size() >= MANY ? 2 : 1;
    int rows = (sheet.leads().size() + columns - 1) / columns;
    List<Double> widths = new ArrayList<>();
    List<String> titles = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      for (double share : SHARES.get(columns - 1)) {
        widths.add(write.inner() * share);
      }
      titles.addAll(
          List.of(
              "",
              write.says("collect.lead"),
              write.says("collect.colour"),
              write.says("collect.rating"),
              write.says("collect.present")));
    }
    List<String> table = write.path("Table:collect");
    RowPart row = write.headRow(table, widths, titles);
    write.add(row);
    Part.Heading head = Part.Heading.of(row);
    for (int r = 0; r < rows; r++) {
      List<TableCell> cells = new ArrayList<>();
      for (int c = 0; c < columns; c++) {
        int at = c * rows + r;
        lead(at < sheet.leads().size() ? sheet.leads().get(at) : null, widths, cells);
      }
      write.add(new RowPart(table, "r" + r, widths, cells, head, r + 1 == rows ? 4 : 0));
    }
  }

  private void lead(Sheet.@Nullable LeadLine lead, List<Double> widths, List<TableCell> cells) {
    List<String> texts = List.of("", "", "", "", "");
    if (lead != null) {
      String title =
          lead.kind().equals("link") ? write.says("collect.link", lead.title()) : lead.title();
      texts = List.of(lead.mark(), title, lead.colour(), lead.rating());
    }
    for (int i = 0; i < texts.size(); i++) {
      cells.add(write.words(texts.get(i), i == 0, widths.get(cells.size()), SIZE));
    }
    if (lead != null) {
      double width = widths.get(cells.size());
      cells.add(write.ticks(List.of(List.of("")), width, lead.present().id()));
    }
  }

  /** That nobody has approved this meaning; empty where somebody has. */
  private String unreleased() {
    return sheet.items().source().isUnreleased() ? " " + write.says("unreleased") : "";
  }

  private void identity() {
    List<Double> widths = write.shares(0.17, 0.38, 0.15, 0.3);
    List<String> table = write.path("Table:identity");
    String[][] rows = {
      {
        write.says("procedure"),
        sheet.head().name(),
        write.says("revision.head"),
        sheet.head().revision() + ", " + sheet.head().date() + unreleased()
      },
      {
        write.says("generator"),
        sheet.head().device(),
        write.says("analyzer"),
        sheet.head().analyzer()
      }
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
    List<Double> two = write.shares(0.17, 0.83);
    write.add(
        new RowPart(
            table,
            "digest",
            two,
            List.of(
                new WordsCell(
                    List.of(write.block(SIZE, true, two.get(0) - 7, write.says("digest"))),
                    "TH:row"),
                new WordsCell(
                    List.of(write.block(9, false, two.get(1) - 7, sheet.head().digest())),
                    "TD",
                    3)),
            RowPart.NO_HEAD,
            4));
    asked();
  }

  /** What is asked of the whole visit, two to a row. */
  private void asked() {
    List<Double> widths = write.shares(0.29, 0.21, 0.29, 0.21);
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
