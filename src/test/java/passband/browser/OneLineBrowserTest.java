package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import passband.draw.WiringDrawing;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.render.Checklist;
import passband.testing.Sheets;
import passband.words.Language;

/** One line at a time shows what is to be done at that line, by the plan, and nothing else. */
class OneLineBrowserTest {
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

  static List<Plan> plans() {
    List<Plan> plans = new ArrayList<>(Sheets.demo());
    plans.add(Sheets.YARROW);
    return plans;
  }

  private static void show(Plan plan) throws IOException {
    Path page = folder.resolve(plan.name().text() + ".html");
    Files.writeString(page, Checklist.of(plan));
    browser.open(page);
    browser.forget();
    browser.begin("L-1");
    browser.find("#view").click();
  }

  private static String plain(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }

  private static long whole(Rational seconds) {
    return Long.parseLong(seconds.ceilingTo(Rational.ONE).toPlain());
  }

  /** What the steps of a point are in words, and what they ask for said as under the line. */
  private static List<String> steps(Point point, Language language) {
    List<String> steps = new ArrayList<>();
    boolean activated = false;
    for (PlanStep step : point.stepsWithRest()) {
      boolean activates = step.standsFor(PlanStep.Kind.ACTIVATE);
      String on =
          point.onTime() != null
              ? language.of("step.on", whole(point.onTime()) + " s")
              : point.mode() != null && point.mode().duty().on() != null
                  ? language.of("step.on.most", whole(point.mode().duty().on()) + " s")
                  : null;
      String text = (activates && !activated && on != null ? on + " " : "") + step.text(language);
      activated = activates;
      String said =
          switch (step.kind()) {
            case CONFIRM -> language.of("at.line.tick", text);
            case RECORD -> language.of("at.line.write", text);
            case CHOOSE -> language.of("at.line.mark", text);
            case CAUTION -> language.of("caution") + " " + text;
            default -> text;
          };
      steps.add(plain(said));
    }
    return steps;
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> shown(String reading) {
    return (Map<String, Object>)
        browser.run(
            """
            const entry = Fields.first(arguments[0]);
            OneLine.reveal(entry);
            const visible = (css) => [...document.querySelectorAll(css)].filter((one) => one.checkVisibility());
            const texts = (css) => visible(css).map((one) => one.textContent);
            const drawing = document.querySelector("#panel svg");
            return {
              steps: texts("#panel ol li"),
              outlet: texts(".outlet"),
              wiring: drawing === null ? "" : drawing.getAttribute("aria-label"),
              limits: texts("td.limits"),
              entry: entry.checkVisibility(),
              entries: visible("input.entry").map((one) => one.dataset.item),
              whole: visible("main > section").length,
            };
            """,
            reading);
  }

  @ParameterizedTest
  @MethodSource("plans")
  void eachLineIsShownWithItsWiringAndItsSteps(Plan plan) throws IOException {
    show(plan);
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        List<String> readings =
            new ArrayList<>(point.readings().stream().map(r -> r.id()).toList());
        point.limits().forEach(limit -> readings.add(limit.id()));
        Map<String, Object> shown = shown(readings.get(0));
        String where = plan.name().text() + ": " + point.id();
        List<?> steps = (List<?>) shown.get("steps");
        assertEquals(
            steps(point, plan.language()),
            steps.stream().map(s -> plain((String) s)).toList(),
            where);
        assertEquals(
            run.outlet() == null ? List.of() : List.of(run.outlet().title()),
            shown.get("outlet"),
            where);
        assertEquals(
            run.setup() == null ? "" : WiringDrawing.of(plan, run).title(),
            shown.get("wiring"),
            where);
        assertEquals(true, shown.get("entry"), where);
        assertTrue(readings.containsAll((List<?>) shown.get("entries")), where);
        assertEquals(readings.size(), ((List<?>) shown.get("limits")).size(), where);
        assertEquals(1L, shown.get("whole"), where);
      }
    }
  }

  /** Whatever has the focus, the step that is to be done is between the bars of a small screen. */
  @ParameterizedTest
  @CsvSource({"360, 740", "740, 420", "800, 1100"})
  void theStepToBeDoneIsInSight(int width, int height) throws IOException {
    Plan plan = timed();
    Point point = plan.points().stream().filter(OneLineBrowserTest::timed).findFirst().get();
    ChromeDriver driver = browser.driver();
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
    try {
      show(plan);
      fillBefore(point);
      List<String> boxes = boxes(point);
      shown(boxes.get(0));
      for (PlanStep step : point.steps()) {
        if (step != point.steps().get(0)) {
          new WebDriverWait(driver, Duration.ofSeconds(10))
              .withMessage(() -> step.text(plan.language()) + ": " + outOfSight())
              .until(d -> outOfSight().isEmpty());
        }
        for (String id : step.kind() == PlanStep.Kind.READ ? boxes : List.<String>of()) {
          write(id);
        }
        browser.find("#forward").click();
      }
    } finally {
      driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
    }
  }

  /** Where the step to be done is, if its first lines are not between the bars. */
  private static String outOfSight() {
    return (String)
        browser.run(
            """
            const step = document.querySelector("#panel li[aria-current]").getBoundingClientRect();
            const above = document.querySelector(".bar").getBoundingClientRect().bottom;
            const below = document.querySelector("#stops").getBoundingClientRect().top;
            const last = Math.min(step.bottom, step.top + (below - above) / 2);
            return step.top >= above - 1 && last <= below + 1
              ? "" : `${step.top} to ${step.bottom}, between ${above} and ${below}`;
            """);
  }

  private static void await(String css, String text) {
    new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
        .until(d -> browser.find(css).getText().equals(text));
  }

  /** The time of the output begins when it is activated, that of the rest when it is off. */
  @Test
  void timersBeginWithTheirSteps() throws IOException {
    Plan plan = timed();
    Point point = plan.points().stream().filter(OneLineBrowserTest::timed).findFirst().get();
    show(plan);
    fillBefore(point);
    List<String> boxes = boxes(point);
    shown(boxes.get(0));
    WebElement forward = browser.find("#forward");
    long on = whole(point.onTime());
    long rest = whole(point.rest());
    String left = "";
    List<String> said = steps(point, plan.language());
    for (int i = 0; i < point.steps().size(); i++) {
      PlanStep step = point.steps().get(i);
      assertEquals("Step done", forward.getText());
      assertEquals(said.get(i), plain(browser.find("#panel li[aria-current]").getText()));
      for (String id : step.kind() == PlanStep.Kind.READ ? boxes : List.<String>of()) {
        write(id);
      }
      forward.click();
      if (step.kind() == PlanStep.Kind.ACTIVATE) {
        left = browser.find("#left").getText();
        assertEquals("Output on: " + on + " s left", left);
        browser.run("window.later += arguments[0] * 1000", on);
        await("#over", "Output on: " + on + " s are over");
      }
    }
    assertTrue(!left.isEmpty(), "nothing was activated");
    assertEquals("Rest: " + rest + " s left", browser.find("#left").getText());
    for (int i = 0; i < 3; i++) {
      forward.sendKeys(Keys.ENTER);
      assertEquals("Step done", forward.getText());
      assertEquals(said.get(said.size() - 1), plain(current()));
    }
    WebElement observed = browser.find("#observed");
    assertEquals("Rest observed", observed.getText());
    browser.run("window.later += arguments[0] * 1000", rest);
    await("#over", "Rest: " + rest + " s are over");
    assertTrue(!observed.isDisplayed());
    forward.click();
    assertTrue(browser.all("#panel li[aria-current]").isEmpty() || !said.contains(current()));
  }

  /** Without the timer it goes on only when somebody says that the time has passed. */
  @Test
  void aRestIsConfirmedByAButtonOfItsOwn() throws IOException {
    Plan plan = timed();
    Point point = plan.points().stream().filter(OneLineBrowserTest::timed).findFirst().get();
    show(plan);
    fillBefore(point);
    List<String> boxes = boxes(point);
    // What is written on the whole sheet: of what comes after it nothing is known.
    browser.find("#view").click();
    boxes.forEach(OneLineBrowserTest::write);
    browser.run("document.activeElement.blur()");
    browser.run("Fields.first(arguments[0]).focus()", boxes.get(0));
    browser.find("#view").click();
    WebElement forward = browser.find("#forward");
    List<String> said = steps(point, plan.language());
    for (int i = 0; i < said.size(); i++) {
      forward.click();
    }
    assertEquals(said.get(said.size() - 1), plain(current()));
    browser.find("#observed").click();
    assertTrue(browser.all("#panel li[aria-current]").isEmpty() || !said.contains(current()));
  }

  /** Of each condition of an item the first answer that meets it is given. */
  private static void everythingApplies() {
    browser.run(
        """
        const met = ({ item, is }) => (Fields.all.get(item).find(({ value }) => value === is[0]).checked = true);
        Fields.data.items.forEach(({ applies = [], when = [] }) => [...applies, ...when].forEach(met));
        document.querySelector("main input").dispatchEvent(new Event("input", { bubbles: true }));
        """);
  }

  /**
   * A box is shut until its step has come, and each step that comes before says that it is first.
   */
  @ParameterizedTest
  @MethodSource("plans")
  void nothingIsWrittenBeforeItsStep(Plan plan) throws IOException {
    show(plan);
    everythingApplies();
    int shut = 0;
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        int last = lastReading(point);
        List<String> boxes = boxes(point);
        if (last <= 0 || boxes.isEmpty()) {
          continue;
        }
        shown(boxes.get(0));
        for (String id : boxes) {
          String where = plan.name().text() + ": " + id;
          boolean gated =
              (Boolean)
                  browser.run(
                      "const field = Fields.first(arguments[0]); field.focus(); return field.disabled",
                      id);
          if (gated) {
            String said =
                (String)
                    browser.run(
                        "return Fields.first(arguments[0]).closest('tr').querySelector('.said').textContent",
                        id);
            assertTrue(gates(plan).stream().anyMatch(said::contains), where + ": " + said);
            continue;
          }
          browser.driver().switchTo().activeElement().sendKeys("1");
          assertEquals("", browser.run("return Fields.first(arguments[0]).value", id), where);
          String first = steps(point, plan.language()).get(0);
          assertTrue(plain(browser.find("#hint").getText()).contains(first), where);
          shut++;
        }
      }
    }
    assertTrue(shut > 0, "no box was shut");
  }

  /** What the author says at each gate, without the full stop. */
  private static List<String> gates(Plan plan) {
    return plan.stages().stream()
        .filter(Stage.Gate.class::isInstance)
        .map(gate -> ((Stage.Gate) gate).text().replaceAll("\\.$", ""))
        .toList();
  }

  /** The place of the last step at which is read, or that stands for it; -1 where none is. */
  private static int lastReading(Point point) {
    int last = -1;
    for (int i = 0; i < point.steps().size(); i++) {
      last = point.steps().get(i).standsFor(PlanStep.Kind.READ) ? i : last;
    }
    return last;
  }

  /** A blank that may stay one is asked for once, and passed when the button is pressed again. */
  @Test
  void aBlankIsAskedForOnce() throws IOException {
    Plan plan = Sheets.YARROW;
    show(plan);
    String position = browser.find("#position").getText();
    List<String> asked = new ArrayList<>();
    while (browser.find("#position").getText().equals(position)) {
      browser.find("#forward").click();
      asked.add((String) browser.run("return document.activeElement.dataset.item || ''"));
      assertTrue(asked.size() < 30, asked::toString);
    }
    asked.remove(asked.size() - 1);
    List<?> blanks =
        (List<?>)
            browser.run(
                "return [...document.querySelectorAll('header [data-item]')].filter(one => one.value === '').map(one => one.dataset.item)");
    assertEquals(blanks, asked);
    assertTrue(!asked.isEmpty());
  }

  private static String current() {
    return browser.find("#panel li[aria-current]").getText();
  }

  private static Plan timed() {
    return Sheets.demo().stream()
        .filter(p -> p.points().stream().anyMatch(OneLineBrowserTest::timed))
        .findFirst()
        .orElseThrow();
  }

  /** The identities of what is read at a point. */
  private static List<String> boxes(Point point) {
    List<?> boxes =
        (List<?>)
            browser.run(
                "return arguments[0].filter((id) => Fields.items.get(id).kind === 'reading')",
                Stream.concat(
                        point.readings().stream().map(r -> r.id()),
                        point.limits().stream().map(l -> l.id()))
                    .toList());
    return boxes.stream().map(String.class::cast).toList();
  }

  private static void write(String id) {
    browser.run(
        """
        const field = Fields.first(arguments[0]);
        if (field.readOnly) throw new Error("shut");
        const { low, high } = Fields.items.get(arguments[0]);
        field.value = low || high || "300.00";
        field.dispatchEvent(new Event("input", { bubbles: true }));
        """,
        id);
  }

  /** Everything but the readings of a point is written, and time passes when it is told to. */
  private static void fillBefore(Point point) {
    browser.run(
        """
        for (const item of Fields.data.items) {
          if (arguments[0].includes(item.id)) continue;
          if (item.kind === "tick") Fields.first(item.id).checked = true;
          if (item.kind === "choice") Fields.all.get(item.id).find((one) => one.value === (item.pass || item.options[0])).checked = true;
          if (item.kind === "record" && item.asks === "number") Fields.first(item.id).value = item.low || item.high || "80";
          if (item.kind === "reading") Fields.first(item.id).value = item.low || item.high || "300.00";
        }
        document.querySelector("main input").dispatchEvent(new Event("input", { bubbles: true }));
        const real = performance.now.bind(performance);
        window.later = 0;
        performance.now = () => real() + window.later;
        """,
        boxes(point));
  }

  /** Nobody reads again while the output is still on: the steps after the reading come first. */
  @Test
  void whatFailsIsReadAgainWhenTheStepsAreThrough() throws IOException {
    Plan plan = Sheets.YARROW;
    Point point =
        plan.points().stream()
            .filter(p -> !p.limits().isEmpty() && stepAfterReading(p) > 0)
            .findFirst()
            .orElseThrow();
    String id = point.limits().get(0).id();
    show(plan);
    browser.run(
        """
        for (const item of Fields.data.items) {
          if (item.kind === "tick") Fields.first(item.id).checked = true;
          if (item.kind === "choice") Fields.all.get(item.id).find((one) => one.value === (item.pass || item.options[0])).checked = true;
        }
        document.querySelector("main input").dispatchEvent(new Event("input", { bubbles: true }));
        """);
    shown(id);
    for (int i = 0; i + 1 < stepAfterReading(point); i++) {
      browser.find("#forward").click();
    }
    assertEquals(id, browser.run("return document.activeElement.dataset.item"));
    browser.driver().switchTo().activeElement().sendKeys("99999.99", Keys.ENTER);
    int after = stepAfterReading(point);
    assertEquals("forward", browser.driver().switchTo().activeElement().getDomAttribute("id"));
    assertEquals(
        steps(point, plan.language()).get(after),
        plain(browser.find("#panel li[aria-current]").getText()));
    for (int i = after; i < steps(point, plan.language()).size(); i++) {
      browser.find("#forward").click();
    }
    browser.find("#forward").click();
    if (browser.find("#observed").isDisplayed()) {
      browser.find("#observed").click();
      browser.find("#forward").click();
    }
    assertEquals(
        steps(point, plan.language()).get(0),
        plain(browser.find("#panel li[aria-current]").getText()));
    assertTrue(browser.find("#hint").getText().contains("read again"));
  }

  /** The place of the step after the one at which is read; -1 where that is the last. */
  private static int stepAfterReading(Point point) {
    for (int i = 0; i + 1 < point.steps().size(); i++) {
      if (point.steps().get(i).kind() == PlanStep.Kind.READ) {
        return i + 1;
      }
    }
    return -1;
  }

  private static boolean timed(Point point) {
    return point.onTime() != null
        && point.rest() != null
        && !point.limits().isEmpty()
        && point.steps().stream().anyMatch(s -> s.kind() == PlanStep.Kind.ACTIVATE);
  }
}
