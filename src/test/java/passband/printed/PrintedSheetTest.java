package passband.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.testing.Repository;

/**
 * The printed sheets of the demo library, read back from their pages and worked on a second model
 * of the bench: at every box the wiring, the mode, the setting, the load and the output are the
 * line's.
 */
class PrintedSheetTest {
  @ParameterizedTest
  @CsvSource({"tussock-4-output, 27", "fescue-3-service, 29", "campion-2-energy, 7"})
  void everyBoxIsReachedAsItsLineSays(String procedure, int lines) throws IOException {
    SecondBench.Result result = worked(procedure);
    assertEquals(List.of(), result.objections());
    assertEquals(lines, result.lines());
  }

  private static SecondBench.Result worked(String procedure) throws IOException {
    Path words = Repository.ROOT.resolve("src/test/resources/printed/" + procedure + ".tsv");
    Path pdf = Repository.ROOT.resolve("out/" + procedure + "/checklist.pdf");
    return SecondBench.work(PrintedSheet.marks(Files.readAllBytes(pdf)), SheetWords.read(words));
  }
}
