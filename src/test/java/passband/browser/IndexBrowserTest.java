package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.plan.Plan;
import passband.plan.Release;
import passband.render.IndexPage;
import passband.testing.Sheets;

/** The library at a glance, in a browser. */
class IndexBrowserTest {
  @TempDir static Path folder;

  private static List<String> shown(Browser browser) {
    return browser.all("tbody tr").stream()
        .filter(row -> row.isDisplayed())
        .map(row -> row.findElement(org.openqa.selenium.By.tagName("small")).getText())
        .toList();
  }

  @ParameterizedTest
  @CsvSource({"1280, light", "390, dark"})
  void itIsSearchedWithoutANetwork(int width, String scheme) throws IOException {
    List<Plan> plans = List.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW);
    Path page = folder.resolve("index.html");
    Sheets.YARROW.released(Release.RELEASED);
    Files.writeString(
        page, IndexPage.of(plans.stream().map(plan -> IndexPage.Entry.of(plan, 3)).toList()));
    try (Browser browser = new Browser(folder, true)) {
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
      browser.open(page);
      assertEquals(List.of(), browser.complaints());
      assertEquals(0L, browser.run("return performance.getEntriesByType('resource').length"));
      assertEquals(List.of("sundew-energy", "teasel-output", "yarrow-service"), shown(browser));
      assertEquals("3 sheets", browser.find("#found").getText());
      List<String> faults =
          new AxeBuilder()
              .analyze(browser.driver()).getViolations().stream()
                  .map(v -> v.getId() + ": " + v.getNodes().get(0).getHtml())
                  .toList();
      assertEquals(List.of(), faults);
      assertEquals(
          true,
          browser.run(
              "return [...document.querySelectorAll('a, input')].every((one) =>"
                  + " Math.min(one.getBoundingClientRect().width, one.getBoundingClientRect().height) >= 44)"));
      assertEquals(
          false, browser.run("return document.documentElement.scrollWidth > window.innerWidth"));
      browser.find("#find").sendKeys("YARROW ver\u00ecfic");
      assertEquals(List.of("yarrow-service"), shown(browser));
      assertEquals("1 sheet", browser.find("#found").getText());
    }
  }
}
