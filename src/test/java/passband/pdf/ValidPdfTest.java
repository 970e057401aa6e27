package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import passband.plan.Plan;
import passband.testing.Sheets;

/** Every PDF that is made, on either paper, is whole to qpdf and tagged to veraPDF. */
class ValidPdfTest {
  @TempDir Path folder;

  static Stream<Arguments> pdfs() {
    List<Arguments> pdfs = new ArrayList<>();
    for (Plan plan : Sheets.demo()) {
      for (Paper paper : Paper.values()) {
        BiFunction<Plan, Paper, byte[]> sheet = ChecklistPdf::of;
        BiFunction<Plan, Paper, byte[]> review = ReviewPdf::of;
        pdfs.add(Arguments.of("sheet of " + plan.name().text(), paper, plan, sheet));
        pdfs.add(Arguments.of("review of " + plan.name().text(), paper, plan, review));
      }
    }
    return pdfs.stream();
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("pdfs")
  void isWholeAndTagged(String name, Paper paper, Plan plan, BiFunction<Plan, Paper, byte[]> maker)
      throws Exception {
    byte[] pdf = maker.apply(plan, paper);
    assertEquals("", complaints(pdf), name);
    PdfUa.assertTagged(pdf);
  }

  /** With a number of objects that has a digit fewer without the table itself. */
  @Test
  void theTableCountsItsEntries() {
    String file = "x\n/Type /XRef\n/Size 1001\n/Index [0 1000]\n/W [1]";
    String counted = "x\n/Type /XRef\n/Size 1000\n/Index [0 1000]\n/W [1]";
    assertEquals(counted, counted(file));
    assertEquals(
        "/Type /XRef\n/Size 999 \n/Index [0 999]",
        counted("/Type /XRef\n/Size 1000\n/Index [0 999]"));
    assertEquals("trailer /Size 5", counted("trailer /Size 5"));
  }

  private static String counted(String file) {
    byte[] counted = CrossReference.counted(file.getBytes(StandardCharsets.ISO_8859_1));
    return new String(counted, StandardCharsets.ISO_8859_1);
  }

  /** What {@code qpdf --check} warns of; {@code .ci/run} installs it. */
  private String complaints(byte[] pdf) throws IOException, InterruptedException {
    assertTrue(Files.exists(Path.of("/usr/bin/qpdf")), "this test needs qpdf");
    Path file = Files.write(folder.resolve("made.pdf"), pdf);
    Process qpdf =
        new ProcessBuilder("qpdf", "--check", file.toString()).redirectErrorStream(true).start();
    String said = new String(qpdf.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return qpdf.waitFor() == 0 && !said.contains("WARNING") ? "" : said;
  }
}
