package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.testing.Repository;

/** What is built says whether it was released: every page, the screen, the limits, the verdicts. */
class NotReleasedTest {
  private static final String TEASEL = "procedures/teasel/teasel-output.pband";
  private static final Map<String, String> WORDS =
      Map.of("en", "NOT RELEASED", "de", "NICHT FREIGEGEBEN", "fr", "NON APPROUV\u00c9E");

  @TempDir Path work;

  private String text(String file) throws IOException {
    return Files.readString(work.resolve("out/teasel-output").resolve(file));
  }

  /** How many pages of a sheet on paper say it, and how many there are. */
  private int[] pages(String file, String words) throws IOException {
    byte[] bytes = Files.readAllBytes(work.resolve("out/teasel-output").resolve(file));
    try (PDDocument document = Loader.loadPDF(bytes)) {
      int saying = 0;
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        saying += stripper.getText(document).contains(words) ? 1 : 0;
      }
      return new int[] {saying, document.getNumberOfPages()};
    }
  }

  private void assertPages(boolean said, String file, String words) throws IOException {
    int[] pages = pages(file, words);
    assertTrue(pages[1] > 0);
    assertEquals(said ? pages[1] : 0, pages[0], file + " " + words);
  }

  private void assertSaid(boolean said, String words) throws IOException {
    assertPages(said, "checklist.pdf", words);
    assertPages(said, "review.pdf", words);
    boolean screen = text("checklist.html").contains("body:before{content:");
    assertEquals(said, screen && text("checklist.html").contains("<strong>" + words.toLowerCase()));
    assertEquals(said, text("limits.json").contains("\"released\": false,"));
    assertEquals(said, text("limits.csv").contains(",not released"));
  }

  @Test
  void itIsSaidInEveryLanguageUntilItIsReleased() throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    Files.deleteIfExists(work.resolve("procedures/teasel/released.txt"));
    GitFolder folder = new GitFolder(work);
    String source = Files.readString(work.resolve(TEASEL));
    for (Map.Entry<String, String> language : WORDS.entrySet()) {
      folder.write(
          TEASEL,
          source.replaceFirst("\n  device", "\n  language " + language.getKey() + "\n  device"));
      assertEquals(0, folder.run("build", TEASEL), folder.said());
      assertSaid(true, language.getValue());
    }
    folder.write("readings.csv", "point,reading,unit\n");
    assertEquals(1, folder.run("judge", "out/teasel-output/limits.json", "readings.csv"));
    assertTrue(folder.out().contains("procedure that was not released"), folder.said());
    folder.write(TEASEL, source);
    assertEquals(
        0, folder.run("release", TEASEL, "--by", "A. Ward", "--on", "2026-11-02"), folder.said());
    assertEquals(0, folder.run("build", TEASEL), folder.said());
    assertSaid(false, "NOT RELEASED");
    assertEquals(1, folder.run("judge", "out/teasel-output/limits.json", "readings.csv"));
    assertTrue(!folder.out().contains("not released"), folder.said());
  }
}
