package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.Records;
import passband.testing.Sheets;

/**
 * Enter, Tab and the button of one line at a time never pass a lead that is not ticked, a reading
 * that fails or is unclear, or a choice that is not made.
 */
class KeyboardBrowserTest {
  private static final int PRESSES = 60;

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

  @AfterEach
  void forget() {
    browser.forget();
  }

  static Stream<Plan> plans() {
    return Stream.concat(Stream.of(Sheets.TEASEL, Sheets.YARROW), Sheets.demo().stream());
  }

  private static void show(Plan plan) throws IOException {
    Path page = folder.resolve(plan.name().text() + ".html");
    Files.writeString(page, Checklist.of(plan));
    browser.open(page, "K-1");
  }

  /** What is written, by item. */
  private static void fill(Map<String, String> written) {
    browser.run(
        """
        const written = JSON.parse(arguments[0]);
        Fields.fill(new Map(Object.entries(written).map(([id, text]) => [id, [text, "", false]])));
        document.querySelector("main input").dispatchEvent(new Event("input", { bubbles: true }));
        """,
        new Gson().toJson(written));
  }

  /** Good, but for some items, which are left open or are bad. */
  private static Map<String, String> written(Plan plan, Random random, int oneIn) {
    Map<String, String> good = new HashMap<>();
    Records.of(Evidence.of(plan).list(), random.nextBoolean())
        .readings()
        .rows()
        .forEach(row -> good.put(row.point(), row.reading()));
    Map<String, String> written = new HashMap<>();
    for (Item item : Evidence.of(plan).list().items()) {
      String value = good.get(item.id());
      if (value != null && random.nextInt(oneIn) > 0) {
        boolean bad = item instanceof Item.Reading && random.nextInt(oneIn) == 0;
        written.put(item.id(), bad ? List.of("99999.9", "x").get(random.nextInt(2)) : value);
      }
    }
    return written;
  }

  /** Of the items before the one that has the focus, those that must not be passed. */
  private static List<String> passed() {
    return before(null);
  }

  /** What is open before an item; before what has the focus where there is none. */
  @SuppressWarnings("unchecked")
  private static List<String> before(String id) {
    return (List<String>)
        browser.run(
            """
            const { data } = Fields;
            const written = new Map([...Fields.entered()].map(([id, one]) => [id, Fields.attempts(Fields.items.get(id), one)]));
            const verdicts = Verdicts.of(written);
            const closed = Verdicts.closed(verdicts);
            const others = ["instrument-overdue", "gate-open", "gate-failed", "earlier-open", "earlier-failed"];
            const stops = (item) => {
              const { verdict, causes } = verdicts.get(item.id);
              if (verdict === "pass" || verdict === "does not apply" || closed.has(item.id)) return false;
              if (verdict === "not done") return item.kind === "tick" || item.kind === "choice";
              if (item.kind === "derived" && verdict === "unclear") return false;
              return !causes.every((cause) => others.includes(cause.code));
            };
            const item = arguments[0] === null ? Fields.itemOf(document.activeElement) : Fields.items.get(arguments[0]);
            const place = item === undefined ? data.items.length : data.items.indexOf(item);
            return data.items.slice(0, place).filter(stops).map((one) => one.id);
            """,
            id);
  }

  private static void press(CharSequence key) {
    new Actions(browser.driver()).sendKeys(key).perform();
  }

  /** Whether it takes the focus: a field of what does not apply takes none. */
  private static boolean focus(String id) {
    return (Boolean)
        browser.run(
            "const field = Fields.first(arguments[0]); OneLine.reveal(field); field.focus();"
                + "return document.activeElement === field",
            id);
  }

  private static String focused() {
    return (String)
        browser.run(
            "const item = Fields.itemOf(document.activeElement); return item === undefined ? document.activeElement.id : item.id");
  }

  private static List<String> fields(Plan plan) {
    return Evidence.of(plan).list().items().stream()
        .filter(item -> !(item instanceof Item.Derived))
        .map(Item::id)
        .toList();
  }

  @ParameterizedTest
  @MethodSource("plans")
  void enterPassesNothingThatIsOpen(Plan plan) throws IOException {
    show(plan);
    Random random = new Random(plan.name().text().hashCode());
    List<String> fields = fields(plan);
    int pressed = 0;
    for (int i = 0; i < PRESSES; i++) {
      fill(written(plan, random, i % 2 == 0 ? 8 : 80));
      String from = fields.get(random.nextInt(fields.size()));
      focus(from);
      // What a gate closes takes no focus.
      if (focused().equals(from)) {
        press(Keys.ENTER);
        assertEquals(List.of(), passed(), from + " to " + focused());
        pressed++;
      }
    }
    assertTrue(pressed > PRESSES / 4, pressed + " presses");
  }

