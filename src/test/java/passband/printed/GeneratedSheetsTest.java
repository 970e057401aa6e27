package passband.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.testing.GeneratedProcedures;
import passband.testing.Repository;

/**
 * Generated procedures on both models of the bench: the compiler's own finds no fault in them, and
 * the second, which knows only the printed pages, comes to every box in the state of its line.
 */
class GeneratedSheetsTest {
  /** {@code -Dgenerated.sheets=1000} for more. */
  private static final int PROCEDURES = Integer.getInteger("generated.sheets", 300);

  private static final Pattern TEST =
      Pattern.compile(
          "(?ms)^test (t[0-9]+) \"(Test t[0-9]+)\" \\{\n(.*?)(?=^test |^adjust |^section )");

  @Test
  void everyReadingIsReachedInItsState() throws IOException {
    List<String> words =
        Files.readAllLines(Repository.ROOT.resolve("src/test/resources/printed/generated.tsv"));
    Map<Long, List<String>> wrong = new TreeMap<>();
    long lines =
        LongStream.range(0, PROCEDURES).parallel().map(seed -> worked(seed, words, wrong)).sum();
    assertEquals(Map.of(), wrong);
    assertTrue(lines > 3L * PROCEDURES, () -> lines + " lines");
  }

  private static long worked(long seed, List<String> words, Map<Long, List<String>> wrong) {
    List<String> all = new ArrayList<>(words);
    all.addAll(expected(GeneratedProcedures.text(seed)));
    byte[] pdf = ChecklistPdf.of(GeneratedProcedures.plan(seed), Paper.A4);
    List<PrintedSheet.Mark> marks = PrintedSheet.marks(pdf);
    List<String> objections = Branches.objections(marks, SheetWords.of(all));
    if (!objections.isEmpty()) {
      synchronized (wrong) {
        wrong.put(seed, objections);
      }
    }
    return SecondBench.work(marks, SheetWords.of(all)).lines();
  }

  /** How each test is to find the bench, by the words of the source. */
  private static List<String> expected(String source) {
    List<String> tests = new ArrayList<>();
    Matcher matcher = TEST.matcher(source + "section ");
    while (matcher.find()) {
      String body = matcher.group(3);
      String wiring = body.contains("setup mono") ? "Mono" : "Bipolar";
      String on = body.contains("output off") ? "off" : "on";
      String state = body.contains("inside device.service") ? "the service page" : "";
      tests.add("test\t" + matcher.group(2) + "\t" + wiring + "\t" + on + "\t" + state);
    }
    return tests;
  }
}
