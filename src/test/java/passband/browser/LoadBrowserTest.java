package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.support.ui.WebDriverWait;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.judge.Judge;
import passband.judge.ReadingColumn;
import passband.judge.Readings;
import passband.judge.Report;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.ReadingsTemplate;
import passband.testing.ReadingsFiles;
import passband.testing.Records;
import passband.testing.Sheets;

/** The page reads tables of readings as the judge reads them, or refuses them as it does. */
class LoadBrowserTest {
  private static final Plan PLAN = Sheets.YARROW;
  private static final ItemList LIST = Evidence.of(PLAN).list();

  /** As good records name it. */
  private static final String SERIAL = "80";

  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() throws IOException {
    browser = new Browser(folder, true);
    Files.writeString(folder.resolve("page.html"), Checklist.of(PLAN));
    browser.open(folder.resolve("page.html"), SERIAL);
  }

  @AfterEach
  void forget() {
    browser.run("document.getElementById('clear').click()");
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  static List<String> files() {
    return List.copyOf(ReadingsFiles.all().keySet());
  }

  private static JsonObject read(byte[] bytes) {
    String said =
        (String)
            browser.run(
                "try { return JSON.stringify(Csv.read(Uint8Array.from(atob(arguments[0]), (c) => c.charCodeAt(0))));"
                    + " } catch (error) { return JSON.stringify({ error: error.message }); }",
                Base64.getEncoder().encodeToString(bytes));
    return JsonParser.parseString(said).getAsJsonObject();
  }

  @ParameterizedTest
  @MethodSource("files")
  void pageAndJudgeReadEveryFileAlike(String name) {
    byte[] bytes = ReadingsFiles.all().get(name);
    JsonObject page = read(bytes);
    try {
      Readings readings = Readings.parse(bytes);
      assertTrue(page.has("rows"), page.toString());
      assertEquals(
          readings.digest(),
          page.get("digest").isJsonNull() ? null : page.get("digest").getAsString());
      assertEquals(readings.rows(), rows(page.getAsJsonArray("rows")));
    } catch (BadInput e) {
      assertTrue(page.has("error"), () -> e.getMessage() + " | " + page);
      String judge = e.getMessage().replaceFirst("(not a CSV file:).*", "$1");
      assertEquals(
          judge, page.get("error").getAsString().replaceFirst("(not a CSV file:).*", "$1"));
    }
  }

  private static List<Readings.Row> rows(JsonArray rows) {
    List<Readings.Row> made = new ArrayList<>();
    rows.forEach(
        one -> {
          JsonObject row = one.getAsJsonObject();
          Map<ReadingColumn, String> said = new HashMap<>();
          for (ReadingColumn column : ReadingColumn.values()) {
            boolean compared = column.use().word().startsWith("compared");
            String text = !compared ? "" : row.get(column.word()).getAsString();
            if (!text.isEmpty()) {
              said.put(column, text);
            }
          }
          made.add(
              new Readings.Row(
                  row.get("point").getAsString(),
                  row.get("reading").getAsString(),
                  row.get("unit").getAsString(),
                  row.get("phase").getAsString(),
                  row.get("attempt").getAsString(),
                  row.get("kind").getAsString(),
                  row.get("line").getAsInt(),
                  said,
                  new Readings.Notes(
                      row.get("by").getAsString(),
                      row.get("reason").getAsString(),
                      row.get("remark").getAsString())));
        });
    return made;
  }

  // ---- a file that is chosen on the page ----

  /** What the page says of a file; empty where it was loaded. */
  private static String load(byte[] bytes) throws IOException {
    Path file = Files.createTempFile(folder, "typed", ".csv");
    Files.write(file, bytes);
    browser.run(
        "document.getElementById('trouble').textContent = '';"
            + " document.getElementById('count').textContent = 'waiting'");
    browser.find("#file").sendKeys(file.toString());
    new WebDriverWait(browser.driver(), Duration.ofSeconds(20))
        .until(
            d ->
                !browser.find("#trouble").getText().isEmpty()
                    || !browser.find("#count").getText().equals("waiting"));
    return browser.find("#trouble").getText();
  }

  /** The table of {@code passband readings} with everything typed in, its rows changed. */
  private static String typed(UnaryOperator<List<List<String>>> changed) {
    Map<String, String> good = new HashMap<>();
    Records.of(LIST, true).readings().rows().forEach(r -> good.put(r.point(), r.reading()));
    List<List<String>> rows = new ArrayList<>();
    for (CsvRecord record : CsvReader.builder().ofCsvRecord(ReadingsTemplate.of(LIST))) {
      rows.add(new ArrayList<>(record.getFields()));
    }
    List<String> heading = rows.get(0);
    for (List<String> row : rows.subList(1, rows.size())) {
      row.set(heading.indexOf("reading"), good.getOrDefault(row.get(heading.indexOf("point")), ""));
    }
    StringBuilder text = new StringBuilder();
    for (List<String> row : changed.apply(rows)) {
      List<String> cells = row.stream().map(c -> "\"" + c.replace("\"", "\"\"") + "\"").toList();
      text.append(String.join(",", cells)).append('\n');
    }
    return text.toString();
  }

  @ParameterizedTest
  @CsvSource({
    "UTF-8, ','",
    "UTF-8, ;",
    "UTF-16LE, TAB",
    "UTF-16BE, ;",
    "UTF-16LE, ','",
  })
  void aTableThatASpreadsheetSavedFillsThePageAsTheJudgeReadsIt(String charset, String separator)
      throws IOException, BadInput {
    String with = separator.equals("TAB") ? "\t" : separator;
    String text = "\ufeff" + typed(rows -> rows).replace("\",\"", "\"" + with + "\"");
    byte[] bytes = text.getBytes(Charset.forName(charset));
    assertEquals("", load(bytes));
    Report report = Judge.judge(LIST, Readings.parse(bytes), null);
    assertEquals("pass", report.overall().word());
    assertEquals("pass", browser.run("return document.body.dataset.overall"));
  }

  /**
   * A row that slid to another point is refused by both, in the same words; the judge names it by
   * its heading and conditions, the page by the line of the sheet, and neither by its identity.
   */
  @Test
  void aRowOfAnotherPointIsRefused() throws IOException {
    int compared = 0;
    for (ReadingColumn column : ReadingColumn.of(ReadingColumn.Use.COMPARED)) {
      String text =
          typed(
              rows -> {
                int at = rows.get(0).indexOf(column.word());
                int point = rows.get(0).indexOf("point");
                List<String> row =
                    rows.stream().filter(r -> r.get(point).endsWith("/voltage")).findFirst().get();
                row.set(at, row.get(at) + "0");
                return rows;
              });
      String judge = refused(text).getMessage();
      assertTrue(judge.contains("the column '" + column.word() + "' says"));
      Item slid =
          LIST.items().stream().filter(i -> i.id().endsWith("/voltage")).findFirst().orElseThrow();
      String named = ": " + ItemNames.of(LIST).of(slid);
      assertTrue(judge.endsWith(named), judge);
      String line = (String) browser.run("return Fields.name(arguments[0])", slid.id());
      assertTrue(line.startsWith("Line "), line);
      assertEquals(
          "Not loaded: " + judge.substring(0, judge.length() - named.length()) + ": " + line + ".",
          load(text.getBytes(StandardCharsets.UTF_8)));
      compared++;
    }
    assertEquals(4, compared);
  }

  /** As by a spreadsheet that takes the revision 1.10 for a number; the procedure's own loads. */
  @ParameterizedTest
  @CsvSource({"procedure, other", "revision, 1.1"})
  void aRowOfAnotherRevisionIsRefused(String column, String other) throws Exception {
    ItemList.Source source = LIST.source();
    String own = column.equals("revision") ? source.revision() : source.procedure();
    assertEquals("", load(with(column, own, own).getBytes(StandardCharsets.UTF_8)));
    assertEquals("", load(with(column, "", own).getBytes(StandardCharsets.UTF_8)));
    String text = with(column, own, other);
    String judge = refused(text).getMessage();
    assertTrue(
        judge.startsWith("line 4: the column '" + column + "' says '" + other + "', but"), judge);
    assertEquals("Not loaded: " + judge + ".", load(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** The good table with one column more, which says something else in its third row. */
  private static String with(String column, String all, String third) {
    return typed(
        rows -> {
          rows.forEach(row -> row.add(row == rows.get(0) ? column : all));
          rows.get(3).set(rows.get(3).size() - 1, third);
          return rows;
        });
  }

  private static BadInput refused(String text) {
    try {
      Judge.judge(LIST, Readings.parse(text.getBytes(StandardCharsets.UTF_8)), null);
    } catch (BadInput e) {
      return e;
    }
    throw new AssertionError("not refused");
  }

  /** A misspelt column, or two of a name, is named. */
  @ParameterizedTest
  @CsvSource({
    "reading, Reading, unknown column 'Reading'",
    "attempt, attemt, unknown column 'attemt'",
    "remark, reading, the column 'reading' stands twice"
  })
  void aWrongHeadingIsNamed(String was, String now, String said) throws IOException {
    byte[] bytes = typed(r -> r).replaceFirst(was, now).getBytes(StandardCharsets.UTF_8);
    assertTrue(load(bytes).startsWith("Not loaded: " + said), load(bytes));
  }

  /** What the page has no field for is not dropped: attempts, kinds, derived values. */
  @ParameterizedTest
  @CsvSource({
    "attempt, 3, this page cannot show attempt '3'",
    "kind, choice, this page cannot show a choice",
    "digest, '', some rows carry a digest",
    "point, nowhere/x, these points are not in the limits: nowhere/x"
  })
  void whatCannotBeShownIsRefused(String column, String value, String said) throws IOException {
    String text =
        typed(
            rows -> {
              rows.get(1).set(rows.get(0).indexOf(column), value);
              return rows;
            });
    String trouble = load(text.getBytes(StandardCharsets.UTF_8));
    assertTrue(trouble.contains(said), trouble);
  }

  @Test
  void aValueRecordedTwiceOrWithoutAnyDigestIsRefused() throws IOException {
    String twice =
        typed(
            rows -> {
              rows.add(rows.get(1));
              return rows;
            });
    String trouble = load(twice.getBytes(StandardCharsets.UTF_8));
    assertTrue(trouble.contains("attempt 1 is recorded twice"), trouble);
    String unsigned = typed(r -> r).replace(LIST.source().digest(), "");
    assertNotNull(LIST.source().digest());
    String none = load(unsigned.getBytes(StandardCharsets.UTF_8));
    assertTrue(none.contains("it has no digest"), none);
  }
}
