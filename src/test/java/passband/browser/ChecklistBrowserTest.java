package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.selenium.AxeBuilder;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.print.PageMargin;
import org.openqa.selenium.print.PageSize;
import org.openqa.selenium.print.PrintOptions;
import org.openqa.selenium.support.ui.WebDriverWait;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Cause;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.judge.Report;
import passband.judge.Verdict;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.render.Checklist;
import passband.testing.Records;
import passband.testing.Sheets;

/** The sheet in a real browser: filled in, reloaded, exported, loaded back, printed. */
class ChecklistBrowserTest {
  private static final Plan YARROW = Sheets.YARROW;
  private static final Plan TEASEL = Sheets.TEASEL;

  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() {
    browser = new Browser(folder, true);
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  /** Nothing is left of the test before. */
  @AfterEach
  void forget() throws IOException {
    browser.forget();
    browser.driver().get("about:blank");
    dismissWarning();
    deleteSaved();
  }

  private static void deleteSaved() throws IOException {
    try (DirectoryStream<Path> saved = Files.newDirectoryStream(folder, "*_*.csv")) {
      for (Path file : saved) {
        Files.delete(file);
      }
    }
  }

  /** PROCEDURE_SERIAL_DATE.csv, of what may stand in a file's name anywhere. */
  private Path saved() throws IOException, InterruptedException {
    String procedure = (String) browser.run("return document.body.dataset.procedure");
    return Browser.awaited(folder.resolve(procedure + "_A-7-b_" + LocalDate.now() + ".csv"));
  }

  private Path page(Plan plan) throws IOException {
    Path page = folder.resolve(plan.name().text() + ".html");
    Files.writeString(page, Checklist.of(plan));
    return page;
  }

  private void show(Plan plan) throws IOException {
    browser.open(page(plan), UNIT);
  }

  private WebElement entry(String point) {
    return browser.find(".entry[data-item='" + point + "']");
  }

  private String said(WebElement entry) {
    return (String)
        browser.run("return arguments[0].closest('tr').querySelector('.said').textContent", entry);
  }

  private static final String UNIT = "=A \"7\", <b>&";

  private static final String FIRST = "bipolar-output/bipolar/thin/5W/125ohm/current";

  /** Line 1 of the Teasel: 179.0 to 219.0 mA, the limits included. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "179.0, pass",
        "219.0, pass",
        "200.00, pass",
        "178.9, FAIL: below 179.0",
        "178.999999999999999999999, FAIL: below 179.0",
        "219.000000000000000000001, FAIL: above 219.0",
        "219.1, FAIL: above 219.0",
        "-200.0, \"unclear: negative, which is impossible for this quantity (zero the instrument, or check the sign)\"",
        "200, unclear: recorded with too few decimals: 1 needed in mA",
        "\"200,0\", \"unclear: write a decimal point: the comma or point in '200,0' may separate"
            + " thousands\"",
        "1e2, \"unclear: '1e2' is not a number\"",
        "abc, \"unclear: 'abc' is not a number\""
      })
  void aReadingIsJudgedAsItIsTyped(String typed, String verdict) throws IOException {
    show(TEASEL);
    WebElement entry = entry(FIRST);
    entry.sendKeys(typed);
    assertEquals(verdict, said(entry));
  }

  @Test
  void itCountsWhatIsLeft() throws IOException {
    show(TEASEL);
    assertTrue(browser.find("#count").getText().startsWith("33 of 33 readings to go"));
    entry(FIRST).sendKeys("200.0");
    entry("bipolar-output/bipolar/thin/20W/125ohm/current").sendKeys("1.0");
    String count = browser.find("#count").getText();
    assertTrue(count.startsWith("31 of 33 readings to go"), count);
    assertTrue(count.contains("1 fail"), count);
    assertTrue(count.contains("not yet saved to a file"), count);
  }

  @Test
  void aFailedReadingIsReadAgainAndBothAreKept() throws IOException, InterruptedException {
    show(TEASEL);
    WebElement entry = entry(FIRST);
    entry.sendKeys("1.0");
    WebElement again = browser.find(".fails input.again");
    assertTrue(again.isDisplayed());
    WebElement why = noted(entry, "why");
    WebElement who = noted(entry, "who");
    assertFalse(why.isDisplayed() || who.isDisplayed());
    again.sendKeys("200.0");
    assertEquals("pass: attempt 2, the first was 1.0", said(entry));
    assertTrue(why.isDisplayed() && who.isDisplayed());
    why.sendKeys("lead, loose");
    who.sendKeys("Kim");
    browser.find("#save").click();
    List<NamedCsvRecord> rows = rows(saved());
    assertEquals(
        List.of("1.0/1//", "200.0/2/lead, loose/Kim"),
        rows.stream()
            .filter(r -> r.getField("point").equals(FIRST))
            .map(
                r ->
                    String.join(
                        "/",
                        r.getField("reading"),
                        r.getField("attempt"),
                        r.getField("reason"),
                        r.getField("by")))
            .toList());
  }

  private static WebElement noted(WebElement entry, String what) {
    return (WebElement)
        browser.run(
            "return arguments[0].closest('tr').querySelector('input.' + arguments[1])",
            entry,
            what);
  }

  /** Both parts get a second box, and the value is calculated only from readings of one attempt. */
  @Test
  void allPartsOfAValueThatFailsAreReadAgain() throws Exception {
    show(YARROW);
    ItemList list = Evidence.of(YARROW).list();
    Item.Derived derived =
        list.items().stream()
            .filter(i -> i instanceof Item.Derived && i.head().applies().isEmpty())
            .map(i -> (Item.Derived) i)
            .findFirst()
            .orElseThrow();
    Map<String, String> parts = derived.calculation().parts();
    WebElement value = browser.find("output.entry[data-item='" + derived.id() + "']");
    for (String part : parts.values()) {
      assertFalse(again(part).isDisplayed());
    }
    entry(parts.get("peak-voltage")).sendKeys("900");
    entry(parts.get("voltage")).sendKeys("150");
    assertTrue(said(value).startsWith("FAIL: above "), said(value));
    again(parts.get("peak-voltage")).sendKeys("290");
    String mixed =
        "unclear: calculated from readings of different attempts: Line 11, Peak voltage of attempt"
            + " 2, Line 11, Voltage of attempt 1 (read all of them again)";
    assertEquals(mixed, said(value));
    assertSavedIsJudgedTheSame(list);
    again(parts.get("voltage")).sendKeys("150");
    assertEquals("pass", said(value));
    assertSavedIsJudgedTheSame(list);
    entry(parts.get("voltage")).sendKeys(Keys.BACK_SPACE, Keys.BACK_SPACE, Keys.BACK_SPACE);
    assertEquals(
        "unclear: an attempt before number 2 is missing", said(entry(parts.get("voltage"))));
    assertSavedIsJudgedTheSame(list);
  }

  /** A number may have its unit, or another, after it; what is saved is judged the same. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "80     | pass    | \"\"",
        "80 %   | pass    | \"\"",
        "banana | unclear | 'banana' is not a number",
        "-3     | unclear | negative, which is impossible for this quantity (zero the instrument, or check the sign)",
        "80 W   | unclear | given in W, which cannot be converted to %",
        "80 90  | unclear | '80 90' is not a number"
      })
  void aBlankWithAUnitHoldsANumber(String typed, String verdict, String said) throws Exception {
    Plan plan =
        Sheets.demo().stream().filter(p -> blank(Evidence.of(p).list()) != null).findFirst().get();
    ItemList list = Evidence.of(plan).list();
    show(plan);
    for (Item.Condition condition : blank(list).head().when()) {
      press(
          browser.find(
              "input[name='" + condition.item() + "'][value='" + condition.is().get(0) + "']"));
    }
    WebElement field = browser.find("input[data-item='" + blank(list).id() + "']");
    field.sendKeys(typed);
    String shown =
        "const place = arguments[0].closest('[data-verdict]');"
            + "const said = place.querySelector('.said');"
            + "return place.dataset.verdict + ' ' + (said === null ? '' : said.textContent)";
    assertEquals(verdict + " " + said, browser.run(shown, field));
    assertSavedIsJudgedTheSame(list);
  }

  private static Item.Recorded blank(ItemList list) {
    return list.items().stream()
        .filter(i -> i instanceof Item.Recorded r && "%".equals(r.unit()))
        .map(i -> (Item.Recorded) i)
        .findFirst()
        .orElse(null);
  }

  /** At the first reading that is read again stands which others the calculated value asks for. */
  @Test
  void aRepeatAsksForAllThatAValueIsCalculatedFrom() throws IOException {
    Plan plan =
        Sheets.demo().stream()
            .filter(p -> p.name().text().equals("sedge-170-full"))
            .findFirst()
            .orElseThrow();
    show(plan);
    Item.Derived derived =
        Evidence.of(plan).list().items().stream()
            .filter(i -> i instanceof Item.Derived && i.id().endsWith("/outlets"))
            .map(i -> (Item.Derived) i)
            .findFirst()
            .orElseThrow();
    List<String> parts = List.copyOf(derived.calculation().parts().values());
    assertEquals(2, parts.size());
    WebElement first = entry(parts.get(0));
    put(first, "120");
    assertFalse(said(first).contains("again"), said(first));
    put(again(parts.get(0)), "121");
    String line =
        "Line "
            + browser.run(
                "return arguments[0].closest('tbody').querySelector('.n').textContent",
                entry(parts.get(1)));
    assertTrue(said(first).contains("as well: read " + line + ", Current again"), said(first));
    put(entry(parts.get(1)), "120");
    assertTrue(said(first).contains("as well: read " + line + ", Current again"), said(first));
    put(again(parts.get(1)), "121");
    assertFalse(said(first).contains(line), said(first));
  }

  private void put(WebElement field, String value) {
    browser.run(
        "arguments[0].value = arguments[1];"
            + "arguments[0].dispatchEvent(new Event('input', { bubbles: true }))",
        field,
        value);
  }

  private WebElement again(String point) {
    return (WebElement)
        browser.run("return arguments[0].parentElement.querySelector('input.again')", entry(point));
  }

  private static List<NamedCsvRecord> rows(Path csv) throws IOException {
    try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(csv)) {
      return reader.stream().toList();
    }
  }

