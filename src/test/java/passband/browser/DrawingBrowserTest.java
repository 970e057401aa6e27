package passband.browser;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.OutputType;
import passband.draw.Svg;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.Drawings;
import passband.testing.Sheets;
import passband.testing.WiredBenches;

/** Labels of the drawings, measured by the browser that shows them. */
class DrawingBrowserTest {
  @TempDir Path folder;

  /** Boxes of texts that overlap, or leave the picture, by more than the leading. */
  private static final String OVERLAPS =
      """
      const found = [];
      for (const svg of document.querySelectorAll('svg')) {
        const view = svg.viewBox.baseVal;
        const texts = [...svg.querySelectorAll('text')].map(t => ({b: t.getBBox(), t: t.textContent, bold: t.getAttribute('font-weight')}));
        for (const {b, t} of texts) {
          if (b.x < -0.5 || b.x + b.width > view.width + 0.5 || b.y + b.height > view.height + 2) {
            found.push('outside: ' + t);
          }
        }
        for (let i = 0; i < texts.length; i++) {
          for (let j = 0; j < i; j++) {
            const p = texts[i].b, q = texts[j].b;
            const wide = Math.min(p.x + p.width, q.x + q.width) - Math.max(p.x, q.x);
            const high = Math.min(p.y + p.height, q.y + q.height) - Math.max(p.y, q.y);
            if (wide > 0.5 && high > 3.5) {
              found.push(texts[i].t + ' over ' + texts[j].t + ' by ' + wide + ' x ' + high);
            }
          }
        }
      }
      return [document.querySelectorAll('svg text').length, ...found];
      """;

  private void assertClear(List<String> drawings) throws IOException {
    Path page = folder.resolve("drawings.html");
    StringBuilder html = new StringBuilder("<!DOCTYPE html><meta charset=utf-8><body>");
    drawings.forEach(d -> html.append(d.substring(d.indexOf("<svg"))).append("<hr>"));
    Files.writeString(page, html.toString());
    try (Browser browser = new Browser(folder, true)) {
      browser.open(page);
      List<?> found = (List<?>) browser.run(OVERLAPS);
      assertTrue((Long) found.get(0) > drawings.size() * 5L);
      assertEquals(List.of(), found.subList(1, found.size()));
    }
  }

  @Test
  void labelsOfTheDemoNeverOverlap() throws IOException {
    List<String> drawings = new ArrayList<>();
    for (Plan plan : Sheets.demo()) {
      drawings.addAll(Drawings.setups(plan).values());
      drawings.addAll(Drawings.limits(plan).values());
    }
    assertClear(drawings);
  }

  /** Benches with long and short names, many leads, jumpers at both sides. */
  @Test
  void labelsOfInventedBenchesNeverOverlap() throws IOException {
    List<String> drawings = new ArrayList<>();
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      drawings.addAll(Drawings.setups(WiredBenches.plan(random)).values());
    }
    assertClear(drawings);
  }

  private static final String EXPAND =
      """
      for (const use of document.querySelectorAll('use')) {
        use.replaceWith(document.querySelector(use.getAttribute('href')).cloneNode(true));
      }
      """;

  /**
   * What a drawing uses of another is drawn as if it stood in it, also where that one is hidden.
   */
  @Test
  void whatDrawingsShareLooksAsIfEachHadIt() throws IOException {
    int compared = 0;
    try (Browser browser = new Browser(folder, true)) {
      for (Plan plan : Sheets.demo()) {
        String html = Checklist.of(plan);
        Path page = folder.resolve("shared.html");
        StringBuilder drawings = new StringBuilder("<!DOCTYPE html><meta charset=utf-8><style>");
        drawings.append(Svg.STYLE).append("</style><body>");
        Matcher svg = Pattern.compile("(?s)<svg.*?</svg>").matcher(html);
        while (svg.find()) {
          drawings.append("<div>").append(svg.group()).append("</div>");
        }
        Files.writeString(page, drawings);
        browser.open(page);
        int all = browser.all("svg").size();
        for (int i = 0; i < all; i++) {
          browser.run(
              "document.querySelectorAll('div').forEach((d, i) => (d.hidden = i !== arguments[0]))",
              i);
          if (browser.all("div:not([hidden]) use").isEmpty()) {
            continue;
          }
          byte[] used = browser.find("div:not([hidden]) svg").getScreenshotAs(OutputType.BYTES);
          browser.run(EXPAND);
          byte[] whole = browser.find("div:not([hidden]) svg").getScreenshotAs(OutputType.BYTES);
          assertArrayEquals(whole, used, plan.name() + ", drawing " + i);
          compared++;
          browser.open(page);
        }
      }
    }
    assertTrue(compared > 10, compared + " compared");
  }
}
