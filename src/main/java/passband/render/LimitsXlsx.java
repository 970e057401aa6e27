package passband.render;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import passband.evidence.ItemList;

/**
 * {@code limits.xlsx}: the table of {@code limits.csv} as a workbook, with a sheet that says what
 * it holds. Numbers are numbers and show their decimals in every locale, where a spreadsheet set to
 * a decimal comma reads 179.000 in a CSV file as 179000. The same list gives the same bytes.
 */
public final class LimitsXlsx {
  private static final int WIDEST = 48;

  /** Where the library writes the time. */
  private static final String PROPERTIES = "docProps/core.xml";

  private LimitsXlsx() {}

  /** The whole file. */
  public static byte[] of(ItemList list) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Workbook workbook = new Workbook(out, "Passband", null)) {
      workbook.properties().setTitle(list.source().title() + ": limits");
      limits(workbook.newWorksheet("Limits"), LimitColumn.rows(list));
      about(workbook.newWorksheet("About"), list);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String created = list.source().date() + "T00:00:00Z";
    return FixedArchive.of(
        out.toByteArray(),
        (name, bytes) -> name.equals(PROPERTIES) ? createdAt(created, bytes) : bytes);
  }

  /** The document's properties with the revision's date for the clock's. */
  private static byte[] createdAt(String time, byte[] properties) {
    String text = new String(properties, StandardCharsets.UTF_8);
    String fixed = text.replaceFirst("(<dcterms:created [^>]*>)[^<]*", "$1" + time);
    return fixed.getBytes(StandardCharsets.UTF_8);
  }

  private static void limits(Worksheet sheet, List<LimitColumn.Row> rows) {
    for (int c = 0; c < LimitColumn.ALL.size(); c++) {
      LimitColumn column = LimitColumn.ALL.get(c);
      sheet.value(0, c, column.name());
      sheet.style(0, c).bold().set();
      int width = column.name().length();
      for (int r = 0; r < rows.size(); r++) {
        String text = column.cell().apply(rows.get(r));
        if (text != null) {
          cell(sheet, r + 1, c, text, column.type().isNumber());
          width = Math.max(width, text.length());
        }
      }
      sheet.width(c, Math.min(width + 2, WIDEST));
    }
    sheet.freezePane(0, 1);
    sheet.repeatRows(0);
    sheet.pageOrientation("landscape");
  }

  /** A text cell is never a formula, whatever it begins with. */
  private static void cell(Worksheet sheet, int row, int column, String text, boolean number) {
    if (!number) {
      sheet.value(row, column, text);
      return;
    }
    BigDecimal value = new BigDecimal(text);
    sheet.value(row, column, value);
    String decimals = value.scale() > 0 ? "." + "0".repeat(value.scale()) : "";
    sheet.style(row, column).format("0" + decimals).set();
  }

  private static void about(Worksheet sheet, ItemList list) {
    int row = 0;
    sheet.value(row, 0, list.source().title() + ": limits");
    sheet.style(row++, 0).bold().set();
    row++;
    // No merged cells: the library writes them in the order of their identities in memory.
    for (String note : LimitColumn.notes(list)) {
      row = line(sheet, row, false, "note", "", note);
    }
    row++;
    row = line(sheet, row, true, "column", "in", "description");
    for (LimitColumn column : LimitColumn.ALL) {
      row = line(sheet, row, false, column.name(), column.unit(), column.description());
    }
    sheet.width(0, 20);
    sheet.width(1, 36);
    sheet.width(2, 110);
  }

  /** Writes a line; the number of the next. */
  private static int line(Worksheet sheet, int row, boolean bold, String... cells) {
    for (int c = 0; c < cells.length; c++) {
      sheet.value(row, c, cells[c]);
      if (bold) {
        sheet.style(row, c).bold().set();
      } else {
        sheet.style(row, c).wrapText(true).verticalAlignment("top").set();
      }
    }
    return row + 1;
  }
}