  private void fillSome() {
    entry(FIRST).sendKeys("200.0");
    press(browser.find("input[type=checkbox][data-item]"));
    press(browser.find("input[name='sheet/result'][value='incomplete']"));
    press(
        (WebElement)
            browser.run(
                "return arguments[0].closest('tr').querySelector('.undone')",
                entry("tack-output/bipolar/tack/1/40ohm/current")));
    noted(entry("tack-output/bipolar/tack/1/40ohm/current"), "why").sendKeys("no lead for it");
  }

  private static void press(WebElement tick) {
    browser.run("arguments[0].focus()", tick);
    tick.sendKeys(Keys.SPACE);
  }

  private String state() {
    return (String)
        browser.run(
            "return JSON.stringify([...document.querySelectorAll('header input, main input')].filter(i => !i.matches('.noted'))"
                + ".map(i => i.type === 'text' ? i.value : i.checked))");
  }

  @Test
  void entriesAreThereAfterAReload() throws IOException {
    show(TEASEL);
    String empty = state();
    fillSome();
    String filled = state();
    assertFalse(filled.equals(empty));
    browser.driver().navigate().refresh();
    dismissWarning();
    new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
        .until(d -> Boolean.TRUE.equals(browser.run("return document.readyState === 'complete'")));
    assertFalse(filled.equals(state()));
    WebElement goOn = browser.find(".go-on");
    assertEquals("Go on with " + UNIT, goOn.getText());
    goOn.click();
    assertEquals(filled, state());
    assertEquals("pass", said(entry(FIRST)));
    assertEquals("not done", said(entry("tack-output/bipolar/tack/1/40ohm/current")));
  }