  @ParameterizedTest
  @MethodSource("plans")
  void tabReachesNoReadingPastWhatIsOpen(Plan plan) throws IOException {
    show(plan);
    Random random = new Random(plan.name().text().hashCode());
    List<String> fields = fields(plan);
    int reached = 0;
    for (int i = 0; i < PRESSES; i++) {
      fill(written(plan, random, i % 2 == 0 ? 8 : 10_000));
      String from = fields.get(random.nextInt(fields.size()));
      focus(from);
      // Past the tick "not done" and the button of a timer, which stand before the next reading.
      for (int tab = 0; tab < 3; tab++) {
        press(Keys.TAB);
        boolean reading =
            (Boolean) browser.run("return document.activeElement.matches('input.entry')");
        assertTrue(!reading || passed().isEmpty(), from + " to " + focused());
        reached += reading ? 1 : 0;
      }
    }
    assertTrue(reached > 0, "no reading was reached");
  }

  /** What does not apply takes no mark; what was written before it did not can be taken back. */
  @ParameterizedTest
  @MethodSource("plans")
  void whatDoesNotApplyIsNotFilledIn(Plan plan) throws IOException {
    show(plan);
    Random random = new Random(plan.name().text().hashCode());
    for (int i = 0; i < 10; i++) {
      fill(written(plan, random, i % 2 == 0 ? 2 : 20));
      assertEquals(
          List.of(),
          browser.run(
              """
              return Fields.data.items.filter((item) => {
                const { verdict } = Shown.of(item.id);
                const fields = Fields.all.get(item.id);
                const none = verdict === "does not apply";
                const blank = Fields.entered().get(item.id).every((one) => one === "" || one === false);
                const shut = item.kind === "reading" && Verdicts.closed(new Map(Fields.data.items.map(({ id }) => [id, Shown.of(id)]))).has(item.id);
                return !(fields.every(({ disabled }) => disabled === (none || shut)) && (!none || blank));
              }).map(({ id }) => id);
              """));
    }
    fill(Map.of());
    Set<String> closed = disabled();
    Set<String> conditional = new HashSet<>();
    for (Item item : Evidence.of(plan).list().items()) {
      if (!item.head().applies().isEmpty() || !item.head().when().isEmpty()) {
        conditional.add(item.id());
      }
    }
    assertTrue(closed.containsAll(conditional), "nothing is chosen yet");
  }

  /** The tick by which the keyboard passes what is bad, which goes when that is mended. */
  @Test
  void whatIsGoodIsNotToBeNoted() throws IOException {
    for (Plan plan : plans().toList()) {
      show(plan);
      fill(written(plan, new Random(7), 2));
      assertNotEquals(List.of(), noted(), plan.name().text());
      fill(written(plan, new Random(7), Integer.MAX_VALUE));
      assertEquals("pass", browser.run("return document.body.dataset.overall"));
      assertEquals(List.of(), noted(), plan.name().text());
      browser.forget();
    }
  }

  private static Object noted() {
    return browser.run(
        "return [...document.querySelectorAll('.noted')].filter((one) => one.checkVisibility()).map(({ id }) => id)");
  }

  @SuppressWarnings("unchecked")
  private static Set<String> disabled() {
    return new HashSet<>(
        (List<String>)
            browser.run(
                "return Fields.data.items.filter(({ id }) => Fields.all.get(id).every((one) => one.disabled)).map(({ id }) => id)"));
  }

  /** From the first line to the last, all being well, by Enter alone. */
  @ParameterizedTest
  @MethodSource("plans")
  void enterGoesThroughTheWholeSheet(Plan plan) throws IOException {
    show(plan);
    Map<String, String> written = written(plan, new Random(1), Integer.MAX_VALUE);
    fill(written);
    assertEquals("pass", browser.run("return document.body.dataset.overall"));
    Map<String, String> good = Map.copyOf(written);
    written.keySet().removeIf(id -> browser.all("input.entry[data-item='" + id + "']").size() == 1);
    fill(written);
    String before = "";
    int lines = 0;
    focus("sheet/done-by");
    press(Keys.ENTER);
    while (!focused().equals("save")) {
      assertNotEquals(before, focused());
      before = focused();
      browser.run(
          "document.activeElement.value = arguments[0];"
              + "document.activeElement.dispatchEvent(new Event('input', { bubbles: true }))",
          good.get(before));
      press(Keys.ENTER);
      lines++;
    }
    assertTrue(lines > 5, lines + " lines");
  }

