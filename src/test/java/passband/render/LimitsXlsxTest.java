package passband.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Sheets;

/** {@code limits.xlsx}, read by Apache POI, which has nothing to do with what writes it. */
class LimitsXlsxTest {

  static List<Plan> plans() {
    return Sheets.demo();
  }

  private static XSSFWorkbook opened(byte[] bytes) throws IOException {
    return new XSSFWorkbook(new ByteArrayInputStream(bytes));
  }

  /** Cell by cell the table of limits.csv; numbers show the same decimals. */
  @ParameterizedTest
  @MethodSource("plans")
  void theTableIsThatOfTheCsv(Plan plan) throws IOException {
    ItemList list = Evidence.of(plan).list();
    try (XSSFWorkbook workbook = opened(LimitsXlsx.of(list))) {
      assertEquals("Limits", workbook.getSheetName(0));
      Sheet sheet = workbook.getSheetAt(0);
      int at = 0;
      for (NamedCsvRecord record : CsvReader.builder().ofNamedCsvRecord(LimitsCsv.of(list))) {
        Row row = sheet.getRow(++at);
        for (int c = 0; c < LimitColumn.ALL.size(); c++) {
          LimitColumn column = LimitColumn.ALL.get(c);
          assertEquals(column.name(), sheet.getRow(0).getCell(c).getStringCellValue());
          assertCell(column, record.getField(column.name()), row.getCell(c));
        }
      }
      assertEquals(at, sheet.getLastRowNum());
      assertTrue(at > 5, at + " rows");
    }
  }

  private static void assertCell(LimitColumn column, String written, Cell cell) {
    if (written.isEmpty()) {
      assertNull(cell, column.name());
    } else if (column.type().isNumber()) {
      assertEquals(CellType.NUMERIC, cell.getCellType());
      BigDecimal value = new BigDecimal(written);
      assertEquals(value.doubleValue(), cell.getNumericCellValue());
      assertEquals(written, new DataFormatter(Locale.ROOT).formatCellValue(cell));
      String comma = new DataFormatter(Locale.GERMANY).formatCellValue(cell);
      assertEquals(written.replace('.', ','), comma);
    } else {
      assertEquals(CellType.STRING, cell.getCellType());
      assertEquals(written, cell.getStringCellValue());
    }
  }

  @Test
  void theHeaderStaysAndTheSecondSheetTellsWhatEachColumnIs() throws IOException {
    ItemList list = Evidence.of(Sheets.YARROW).list();
    try (XSSFWorkbook workbook = opened(LimitsXlsx.of(list))) {
      assertEquals(1, workbook.getSheetAt(0).getPaneInformation().getHorizontalSplitPosition());
      assertTrue(workbook.getSheetAt(0).getPaneInformation().isFreezePane());
      StringBuilder about = new StringBuilder();
      workbook.getSheet("About").forEach(row -> row.forEach(c -> about.append(c).append('\n')));
      LimitColumn.notes(list).forEach(note -> assertTrue(about.toString().contains(note), note));
      for (LimitColumn column : LimitColumn.ALL) {
        assertTrue(about.toString().contains(column.description()), column.name());
        assertTrue(about.toString().contains(column.unit()), column.name());
      }
      assertEquals(
          list.source().date() + "T00:00:00Z",
          workbook.getProperties().getCoreProperties().getCreated().toInstant().toString());
    }
  }

  /** No clock, time zone or locale is in it: what is committed is what is written again. */
  @Test
  void theSameListGivesTheSameBytes() throws IOException, InterruptedException {
    ItemList list = Evidence.of(Sheets.TEASEL).list();
    byte[] first = LimitsXlsx.of(list);
    TimeZone zone = TimeZone.getDefault();
    Locale locale = Locale.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      Thread.sleep(20);
      assertArrayEquals(first, LimitsXlsx.of(list));
    } finally {
      TimeZone.setDefault(zone);
      Locale.setDefault(locale);
    }
    assertNotEquals(first.length, LimitsXlsx.of(Evidence.of(Sheets.YARROW).list()).length);
  }

  @Test
  void theCommittedWorkbooksOpen() throws IOException {
    List<Path> files = Repository.files(Repository.ROOT.resolve("out"), "limits.xlsx");
    assertTrue(files.size() >= 2);
    for (Path file : files) {
      try (XSSFWorkbook workbook = opened(Files.readAllBytes(file))) {
        assertEquals(2, workbook.getNumberOfSheets());
      }
    }
  }

  /** What a spreadsheet would run in a CSV file is text here. */
  @Test
  void noCellIsAFormula() throws IOException {
    ItemList good = Evidence.of(Sheets.SUNDEW).list();
    ItemList.Source was = good.source();
    String formula = "=HYPERLINK(\"http://x\",\"<b>&µΩ\")";
    ItemList.Source source =
        new ItemList.Source(
            was.procedure(),
            formula,
            formula,
            was.date(),
            was.digest(),
            "-1+1",
            List.of(new ItemList.Instrument("analyzer", "@A1")),
            was.language(),
            was.released());
    ItemList list = new ItemList(source, good.decision(), good.phases(), good.items());
    try (XSSFWorkbook workbook = opened(LimitsXlsx.of(list))) {
      for (Sheet sheet : workbook) {
        sheet.forEach(row -> row.forEach(c -> assertNotEquals(CellType.FORMULA, c.getCellType())));
      }
      Row first = workbook.getSheetAt(0).getRow(1);
      assertEquals(formula, first.getCell(1).getStringCellValue());
      assertEquals("-1+1", first.getCell(3).getStringCellValue());
    }
  }
}