  private void dismissWarning() {
    try {
      browser.driver().switchTo().alert().accept();
    } catch (org.openqa.selenium.NoAlertPresentException e) {
      assertTrue(e.getMessage() != null);
    }
  }

  @Test
  void whatIsSavedComesBack() throws IOException, InterruptedException {
    show(TEASEL);
    fillSome();
    String filled = state();
    browser.find("#save").click();
    Path csv = saved();
    Map<String, String> byPoint =
        rows(csv).stream()
            .collect(
                Collectors.toMap(
                    r -> r.getField("kind") + ":" + r.getField("point"),
                    r -> r.getField("reading")));
    assertEquals("200.0", byPoint.get("reading:" + FIRST));
    assertEquals("'=A \"7\", <b>&", byPoint.get("record:sheet/generator-serial"));
    assertEquals("incomplete", byPoint.get("choice:sheet/result"));
    assertTrue(byPoint.containsKey("not-done:tack-output/bipolar/tack/1/40ohm/current"));
    rows(csv).forEach(r -> assertEquals(TEASEL.digest(), r.getField("digest")));
    browser.find("#clear").click();
    wait(d -> "".equals(entry(FIRST).getDomProperty("value")));
    browser.find("#file").sendKeys(csv.toString());
    // The page reads the file after this returns.
    wait(d -> filled.equals(state()) || !browser.find("#trouble").getText().isEmpty());
    assertEquals("", browser.find("#trouble").getText());
    assertEquals(filled, state());
  }

