package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import passband.detect.Detection;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.DetectPage;
import passband.testing.Sheets;

/**
 * Every state of the page on a desktop, a tablet and a phone, light and dark: nothing wider than
 * the screen, every target 44 px, and nothing that axe-core finds.
 */
class ScreensBrowserTest {
  /** WCAG 2.2, 2.5.5: a target is at least 44 by 44 CSS pixels. */
  private static final int TARGET = 44;

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

  static Stream<Arguments> screens() {
    List<Arguments> screens = new ArrayList<>();
    List<Plan> plans = new ArrayList<>(Sheets.demo());
    plans.add(Sheets.YARROW);
    for (Plan plan : plans) {
      screens.add(Arguments.of(plan.name().text(), plan, 768, "dark"));
    }
    screens.add(Arguments.of("yarrow-service", Sheets.YARROW, 1280, "light"));
    screens.add(Arguments.of("yarrow-service", Sheets.YARROW, 390, "light"));
    screens.add(Arguments.of("yarrow-service", Sheets.YARROW, 390, "dark"));
    return screens.stream();
  }

  private static void look(int width, String scheme) {
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setDeviceMetricsOverride",
            Map.of("width", width, "height", 900, "deviceScaleFactor", 1, "mobile", width < 500));
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setEmulatedMedia",
            Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  @ParameterizedTest(name = "{0}, {2} px, {3}")
  @MethodSource("screens")
  void everyStateFitsAndIsAccessible(String name, Plan plan, int width, String scheme)
      throws IOException {
    look(width, scheme);
    Path page = folder.resolve(plan.name().text() + ".html");
    Files.writeString(page, Checklist.of(plan));
    browser.open(page);
    browser.forget();
    browser.driver().navigate().refresh();
    fits("start");
    browser.begin("?");
    good("start, no number");
    browser.find("#serial").clear();
    browser.begin("S-1");
    fits("page");
    browser.run(
        """
        for (const item of Fields.data.items) {
          if (item.kind === "reading") Fields.first(item.id).value = "1.0";
          if (item.kind === "record") Fields.first(item.id).value = "n/a";
        }
        document.querySelector("main input").dispatchEvent(new Event("input", { bubbles: true }));
        """);
    good("page, with fails");
    browser.run("document.getElementById('view').click()");
    fits("one line at a time, the start");
    browser.run(
        "const entry = document.querySelector('input.entry'); OneLine.reveal(entry); entry.focus()");
    good("one line at a time, a line");
    browser.run("OneLine.reveal(document.querySelector('.setup [data-item]'))");
    good("one line at a time, a wiring");
    browser.run("document.getElementById('clear').click()");
    browser.run("document.getElementById('another').click()");
    fits("start, with a unit");
  }

  private static void fits(String state) {
    assertEquals(List.of(), wide(), state);
    assertEquals(List.of(), small(), state);
  }

  private static void good(String state) {
    fits(state);
    List<String> found =
        new AxeBuilder()
            .analyze(browser.driver()).getViolations().stream()
                .map(v -> v.getId() + ": " + v.getNodes().get(0).getHtml())
                .toList();
    assertEquals(List.of(), found, state);
  }

  /** What a sheet catches, on a phone: wide tables are scrolled in, no word is cut in two. */
  @Test
  void whatIsCaughtIsReadOnAPhone() throws IOException {
    look(360, "light");
    Path page = folder.resolve("detect.html");
    for (Plan plan : Sheets.demo()) {
      Files.writeString(page, DetectPage.of(List.of(Detection.asItIs(plan))));
      browser.open(page);
      assertEquals(
          browser.run("return document.documentElement.clientWidth"),
          browser.run("return document.documentElement.scrollWidth"),
          plan.name().text());
      assertEquals(
          List.of(),
          browser.run(
              """
              const cells = [...document.querySelectorAll("table:not(.faults) :is(td, th)")];
              const heights = () => cells.map((cell) => cell.getBoundingClientRect().height);
              const cut = heights();
              cells.forEach((cell) => (cell.style.overflowWrap = "normal"));
              return heights().flatMap((whole, i) => (whole === cut[i] ? [] : [cells[i].textContent]));
              """),
          plan.name().text());
    }
  }

  /** What sticks out of the screen at its right. */
  private static List<?> wide() {
    List<?> wide =
        (List<?>)
            browser.run(
                """
                const edge = document.documentElement.clientWidth;
                return [...document.querySelectorAll("body *")]
                  .filter((one) => one.checkVisibility() && one.getBoundingClientRect().right > edge + 1)
                  .map((one) => one.tagName + "." + one.className + " " + one.getBoundingClientRect().right);
                """);
    return wide.size() > 5 ? wide.subList(0, 5) : wide;
  }

  /** Targets that a finger does not hit. */
  private static List<?> small() {
    List<?> targets =
        (List<?>)
            browser.run(
                """
                return [...document.querySelectorAll("button, input, a")]
                  .filter((one) => one.checkVisibility())
                  .map((one) => [one, one.getBoundingClientRect()])
                  .map(([one, { width, height }]) => [Math.min(width, height), one.outerHTML.slice(0, 120)]);
                """);
    assertTrue(targets.size() > 1, "no targets");
    return targets.stream()
        .map(one -> (List<?>) one)
        .filter(one -> ((Number) one.get(0)).doubleValue() < TARGET)
        .toList();
  }
}
