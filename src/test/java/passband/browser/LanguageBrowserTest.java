package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.WebElement;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.Sheets;

/** A sheet in German in a real browser: its words, and its decimal comma. */
class LanguageBrowserTest {
  private static final String FIRST = "leistung/bipolar/sanft/5W/120ohm/current";

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
  void forget() {
    browser.forget();
    browser.driver().get("about:blank");
  }

  private WebElement first(String serial) throws IOException {
    Plan plan =
        Sheets.demo().stream()
            .filter(p -> p.name().text().equals("quecke-2-ausgang"))
            .findFirst()
            .orElseThrow();
    Path page = folder.resolve("quecke.html");
    Files.writeString(page, Checklist.of(plan));
    browser.open(page, serial);
    return browser.find(".entry[data-item='" + FIRST + "']");
  }

  private static String said(WebElement entry) {
    return (String)
        browser.run("return arguments[0].closest('tr').querySelector('.said').textContent", entry);
  }

  /** A reading in mA; null where there is none. */
  private static Item.Reading current(Plan plan) {
    return Evidence.of(plan).list().items().stream()
        .filter(i -> i instanceof Item.Reading r && r.scale().unit().equals("mA"))
        .map(Item.Reading.class::cast)
        .findFirst()
        .orElse(null);
  }

  /** Each file by its language and what separates its cells, and numbers in every notation. */
  @ParameterizedTest
  @CsvSource({"en", "de"})
  void aNumberInAFileIsOneOrNoneAsForTheJudge(String language) throws Exception {
    Plan plan =
        Sheets.demo().stream()
            .filter(p -> p.language().code().equals(language) && current(p) != null)
            .findFirst()
            .orElseThrow();
    ItemList list = Evidence.of(plan).list();
    Item.Reading item = current(plan);
    Path page = folder.resolve(language + ".html");
    Files.writeString(page, Checklist.of(plan));
    browser.open(page, "S-1");
    List<String> texts =
        List.of(
            "200.0",
            "200,0",
            "1.234",
            "1,234",
            "0,123",
            "0.123",
            "200,000",
            "200.000",
            "1.234,5",
            "12,34",
            "-1,234",
            "\u22121,5",
            "1,234 ?",
            "1.234 ?",
            "1,2 ?",
            "\u2212200,00");
    for (String separator : List.of(",", ";", "\t")) {
      for (String text : texts) {
        String digest = list.source().digest();
        String cells =
            String.join(separator, "point", "reading", "unit", "digest")
                + "\n"
                + String.join(separator, "sheet/generator-serial", "S-1", "", digest)
                + "\n"
                + String.join(separator, item.id(), '"' + text + '"', "mA", digest)
                + "\n";
        Judgement judge =
            Judge.judge(list, Readings.parse(cells.getBytes(StandardCharsets.UTF_8)), null)
                .judgements()
                .stream()
                .filter(one -> one.item().id().equals(item.id()))
                .findFirst()
                .orElseThrow();
        Object said =
            browser.run(
                """
                const { entries } = Files.read(new TextEncoder().encode(arguments[0]), null);
                Fields.fill(entries);
                Shown.refresh();
                return Shown.of(arguments[1]).verdict;
                """,
                cells,
                item.id());
        assertEquals(judge.verdict().word(), said, text + " between '" + separator + "'");
      }
    }
  }

  /** 173.6 to 229.2 mA, with one decimal. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "200,0; bestanden",
        "200.0; bestanden",
        "0,2000 A; bestanden",
        "100,0; NICHT BESTANDEN: unter 173,6",
        "200; unklar: mit zu wenigen Nachkommastellen: 1 nötig in mA",
        "0.200 A; unklar: ein Dezimalkomma schreiben: „0.200“ ist nicht eindeutig",
        "200.000; unklar: ein Dezimalkomma schreiben: „200.000“ ist nicht eindeutig",
        "1.200,0; unklar: ein Dezimalkomma schreiben: „1.200,0“ ist nicht eindeutig",
        "abc; unklar: „abc“ ist keine Zahl"
      })
  void aReadingIsJudgedWithItsComma(String typed, String verdict) throws IOException {
    WebElement entry = first("Q-1");
    entry.sendKeys(typed);
    assertEquals(verdict, said(entry));
  }

  /** What is saved has decimal points; what nobody can tell is saved as no number. */
  @Test
  void whatIsSavedCannotBeMisread() throws IOException, InterruptedException {
    WebElement entry = first("Q-2");
    entry.sendKeys("201,5");
    browser
        .find(".entry[data-item='leistung/bipolar/sanft/45W/120ohm/current']")
        .sendKeys("600.000");
    browser.find("#save").click();
    Path saved = Browser.awaited(saved());
    List<String> lines = Files.readAllLines(saved);
    assertTrue(lines.stream().anyMatch(l -> l.startsWith(FIRST + ",201.5,mA")), lines.toString());
    assertTrue(lines.stream().anyMatch(l -> l.contains(",600.000 ?,mA")), lines.toString());
    assertEquals(List.of(), browser.complaints());
  }

  private static Path saved() throws IOException, InterruptedException {
    for (int i = 0; i < 100; i++) {
      try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*Q-2*.csv")) {
        for (Path file : files) {
          return file;
        }
      }
      Thread.sleep(100);
    }
    throw new AssertionError("nothing is saved");
  }
}