  private <T> void wait(Function<WebDriver, T> condition) {
    new WebDriverWait(browser.driver(), Duration.ofSeconds(10)).until(condition);
  }

  @Test
  void anotherRevisionsReadingsAreRefused() throws IOException, InterruptedException {
    show(TEASEL);
    fillSome();
    browser.find("#save").click();
    Path csv = saved();
    Path other = folder.resolve("other.csv");
    Files.writeString(other, Files.readString(csv).replace(TEASEL.digest(), "0".repeat(64)));
    String before = state();
    browser.find("#file").sendKeys(other.toString());
    new WebDriverWait(browser.driver(), Duration.ofSeconds(5))
        .until(d -> !browser.find("#trouble").getText().isEmpty());
    assertTrue(browser.find("#trouble").getText().contains("another procedure or revision"));
    assertEquals(before, state());
    Files.writeString(other, "point,reading\n\"x");
    browser.find("#file").sendKeys(other.toString());
    new WebDriverWait(browser.driver(), Duration.ofSeconds(5))
        .until(d -> browser.find("#trouble").getText().startsWith("Not loaded"));
    assertEquals(before, state());
  }

  @Test
  void leavingWithUnsavedEntriesWarns() throws IOException, InterruptedException {
    show(TEASEL);
    assertEquals(Boolean.FALSE, warns());
    entry(FIRST).sendKeys("200.0");
    assertEquals(Boolean.TRUE, warns());
    browser.find("#save").click();
    assertTrue(Files.size(saved()) > 0);
    assertEquals(Boolean.FALSE, warns());
  }

  private Object warns() {
    return browser.run(
        "const e = new Event('beforeunload', {cancelable: true}); window.dispatchEvent(e); return e.defaultPrevented");
  }

