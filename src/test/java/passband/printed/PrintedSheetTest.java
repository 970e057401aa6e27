package passband.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Sheets;

/**
 * The printed sheets of the demo library, read back from their pages and worked on a second model
 * of the bench: at every box the wiring, the mode, the setting, the load and the output are the
 * line's.
 */
class PrintedSheetTest {
  private static final int MUTATIONS = 30;

  @ParameterizedTest
  @CsvSource({
    "tussock-4-output, 29",
    "fescue-3-service, 29",
    "campion-2-energy, 11",
    "sedge-170-full, 108"
  })
  void everyBoxIsReachedAsItsLineSays(String procedure, int lines) throws IOException {
    SecondBench.Result result = worked(procedure);
    assertEquals(List.of(), result.objections());
    assertEquals(lines, result.lines());
  }

  /** Whichever adjustments are left out, each lead is where the next step takes it from. */
  @ParameterizedTest
  @ValueSource(
      strings = {"tussock-4-output", "fescue-3-service", "campion-2-energy", "sedge-170-full"})
  void everyBranchIsWorkedToItsEnd(String procedure) throws IOException {
    SheetWords words = SheetWords.read(words(procedure));
    assertEquals(List.of(), Branches.objections(PrintedSheet.marks(pdf(procedure)), words));
  }

  /**
   * A sheet with one thing wrong in its steps or its wiring is never worked without an objection.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {"tussock-4-output", "fescue-3-service", "campion-2-energy", "sedge-170-full"})
  void aWrongStepIsFound(String procedure) {
    Plan plan = plan(procedure);
    SheetWords words = SheetWords.read(words(procedure));
    List<PlanMutations.Mutation> all = PlanMutations.of(plan);
    Collections.shuffle(all, new Random(20261127));
    List<PrintedSheet.Mark> right = printed(plan);
    List<String> missed = new ArrayList<>();
    int found = 0;
    for (PlanMutations.Mutation one : all) {
      List<PrintedSheet.Mark> marks = printed(one.plan().get());
      // A value that the page gives by its line is right on the page, whatever the step holds.
      if (!marks.equals(right)) {
        boolean silent = Branches.objections(marks, words).isEmpty();
        missed.addAll(silent ? List.of(one.what()) : List.of());
        found++;
      }
      if (found == MUTATIONS) {
        break;
      }
    }
    assertEquals(List.of(), missed);
    assertEquals(MUTATIONS, found);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"tussock-4-output", "fescue-3-service", "campion-2-energy", "sedge-170-full"})
  void leadsThatNobodyTakesOffAreFound(String procedure) {
    SheetWords words = SheetWords.read(words(procedure));
    List<String> missed = new ArrayList<>();
    for (PlanMutations.Mutation one : PlanMutations.ofLeads(plan(procedure))) {
      boolean silent = Branches.objections(printed(one.plan().get()), words).isEmpty();
      missed.addAll(silent ? List.of(one.what()) : List.of());
    }
    assertEquals(List.of(), missed);
  }

  private static Plan plan(String procedure) {
    return Sheets.demo().stream().filter(p -> p.name().text().equals(procedure)).findFirst().get();
  }

  private static List<PrintedSheet.Mark> printed(Plan plan) {
    return PrintedSheet.marks(ChecklistPdf.of(plan, Paper.A4));
  }

  private static SecondBench.Result worked(String procedure) throws IOException {
    return SecondBench.work(PrintedSheet.marks(pdf(procedure)), SheetWords.read(words(procedure)));
  }

  private static byte[] pdf(String procedure) throws IOException {
    return Files.readAllBytes(Repository.ROOT.resolve("out/" + procedure + "/checklist.pdf"));
  }

  private static Path words(String procedure) {
    return Repository.ROOT.resolve("src/test/resources/printed/" + procedure + ".tsv");
  }
}