  /** What fails twice is passed only when somebody says that it is noted, and not by Enter. */
  @Test
  void whatFailsTwiceIsNotedFirst() throws IOException {
    Plan plan = Sheets.TEASEL;
    show(plan);
    String id = "bipolar-output/bipolar/thin/5W/125ohm/current";
    Map<String, String> written = written(plan, new Random(1), Integer.MAX_VALUE);
    written.put(id, "1.0");
    fill(written);
    focus("bipolar-output/bipolar/thin/20W/125ohm/current");
    press(Keys.ENTER);
    WebElement again = browser.driver().switchTo().activeElement();
    assertEquals(id, focused());
    assertEquals("again", again.getDomAttribute("class"));
    again.sendKeys("2.0", Keys.ENTER);
    WebElement noted = browser.driver().switchTo().activeElement();
    assertEquals("noted", noted.getDomAttribute("class"));
    noted.sendKeys(Keys.ENTER);
    assertEquals(noted, browser.driver().switchTo().activeElement());
    noted.sendKeys(Keys.SPACE, Keys.ENTER);
    assertNotEquals(id, focused());
    // Of another reading it says nothing.
    again.sendKeys("1");
    again.sendKeys(Keys.ENTER);
    assertEquals("noted", browser.driver().switchTo().activeElement().getDomAttribute("class"));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void oneLineAtATimePassesNothingThatIsOpen(Plan plan) throws IOException {
    show(plan);
    browser.find("#view").click();
    Random random = new Random(plan.name().text().hashCode());
    List<String> fields = fields(plan);
    int pressed = 0;
    for (int i = 0; i < PRESSES; i++) {
      fill(written(plan, random, i % 2 == 0 ? 8 : 80));
      String from = fields.get(random.nextInt(fields.size()));
      if (!focus(from)) {
        continue;
      }
      pressed++;
      if (i % 3 == 0) {
        press(Keys.ENTER);
      } else {
        browser.run("document.getElementById('forward').click()");
      }
      String first =
          (String)
              browser.run(
                  "const shown = [...document.querySelectorAll('[data-item]')].find((one) => one.checkVisibility());"
                      + "return shown === undefined ? null : shown.dataset.item");
      if (first != null) {
        assertEquals(List.of(), before(first), from + " to " + first);
      }
    }
    assertTrue(pressed > PRESSES / 3, pressed + " presses");
  }

  /** What the page says of an item is in the words of the sheet: no identity, no name of a part. */
  @ParameterizedTest
  @MethodSource("plans")
  void nothingIsSaidByItsIdentity(Plan plan) throws IOException {
    show(plan);
    Random random = new Random(plan.name().text().hashCode());
    List<String> said = new ArrayList<>();
    for (int round = 0; round < 12; round++) {
      Map<String, String> written = written(plan, random, 3 + random.nextInt(20));
      boolean overdue = random.nextBoolean();
      written.replaceAll((id, text) -> overdue && id.contains("due") ? "2001-01-31" : text);
      fill(written);
      said.addAll(
          texts(
              "return [...document.querySelectorAll('.said, [role=status]')].map(o => o.textContent)"));
    }
    List<String> names = new ArrayList<>();
    for (Item item : Evidence.of(plan).list().items()) {
      names.add(item.id());
      if (item instanceof Item.Measured one) {
        names.add(one.scale().quantity());
      }
      String last = item.id().substring(item.id().lastIndexOf('/') + 1);
      names.addAll(last.contains("-") ? Set.of(last) : Set.of());
    }
    // A quantity of one word may be called so.
    names.removeIf(name -> !name.contains("-") && !name.contains("/"));
    said.removeIf(text -> names.stream().noneMatch(name -> contains(text, name)));
    assertEquals(List.of(), said);
  }

  private static boolean contains(String text, String name) {
    return Pattern.compile("(?<![\\w/-])" + Pattern.quote(name) + "(?![\\w/-])")
        .matcher(text)
        .find();
  }

  @SuppressWarnings("unchecked")
  private static List<String> texts(String script) {
    return (List<String>) browser.run(script);
  }
}