  /** WCAG 2.2, 2.4.11: what has the focus is not hidden under the bar that stays at the top. */
  @Test
  void whatHasTheFocusIsSeen() throws IOException {
    show(TEASEL);
    browser.run("window.scrollTo(0, document.body.scrollHeight)");
    List<?> hidden =
        (List<?>)
            browser.run(
                "const hidden = [];"
                    + "for (const input of [...document.querySelectorAll('main input:not(.again, .why, .who)')].reverse()) {"
                    + "  input.focus();"
                    + "  const b = input.getBoundingClientRect();"
                    + "  const at = document.elementFromPoint(b.x + b.width / 2, b.y + b.height / 2);"
                    + "  if (at !== input) hidden.push(input.dataset.item || input.className);"
                    + "} return hidden;");
    assertEquals(List.of(), hidden);
  }

  /** From the sheet to the verdict: what the browser saves, the judge takes, and they agree. */
  @Test
  void whatIsSavedIsJudgedTheSame() throws Exception {
    show(YARROW);
    ItemList list = Evidence.of(YARROW).list();
    int i = 0;
    for (Item item : list.items()) {
      if (item instanceof Item.Reading reading && item.head().applies().isEmpty()) {
        BigDecimal middle = Records.middle(reading);
        BigDecimal value =
            i++ % 3 == 2
                ? middle.multiply(BigDecimal.TEN)
                : reading.scale().quantity().equals("voltage") && reading.limits() == null
                    ? new BigDecimal(150)
                    : middle;
        browser.run(
            "const e = document.querySelector(`input.entry[data-item='${arguments[0]}']`);"
                + "e.value = arguments[1]; e.dispatchEvent(new Event('input', {bubbles: true}))",
            item.id(),
            value.toPlainString());
      }
    }
    Report report = assertSavedIsJudgedTheSame(list);
    assertEquals(
        List.of(Cause.Code.NOT_RELEASED), report.warnings().stream().map(Cause::code).toList());
    assertEquals(UNIT, report.readings().record("generator-serial"));
    long fails = report.judgements().stream().filter(j -> j.verdict() == Verdict.FAIL).count();
    assertTrue(fails > 2, fails + " fail");
  }

  private Report assertSavedIsJudgedTheSame(ItemList list) throws Exception {
    deleteSaved();
    browser.find("#save").click();
    byte[] csv = Files.readAllBytes(saved());
    Report report = Judge.judge(list, Readings.parse(csv), null);
    for (Judgement judgement : report.judgements()) {
      assertEquals(
          judgement.verdict().word(),
          browser.run(
              "return document.querySelector(`[data-item='${arguments[0]}']`).closest('[data-verdict]').dataset.verdict",
              judgement.item().id()),
          judgement.toString());
    }
    assertEquals(report.overall().word(), browser.run("return document.body.dataset.overall"));
    return report;
  }

  /** The policy lets in the file's own style and script, nothing else, and nothing is fetched. */
  @Test
  void nothingElseRunsAndNothingIsFetched() throws IOException {
    Path page = page(TEASEL);
    browser.complaints();
    browser.open(page);
    assertEquals(List.of(), browser.complaints());
    assertEquals(0L, browser.run("return performance.getEntriesByType('resource').length"));
    Path changed = folder.resolve("changed.html");
    Files.writeString(
        changed,
        Files.readString(page)
            .replace("</main>", "<img src=\"x.png\" onerror=\"document.title='run'\"></main>")
            .replace("</header>", "<script>document.title = 'run'</script></header>"));
    browser.open(changed);
    assertFalse(browser.driver().getTitle().equals("run"));
    assertTrue(
        browser.complaints().stream().filter(c -> c.contains("Content Security Policy")).count()
            >= 2);
  }

  @Test
  void withoutScriptsItIsThePrintableSheet() throws IOException {
    try (Browser plain = new Browser(folder, false)) {
      plain.open(page(TEASEL));
      assertFalse(plain.find(".bar").isDisplayed());
      assertTrue(plain.find(".reading > i").isDisplayed());
      assertFalse(plain.find(".reading > input").isDisplayed());
      assertEquals(
          "inline ☐\u00a0pass ☐\u00a0fail",
          plain.run(
              "const box = getComputedStyle(document.querySelector('.verdict:not(.free)'), '::before');"
                  + "return box.display + ' ' + JSON.parse(box.content)"));
    }
  }

