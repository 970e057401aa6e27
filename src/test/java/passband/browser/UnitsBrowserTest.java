package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.support.ui.WebDriverWait;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.Sheets;

/** Units stay apart: what is written for one is never there for another, and nothing is lost. */
class UnitsBrowserTest {
  private static final Plan PLAN = Sheets.TEASEL;
  private static final String FIRST = "bipolar-output/bipolar/thin/5W/125ohm/current";

  @TempDir static Path folder;
  private static Browser browser;
  private static Path page;

  @BeforeAll
  static void open() throws IOException {
    browser = new Browser(folder, true);
    page = folder.resolve("page.html");
    Files.writeString(page, Checklist.of(PLAN));
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  @BeforeEach
  void show() {
    browser.open(page);
  }

  @AfterEach
  void forget() throws IOException {
    browser.forget();
    try (DirectoryStream<Path> saved = Files.newDirectoryStream(folder, "*.csv")) {
      for (Path file : saved) {
        Files.delete(file);
      }
    }
  }

  private static WebElement entry() {
    return browser.find(".entry[data-item='" + FIRST + "']");
  }

  private static String value() {
    return entry().getDomProperty("value");
  }

  private static String text(String css) {
    return browser.find(css).getText();
  }

  private static void await(Supplier<Boolean> condition) {
    new WebDriverWait(browser.driver(), Duration.ofSeconds(10)).until(d -> condition.get());
  }

  private static List<String> units() {
    return browser.all("#units .go-on").stream().map(WebElement::getText).toList();
  }

  private static Path saved(String serial) throws IOException, InterruptedException {
    browser.find("#save").click();
    String name = PLAN.name().text() + "_" + serial + "_" + LocalDate.now() + ".csv";
    return Browser.awaited(folder.resolve(name));
  }

  /** What the page says of a file that is chosen: that it is loaded, or why it is not. */
  private static String load(Path file) {
    browser.run(
        "for (const id of ['trouble', 'hint', 'start-trouble']) document.getElementById(id).textContent = ''");
    browser.find("#file").sendKeys(file.toString());
    await(() -> !said().isEmpty());
    return said();
  }

  private static String said() {
    return (String)
        browser.run(
            "return ['trouble', 'hint', 'start-trouble'].map((id) => document.getElementById(id).textContent).join('')");
  }

  @Test
  void twoUnitsInTurnStayApart() throws Exception {
    browser.begin("A-1");
    entry().sendKeys("200.0");
    browser.find("#another").click();
    assertEquals(List.of("Go on with A-1"), units());
    assertEquals("", value());
    browser.begin("B-2");
    assertEquals("Unit B-2", text("#unit"));
    assertEquals("", value());
    entry().sendKeys("1.0");
    assertTrue(Files.readString(saved("B-2")).contains(",1.0,mA,"));
    browser.find("#another").click();
    assertEquals(List.of("Go on with B-2", "Go on with A-1"), units());
    browser.all("#units .go-on").get(1).click();
    assertEquals("200.0", value());
    String csv = Files.readString(saved("A-1"));
    assertTrue(csv.contains("sheet/generator-serial,A-1,"), csv);
    assertFalse(csv.contains("B-2") || csv.contains(",1.0,mA,"), csv);
  }

  /** Nothing is shown before somebody said which unit it is, not even after a reload. */
  @Test
  void itStartsWithTheQuestionWhichUnit() {
    assertFalse(browser.find("main").isDisplayed());
    browser.begin("A-1");
    assertTrue(browser.find("main").isDisplayed());
    entry().sendKeys("200.0");
    browser.find("#another").click();
    browser.driver().navigate().refresh();
    assertFalse(browser.find("main").isDisplayed());
    assertEquals("", value());
    assertTrue(text("#units").contains("1 of 33 readings"), text("#units"));
    assertTrue(text("#units").contains("not yet saved to a file"), text("#units"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "   ", "n/a", "0000", "?"})
  void whatIsNoSerialNumberIsRefused(String typed) {
    browser.begin(typed);
    assertFalse(browser.find("main").isDisplayed());
    assertTrue(text("#start-trouble").contains("serial number"), text("#start-trouble"));
  }

  /** Neither typed nor by correcting another: nobody would see it beside the same number. */
  @ParameterizedTest
  @ValueSource(ints = {0, 7, 9, 0x1d, 0x7f, 0x85, 0x2028})
  void aControlCharacterIsNoPartOfASerialNumber(int control) {
    String number = "A" + Character.toString(control) + "1";
    browser.run("document.getElementById('serial').value = arguments[0]", number);
    browser.find("#begin").click();
    assertFalse(browser.find("main").isDisplayed());
    assertTrue(text("#start-trouble").contains("serial number"), text("#start-trouble"));
    browser.find("#serial").clear();
    browser.begin("B-1");
    entry().sendKeys("200.0");
    browser.find("#another").click();
    browser.run(
        "window.prompt = () => arguments[0]; document.querySelector('#units .correct').click()",
        number);
    assertEquals(List.of("Go on with B-1"), units());
  }

  /** A number that is kept already is not begun anew, however it is written. */
  @ParameterizedTest
  @ValueSource(strings = {"AB-1", "ab-1", " ab 1", "AB1"})
  void aUnitThatIsKeptIsNotBegunAnew(String typed) {
    browser.begin("AB-1");
    entry().sendKeys("200.0");
    browser.find("#another").click();
    browser.begin(typed);
    assertFalse(browser.find("main").isDisplayed());
    assertTrue(text("#start-trouble").startsWith("AB-1 is on this device already"));
  }

  @Test
  void aUnitThatIsRemovedCanBeBroughtBack() {
    browser.begin("A-1");
    entry().sendKeys("200.0");
    browser.find("#another").click();
    browser.find("#units .remove").click();
    assertEquals(List.of(), units());
    browser.find("#undo-remove").click();
    browser.find("#units .go-on").click();
    assertEquals("200.0", value());
  }

  @Test
  void aMistypedSerialNumberIsCorrected() {
    browser.begin("A-11");
    entry().sendKeys("200.0");
    browser.find("#another").click();
    browser.run("window.prompt = () => 'A-1'");
    browser.find("#units .correct").click();
    assertEquals(List.of("Go on with A-1"), units());
    browser.find("#units .go-on").click();
    assertEquals("200.0", value());
    assertEquals(
        "A-1", browser.find("input[data-item='sheet/generator-serial']").getDomProperty("value"));
  }

  @Test
  void aFileOfAnotherUnitIsRefusedByName() throws Exception {
    browser.begin("A-1");
    entry().sendKeys("200.0");
    Path file = saved("A-1");
    browser.find("#another").click();
    browser.begin("B-2");
    entry().sendKeys("201.0");
    assertEquals(
        "Not loaded: it is of the unit A-1, but this sheet is of the unit B-2.", load(file));
    assertEquals("201.0", value());
    String text = Files.readString(file);
    Path other = folder.resolve("other.csv");
    Files.writeString(other, text.replace("sheet/generator-serial,A-1", "sheet/generator-serial,"));
    assertEquals(
        "Not loaded: it names no unit: the row 'Generator serial number' has no serial number.",
        load(other));
    Files.writeString(other, text.replace("A-1", "B-2").replace(FIRST, "x/" + FIRST));
    int line = text.substring(0, text.indexOf(FIRST)).split("\n", -1).length;
    assertEquals(
        "Not loaded: these points are not in the limits: x/" + FIRST + " (line " + line + ").",
        load(other));
    Files.writeString(other, text.replace("A-1", "B-2").replace("mA,,1,", "mA,,3,"));
    assertTrue(load(other).contains("this page cannot show attempt '3' of Line 1"), said());
    assertEquals("201.0", value());
  }

  /** At the start a file says itself which unit it is of. */
  @Test
  void aFileOpensItsUnit() throws Exception {
    browser.begin("A-1");
    entry().sendKeys("200.0");
    Path file = saved("A-1");
    entry().sendKeys("9");
    browser.find("#another").click();
    assertEquals("", value());
    assertEquals(file.getFileName() + " is loaded.", load(file));
    assertEquals("Unit A-1", text("#unit"));
    assertEquals("200.0", value());
    browser.find("#undo").click();
    assertEquals("200.09", value());
  }

  @Test
  void clearAndLoadCanBeUndone() throws Exception {
    browser.begin("A-1");
    entry().sendKeys("200.0");
    Path file = saved("A-1");
    browser.find("#clear").click();
    assertEquals("", value());
    assertEquals("Undo: clear", text("#undo"));
    assertTrue(text("#hint").contains("cleared"), text("#hint"));
    browser.find("#undo").click();
    assertEquals("", text("#hint"));
    assertEquals("200.0", value());
    assertEquals("Redo: clear", text("#undo"));
    entry().sendKeys("1");
    load(file);
    assertEquals("200.0", value());
    assertEquals("Undo: load a file", text("#undo"));
    // Nor does it get lost by a reload.
    browser.find("#another").click();
    browser.driver().navigate().refresh();
    browser.find("#units .go-on").click();
    browser.find("#undo").click();
    assertEquals("200.01", value());
  }

  /** The tab that opens a unit last has it; the other is told, and writes nothing any more. */
  @Test
  void aSecondTabIsTold() {
    browser.begin("A-1");
    entry().sendKeys("200.0");
    String one = browser.driver().getWindowHandle();
    browser.driver().switchTo().newWindow(WindowType.TAB);
    String two = browser.driver().getWindowHandle();
    browser.open(page);
    browser.find("#units .go-on").click();
    assertEquals("200.0", value());
    await(() -> text("#hint").startsWith("A-1 was open in another tab or window too"));
    entry().sendKeys("1");
    browser.driver().switchTo().window(one);
    assertTrue(text("#trouble").startsWith("A-1 has been opened in another tab"), said());
    assertEquals(true, browser.run("return document.querySelector('main').inert"));
    assertFalse(browser.find("#save").isEnabled());
    browser.find("#go-on-here").click();
    assertEquals("200.01", value());
    browser.driver().switchTo().window(two);
    await(() -> text("#trouble").startsWith("A-1 has been opened in another tab"));
    browser.driver().close();
    browser.driver().switchTo().window(one);
  }

  /** Two tabs with two units do not know of each other. */
  @Test
  void twoTabsWithTwoUnitsGoOn() {
    browser.begin("A-1");
    String one = browser.driver().getWindowHandle();
    browser.driver().switchTo().newWindow(WindowType.TAB);
    browser.open(page, "B-2");
    entry().sendKeys("1.0");
    browser.run("window.addEventListener('beforeunload', e => e.stopImmediatePropagation(), true)");
    browser.driver().close();
    browser.driver().switchTo().window(one);
    assertEquals("", text("#trouble"));
    assertEquals("", value());
    entry().sendKeys("200.0");
    assertEquals("200.0", value());
  }
}
