package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.testing.Repository;

/**
 * Files without a procedure compared, what was renamed, and a procedure with another instrument.
 */
class ProfileDiffTest {
  private static final String TEASEL = "teasel/teasel-output.pband";

  @TempDir Path work;
  private String out;

  @BeforeEach
  void copyLibrary() {
    Repository.copy(Repository.LIBRARY, work.resolve("was"));
    Repository.copy(Repository.LIBRARY, work.resolve("now"));
  }

  private int run(String... words) {
    GitFolder folder = new GitFolder(work);
    int status = folder.run(words);
    out = folder.said();
    return status;
  }

  private void edit(String path, String from, String to) throws IOException {
    new GitFolder(work).edit("now/" + path, from, to);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "teasel/teasel.pband | peak-voltage at most 240 V | peak-voltage at most 340 V | device teasel | limits loosened: mode thin",
        "teasel/teasel.pband | 'duty     5 s on' | 'duty     9 s on' | device teasel | duty or times changed: mode tack, duty",
        "teasel/teasel.pband | coag-switch \"blue | coag-switch \"red | device teasel | profile changed",
        "analyzers/shale.pband | settle 3 s | settle 2 s | analyzer shale | duty or times changed",
        "analyzers/shale.pband | '3 % of reading + 20 V' | '2 % of reading + 20 V' | analyzer shale | analyzer changed: measured peak-voltage",
        "leads.pband | 'key cable\",      rated 600 V' | 'key cable\",      rated 6 kV' | leads bench-leads | lead changed: lead key",
        "rules.pband | within 20 % of setting | within 25 % of setting | rule rated-power | limits loosened: accept power",
        "rules.pband | or 4 W | or 3 W | rule rated-power | limits tightened: accept power",
        "rules.pband | whichever is greater | whichever is smaller | rule rated-power | limits tightened: accept power"
      })
  void aProfileIsComparedByItself(String file, String from, String to, String title, String change)
      throws IOException {
    assertEquals(0, run("diff", "was/" + file, "now/" + file), out);
    edit(file, from, to);
    assertEquals(1, run("diff", "was/" + file, "now/" + file), out);
    assertTrue(out.startsWith(title + ": "), out);
    assertTrue(out.contains("1. " + change), out);
    assertTrue(out.contains("now/" + file + ":"), out);
    assertEquals(1, run("diff", "was/" + file, "now/" + file, "--as", "json"), out);
    assertTrue(
        JsonParser.parseString(out).getAsJsonObject().getAsJsonArray("compared").size() == 1, out);
    assertEquals(1, run("diff", "was/" + file, "now/" + file, "--as", "html"), out);
    assertTrue(out.contains(title), out);
  }

  /** A profile that a procedure uses is told by that procedure alone. */
  @Test
  void whatAProcedureUsesIsToldOnce() throws IOException {
    edit("teasel/teasel.pband", "peak-voltage at most 240 V", "peak-voltage at most 340 V");
    assertEquals(1, run("diff", "was", "now"), out);
    assertTrue(out.contains("teasel-output: revision B"), out);
    assertFalse(out.contains("device teasel"), out);
    edit(
        "leads.pband",
        "leads low-voltage-leads",
        "leads spare-leads \"Spare\" {\n  lead one, rated 1 kV\n}\n\nleads low-voltage-leads"
            .replace("one,", "one \"one\","));
    assertEquals(1, run("diff", "was", "now"), out);
    assertTrue(out.contains("leads spare-leads: new, "), out);
  }

  @Test
  void aRenamedProcedureIsCompared() throws IOException {
    edit(TEASEL, "procedure teasel-output", "procedure teasel-check");
    edit(TEASEL, "410 to 500", "400 to 500");
    for (String side : List.of("", "/" + TEASEL)) {
      assertEquals(1, run("diff", "was" + side, "now" + side), out);
      assertTrue(out.contains("teasel-check (was teasel-output): revision B"), out);
      assertTrue(out.contains("limits loosened: tack-output/bipolar/tack/1/40ohm/current"), out);
      assertTrue(out.contains("renamed: the procedure's name"), out);
      assertFalse(out.contains("removed, was"), out);
    }
  }

  /** A device by another name: its allows and all its parts stay what they are. */
  @Test
  void aRenamedDeviceIsCompared() throws IOException {
    edit("teasel/teasel.pband", "device teasel \"", "device weld \"");
    edit(TEASEL, "device   teasel", "device   weld");
    assertEquals(1, run("diff", "was/" + TEASEL, "now/" + TEASEL), out);
    assertTrue(out.contains("2. renamed: the generator"), out);
    assertFalse(out.contains("3. "), out);
    assertEquals(1, run("diff", "was/teasel/teasel.pband", "now/teasel/teasel.pband"), out);
    assertTrue(out.startsWith("device weld (was teasel): "), out);
    assertTrue(out.contains("1. renamed: the generator"), out);
  }

  /** Files of other names are the same source where most of their lines are. */
  @Test
  void filesOfOtherNamesAreOneSource() throws IOException {
    edit("rules.pband", "within 20 % of setting", "within 25 % of setting");
    Files.move(work.resolve("now/rules.pband"), work.resolve("now/new-rules.pband"));
    assertEquals(1, run("diff", "was/rules.pband", "now/new-rules.pband"), out);
    assertTrue(out.contains("by   now/new-rules.pband:4: accept power within 25 %"), out);
  }

  @Test
  void anotherInstrumentForTheSameProcedure() throws IOException {
    Path other = work.resolve("was/analyzers/shale-2.pband");
    String text = Files.readString(work.resolve("was/analyzers/shale.pband"));
    Files.writeString(
        other,
        text.replace("analyzer shale \"Shale", "analyzer shale-2 \"Shale II")
            .replace("3 % of reading + 20 V", "2 % of reading + 20 V"));
    Path procedure = work.resolve("was").resolve(TEASEL);
    Files.writeString(
        procedure,
        Files.readString(procedure)
            .replace("use \"../leads", "use \"../analyzers/shale-2.pband\"\nuse \"../leads"));
    for (String named : List.of("shale-2", "analyzer=shale-2")) {
      assertEquals(1, run("diff", "was/" + TEASEL, "--analyzer", named), out);
      assertTrue(out.contains("uncertainty less under the same limits (6)"), out);
      assertTrue(out.contains("analyzer changed"), out);
      assertFalse(out.contains("same revision"), out);
    }
    assertEquals(0, run("diff", "was/" + TEASEL, "--analyzer", "shale"), out);
    assertEquals(2, run("diff", "was/" + TEASEL), out);
    assertTrue(out.contains("diff needs OLD and NEW"), out);
  }
}
