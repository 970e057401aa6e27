package passband.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.Gson;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.judge.Report;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.Records;
import passband.testing.Sheets;

/** The page does in Firefox, from a file, what it does in Chromium. */
class FirefoxTest {
  private static final Plan PLAN = Sheets.TEASEL;
  private static final String FIRST = "bipolar-output/bipolar/thin/5W/125ohm/current";
  private static final String NEXT = "bipolar-output/bipolar/thin/20W/125ohm/current";
  private static final String ENTER = "\ue007";
  private static final String TAB = "\ue004";

  @TempDir static Path folder;
  private static Firefox firefox;
  private static Path page;

  @BeforeAll
  static void open() throws Exception {
    page = folder.resolve("page.html");
    Files.writeString(page, Checklist.of(PLAN));
    firefox = new Firefox(folder);
  }

  @AfterAll
  static void close() throws Exception {
    firefox.close();
  }

  private static void begin(String serial) throws Exception {
    firefox.open(page);
    firefox.text("document.getElementById('serial').focus()");
    firefox.type(serial + ENTER);
    assertEquals("Unit " + serial, firefox.text("document.getElementById('unit').textContent"));
  }

  private static String focused() throws Exception {
    return firefox.text(
        "(document.activeElement.dataset.item || document.activeElement.id || document.activeElement.className)");
  }

  private static void fill(Map<String, String> written) throws Exception {
    firefox.text(
        "(Fields.fill(new Map(Object.entries(%s).map(([id, text]) => [id, [text, '', false]]))), "
                .formatted(new Gson().toJson(written))
            + "document.querySelector('main input').dispatchEvent(new Event('input', { bubbles: true })))");
  }

  @Test
  void theKeyboardGoesToWhatIsOpen() throws Exception {
    begin("K-1");
    firefox.text("Fields.first('%s').focus()".formatted(FIRST));
    firefox.type("200.0" + ENTER);
    assertEquals("sheet/lead-red", focused());
    firefox.text("Fields.first('%s').focus()".formatted(FIRST));
    assertEquals(
        "pass",
        firefox.text(
            "Fields.first('%s').closest('[data-verdict]').dataset.verdict".formatted(FIRST)));
    // Without a window no element is told that it has the focus: the event stands in for that.
    firefox.type(TAB + TAB);
    assertEquals(NEXT, focused());
    firefox.text(
        "Fields.first('%s').dispatchEvent(new FocusEvent('focusin', { bubbles: true }))"
            .formatted(NEXT));
    assertEquals("sheet/lead-red", focused());
  }

  @Test
  void unitsStayApartAndAreThereAfterAReload() throws Exception {
    begin("A-1");
    firefox.text("Fields.first('%s').focus()".formatted(FIRST));
    firefox.type("200.0");
    begin("B-2");
    assertEquals("", firefox.text("Fields.first('%s').value".formatted(FIRST)));
    firefox.open(page);
    firefox.text(
        "[...document.querySelectorAll('.go-on')].find((one) => one.textContent.endsWith('A-1')).click()");
    assertEquals("200.0", firefox.text("Fields.first('%s').value".formatted(FIRST)));
    String before = firefox.newTab();
    firefox.open(page);
    firefox.text(
        "[...document.querySelectorAll('.go-on')].find((one) => one.textContent.endsWith('A-1')).click()");
    firefox.await(
        "document.getElementById('hint').textContent.startsWith('A-1 was open in another tab')",
        "true");
    firefox.use(before);
    assertEquals("true", firefox.text("document.querySelector('main').inert"));
  }

  @Test
  void oneLineAtATimeIsShown() throws Exception {
    begin("L-1");
    firefox.text("document.getElementById('view').click()");
    firefox.text("OneLine.reveal(Fields.first('%s'))".formatted(FIRST));
    assertEquals(
        "1",
        firefox.text(
            "[...document.querySelectorAll('input.entry')].filter((one) => one.checkVisibility()).length"));
    assertEquals("true", firefox.text("document.querySelector('#panel svg').checkVisibility()"));
    firefox.text("document.getElementById('view').click()");
    assertEquals(
        "33",
        firefox.text(
            "[...document.querySelectorAll('input.entry')].filter((one) => one.checkVisibility()).length"));
  }

  @Test
  void whatIsSavedIsJudgedTheSame() throws Exception {
    begin("S-1");
    ItemList list = Evidence.of(PLAN).list();
    Map<String, String> written = new HashMap<>();
    Records.of(list, false).readings().rows().forEach(r -> written.put(r.point(), r.reading()));
    written.put("sheet/generator-serial", "S-1");
    written.put("sheet/date", LocalDate.now().toString());
    written.put(FIRST, "1.0");
    fill(written);
    firefox.text("document.getElementById('save').click()");
    Path csv =
        Browser.awaited(folder.resolve(PLAN.name().text() + "_S-1_" + LocalDate.now() + ".csv"));
    Report report = Judge.judge(list, Readings.parse(Files.readAllBytes(csv)), null);
    assertEquals(report.overall().word(), firefox.text("document.body.dataset.overall"));
    for (Judgement judgement : report.judgements()) {
      assertEquals(
          judgement.verdict().word(),
          firefox.text("Shown.of('%s').verdict".formatted(judgement.item().id())));
    }
  }
}