  /** WCAG 2.x A and AA, as far as axe-core checks them: nothing serious or critical. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1})
  void accessible(int which) throws IOException {
    show(List.of(YARROW, TEASEL).get(which));
    browser.all("input.entry").get(0).sendKeys("1.0");
    var results = new AxeBuilder().analyze(browser.driver());
    List<String> serious =
        results.getViolations().stream()
            .filter(v -> v.getImpact().equals("serious") || v.getImpact().equals("critical"))
            .map(v -> v.getId() + ": " + v.getNodes().get(0).getHtml())
            .toList();
    assertEquals(List.of(), serious);
    assertTrue(results.getPasses().size() > 10);
  }

  // ---- paper ----

  private List<String> printed(Plan plan, double widthCm, double heightCm) throws IOException {
    show(plan);
    return printed(widthCm, heightCm);
  }

  /** The text of each page of what is shown, as it is printed. */
  private static List<String> printed(double widthCm, double heightCm) throws IOException {
    PrintOptions options = new PrintOptions();
    options.setPageSize(new PageSize(heightCm, widthCm));
    options.setPageMargin(new PageMargin(1.7, 1.5, 1.1, 1.1));
    byte[] pdf =
        Base64.getDecoder()
            .decode(
                browser.driver().print(options).getContent().getBytes(StandardCharsets.US_ASCII));
    List<String> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        pages.add(stripper.getText(document).replaceAll("\\s+", " "));
      }
    }
    return pages;
  }

  /** A reading that is filled in has its verdict in print, where the boxes to tick stood. */
  @Test
  void whatIsFilledInIsPrintedWithItsVerdict() throws IOException {
    show(YARROW);
    String before = String.join(" ", printed(21.0, 29.7));
    List<WebElement> entries = browser.all("input.entry");
    int filled = 0;
    for (WebElement entry : entries) {
      if (entry.isEnabled() && filled < 6) {
        entry.sendKeys(filled++ == 0 ? "99999" : "x");
      }
    }
    String after = String.join(" ", printed(21.0, 29.7));
    assertFalse(before.contains("unclear: ") || before.contains("FAIL: "), before);
    assertTrue(after.contains("FAIL: "), after);
    assertTrue(after.split("unclear: ").length > filled / 2, after);
    assertTrue(after.split("☐").length < before.split("☐").length, after);
  }

  private static String accepted(Limit limit) {
    String low = limit.end(limit.accept().lower());
    String high = limit.end(limit.accept().upper());
    return low == null ? "at most " + high : high == null ? "at least " + low : low + " to " + high;
  }

  @ParameterizedTest
  @CsvSource({"21.0, 29.7", "21.59, 27.94"})
  void printedFromTheBrowserNothingIsBroken(double width, double height) throws IOException {
    Plan plan = Sheets.ofPoints(40);
    List<String> pages = printed(plan, width, height);
    assertTrue(pages.size() > 4, pages.size() + " pages");
    for (Point point : plan.points()) {
      String first = accepted(point.limits().get(0));
      long together =
          pages.stream()
              .filter(
                  p -> {
                    int at = p.indexOf(first);
                    int setting = p.indexOf(point.setting().text() + " ");
                    return at >= 0 && setting >= 0 && p.indexOf("250 V", at) >= 0;
                  })
              .count();
      assertEquals(1, together, () -> point.id() + "\n" + String.join("\n\n", pages));
    }
    for (int i = 0; i < pages.size(); i++) {
      assertTrue(pages.get(i).contains("page " + (i + 1) + " of " + pages.size()), pages.get(i));
      assertTrue(pages.get(i).contains(plan.digest().substring(0, 12)));
      if (pages.get(i).contains("250 V")) {
        assertTrue(pages.get(i).contains("Bipolar"), pages.get(i));
      }
    }
  }
}
