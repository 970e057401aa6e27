package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.plan.Plan;
import passband.render.Drawings;
import passband.testing.Sheets;
import passband.testing.Snippet;

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

  private static String words(Random random, int most) {
    String[] some = {
      "left",
      "pin",
      "return",
      "electrode",
      "contact",
      "switch",
      "yellow-ringed",
      "A",
      "W",
      "accessory",
      "interconnection",
      "\u00b5\u03a9",
      "no.",
      "centre",
      "WWWWWWWWWWWWWWWWWWWWW"
    };
    StringBuilder text = new StringBuilder();
    int count = 1 + random.nextInt(most);
    for (int i = 0; i < count; i++) {
      text.append(i == 0 ? "" : " ").append(some[random.nextInt(some.length)]);
    }
    return text.append(' ').append(random.nextInt(900)).toString();
  }

  /** Benches with long and short names, many leads, jumpers at both sides. */
  @Test
  void labelsOfInventedBenchesNeverOverlap() throws IOException {
    List<String> drawings = new ArrayList<>();
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      drawings.addAll(Drawings.setups(bench(random)).values());
    }
    assertClear(drawings);
  }

  private static Plan bench(Random random) {
    int contacts = 1 + random.nextInt(5);
    StringBuilder device = new StringBuilder();
    StringBuilder analyzer = new StringBuilder();
    StringBuilder leads = new StringBuilder();
    StringBuilder wires = new StringBuilder();
    for (int i = 0; i < contacts; i++) {
      device.append("    contact c" + i + " \"" + words(random, 3) + " c" + i + "\"\n");
      analyzer.append("  key k" + i + " \"" + words(random, 3) + " k" + i + "\"\n");
      leads.append("  lead l" + i + " \"" + words(random, 4) + " l" + i + "\", rated 5 kV\n");
      wires.append("    connect l" + i + " from outlet.c" + i + " to analyzer.k");
      wires.append((i * 3 + 1) % contacts == i ? i : contacts - 1 - i).append('\n');
    }
    String text =
        """
        device gen "%s" {
          outlet bip "%s" {
            pole left  "%s l"
            pole right "%s r"
        %s  }
          outlet back "%s" {
            pole a "%s a"
            pole b "%s b"
          }
          mode thin "Thin" on bip through back {
            setting power 1 W to 40 W step 1 W
            load 100 ohm
            activate by c0
          }
          action select "Press {mode}."
          action adjust "Turn to {setting}."
        }
        analyzer meter "%s" {
          jack high "%s h"
          jack low  "%s l"
          jack ref  "%s r"
        %s  settle 3 s
          load from high to low {
            values 100 ohm
            power 400 W continuous
          }
          measure current {
            range 1 mA to 2 A
            resolution 1 mA
          }
          action set-load "Set {load}."
          action start "Start."
          action read "Read."
          action stop "Stop."
        }
        leads set "Set" {
          lead one "%s one", rated 5 kV, colour red
          lead two "%s two", rated 5 kV, colour white
          link bar "%s bar", rated 5 kV, colour green
          link jumper "%s jumper", rated 5 kV
        %s}
        procedure p "P" {
          revision "A" on 2026-01-31
          device gen
          analyzer meter
          leads set
          caution burn "Burns."
          setup s "S" {
            connect one from outlet.left to analyzer.high
            connect two from device.back.a to analyzer.low
            link bar from device.back.a to device.back.b
            link jumper from analyzer.low to analyzer.ref
        %s  }
          test t "T" {
            outlet bip
            setup s
            accept current from 100 mA to 900 mA
            table {
              mode | setting/W | load/ohm
              thin | 20 | 100
            }
          }
        }
        """
            .formatted(
                words(random, 4),
                words(random, 2),
                words(random, 3),
                words(random, 3),
                device,
                words(random, 2),
                words(random, 3),
                words(random, 3),
                words(random, 4),
                words(random, 2),
                words(random, 2),
                words(random, 2),
                analyzer,
                words(random, 4),
                words(random, 4),
                words(random, 4),
                words(random, 4),
                leads,
                wires);
    Snippet snippet = Snippet.compile(text);
    return snippet.plans().get(0);
  }
}
