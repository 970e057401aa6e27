package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.plan.Plan;
import passband.render.DetectReport;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Every entry of the catalogue: a procedure that catches it, and one that does not. */
class CatalogueTest {
  private static final Map<String, Plan> PLANS = new HashMap<>();

  static Plan plan(String name) {
    return PLANS.computeIfAbsent(name, CatalogueTest::compiled);
  }

  /** Of a procedure that lies beside the other examples, with something else in it. */
  static Plan changed(String name, String was, String now) {
    Map<String, String> files = new TreeMap<>();
    files.put("bench.pband", text("bench.pband"));
    files.put(name, text(name).replace(was, now));
    return Snippet.compile(files, name, null).plans().get(0);
  }

  static String text(String file) {
    try (InputStream in = CatalogueTest.class.getResourceAsStream("/detect/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Plan compiled(String name) {
    if (name.contains("/")) {
      return Snippet.compile(Repository.texts(Repository.PROCEDURES), name, null).plans().get(0);
    }
    Map<String, String> files = new TreeMap<>();
    for (String file : List.of("bench.pband", "keen.pband", "thin.pband", "worked.pband")) {
      files.put(file, text(file));
    }
    String thin = files.get("thin.pband");
    files.put(
        "split.pband",
        files
            .get("bench.pband")
            .replace(
                "pole plate \"plate socket\"", "pole plate \"half A\"\n    pole other \"half B\""));
    files.put(
        "halves.pband",
        thin.replace("bench.pband", "split.pband")
            .replace(
                "\n  leads ",
                "\n  allow pole-unwired because \"One half alone is wired.\"\n  leads "));
    files.put("poor.pband", files.get("bench.pband").replace("0.4 % of", "1.5 % of"));
    files.put("worn.pband", files.get("keen.pband").replace("bench.pband", "poor.pband"));
    files.put(
        "sharp.pband",
        files
            .get("bench.pband")
            .replace("0.4 % of", "0.1 % of")
            .replace("resolution 0.1 mA", "resolution 1 mA"));
    files.put("fine.pband", files.get("keen.pband").replace("bench.pband", "sharp.pband"));
    files.put(
        "top-first.pband",
        files.get("keen.pband").replace("10, 60, 70, 80, 100", "100, 80, 70, 60, 10"));
    files.put(
        "worked-guarded.pband",
        files.get("worked.pband").replace("\n  leads ", "\n  decision guarded\n  leads "));
    files.put("upper.pband", thin.replace("within 5 W of setting", "at most 15 W"));
    files.put(
        "top.pband",
        thin.replace("within 5 W of", "within 50 W of").replace("soft | 10 ", "soft | 100"));
    files.put("open.pband", thin.replace("within 5 W of", "within 1500 W of"));
    files.put(
        "loose.pband",
        thin.replace("within 5 W of", "within 20 W of")
            .replace(
                "soft | 10        | 200",
                "hard | 40 | 200\n      soft | 50 | 250\n      soft | 60 | 250"));
    files.put(
        "shown.pband",
        files
            .get("bench.pband")
            .replace(
                "  action select",
                "  measure power {\n    range 1 W to 200 W\n    resolution 1 W\n    error 3 % of reading\n  }\n  action select"));
    files.put("unread.pband", thin.replace("bench.pband", "shown.pband"));
    files.put(
        "peak.pband",
        thin.replace("power within 5 W of setting, read as current", "peak-voltage from device"));
    return Snippet.compile(files, name + ".pband", null).plans().get(0);
  }

  private static final String SEDGE = "sedge-170/sedge-170-full.pband";
  private static final String TUSSOCK = "tussock-4/tussock-4-output.pband";

  private static Set<Outcome> outcomes(String name, String fault) {
    SheetLines lines = SheetLines.of(plan(name));
    Kernel kernel = new Kernel();
    Set<Outcome> outcomes = new TreeSet<>();
    for (Instance one : Instances.of(lines)) {
      if (one.fault().id().equals(fault)) {
        outcomes.add(one.outcome(one.failing(kernel)));
      }
    }
    return outcomes;
  }

  /**
   * Of the second procedure no instance is caught, though the fault may be there; P04 and B08
   * nothing ever catches, P05 everything.
   */
  @ParameterizedTest
  @CsvSource({
    "G01, keen, upper",
    "G02, keen, upper",
    "G03, keen, upper",
    "G04, keen, thin",
    "G05, keen, tussock",
    "G06, keen, upper",
    "G07, keen, upper",
    "G08, keen, thin",
    "G09, keen, thin",
    "G10, keen, thin",
    "G11, keen, thin",
    "G12, keen, top",
    "G13, keen, tussock",
    "G14, keen, thin",
    "G15, keen, upper",
    "G16, keen, upper",
    "G17, keen, upper",
    "G18, keen, thin",
    "G19, keen, thin",
    "G20, keen, thin",
    "G21, sedge, thin",
    "G22, sedge, thin",
    "G23, sedge, halves",
    "G24, sedge, halves",
    "G25, sedge, thin",
    "G26, sedge, thin",
    "G27, sedge, thin",
    "G28, keen, thin",
    "G29, keen, thin",
    "G30, sedge, unread",
    "B01, keen, thin",
    "B02, keen, thin",
    "B03, keen, loose",
    "B04, keen, loose",
    "B05, top-first, loose",
    "B06, keen, upper",
    "B07, keen, upper",
    "B09, worn, thin",
    "B10, keen, thin",
    "B11, sedge, tussock",
    "P01, fine, thin",
    "P02, keen, open",
    "P03, keen, loose"
  })
  void caughtHereAndNotThere(String fault, String by, String notBy) {
    Map<String, String> names = Map.of("sedge", SEDGE, "tussock", TUSSOCK);
    assertTrue(
        outcomes(names.getOrDefault(by, by), fault).contains(Outcome.CAUGHT),
        () -> by + " " + outcomes(names.getOrDefault(by, by), fault));
    assertFalse(
        outcomes(names.getOrDefault(notBy, notBy), fault).contains(Outcome.CAUGHT),
        () -> notBy + " " + outcomes(names.getOrDefault(notBy, notBy), fault));
    assertNotEquals(
        Set.of(Outcome.NOT_APPLICABLE), outcomes(names.getOrDefault(notBy, notBy), fault), notBy);
  }

  /**
   * Nobody can tell a nominal value from a reading, nor an instrument within its error from one.
   */
  @ParameterizedTest
  @CsvSource({"P04, MISSED", "B08, INSIDE"})
  void nothingCatches(String fault, Outcome outcome) {
    for (String name : List.of("keen", "thin", SEDGE, TUSSOCK)) {
      assertEquals(Set.of(outcome), outcomes(name, fault), name);
    }
  }

  /** What the description of the generator rules out is no fault that goes unnoticed. */
  @ParameterizedTest
  @CsvSource({
    "campion-2/campion-2-energy.pband, G13 G14 G16 G17 G18 G21 G23 G24 G26 G27 G28 G30",
    "quecke-2/quecke-2-ausgang.pband, G17 G18 G23 G24 G30",
    "thin, G23 G24 G30",
    "halves, G30"
  })
  void whatTheGeneratorCannotHaveDoesNotApply(String name, String faults) {
    Set<String> none = new TreeSet<>();
    for (Fault fault : Fault.all()) {
      boolean generator = fault.who().equals("generator");
      if (generator && outcomes(name, fault.id()).equals(Set.of(Outcome.NOT_APPLICABLE))) {
        none.add(fault.id());
      }
    }
    assertEquals(Set.of(faults.split(" ")), none);
  }

  /** What does not apply says why, and nothing else is excused. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "campion-2/campion-2-energy.pband",
        "fescue-3/fescue-3-service.pband",
        "quecke-2/quecke-2-ausgang.pband",
        SEDGE,
        TUSSOCK,
        "thin",
        "halves",
        "unread",
        "peak"
      })
  void whatDoesNotApplySaysWhy(String name) {
    Detection detection = Detection.asItIs(plan(name));
    String report = DetectReport.text(detection);
    for (Detection.Finding worst : detection.worst().values()) {
      boolean none = worst.outcome() == Outcome.NOT_APPLICABLE;
      String said = ": " + worst.fault().unless();
      assertTrue(!none || !worst.fault().unless().equals("-"), worst.fault().id());
      assertTrue(!none || report.contains(said), worst.fault().id());
    }
  }

  /** Advice to read what no instrument here reads, or into a load that is not there, says so. */
  @ParameterizedTest
  @CsvSource({
    "campion-2/campion-2-energy.pband, G05 G08 G09 G18 G19 G21 G22 G26 G27",
    "quecke-2/quecke-2-ausgang.pband, G13 G20 G22 G26 G27",
    "sedge-170/sedge-170-full.pband, ''"
  })
  void adviceSaysWhatTheBenchLacks(String name, String faults) {
    Plan plan = plan(name);
    Set<String> lacking = new TreeSet<>();
    for (Fault fault : Fault.all()) {
      if (!new Lacking(plan).of(fault).isEmpty()) {
        lacking.add(fault.id());
      }
    }
    assertEquals(faults, String.join(" ", lacking));
  }

  /**
   * Where tests are rows of a table, the advice says where its lines go: it names such a test, or
   * the cell; without such a table it says nothing of it.
   */
  @Test
  void adviceSaysWhereItGoesInATableOfTests() {
    Plan sedge = plan(SEDGE);
    Plan tussock = plan(TUSSOCK);
    int told = 0;
    for (Fault fault : Fault.all()) {
      String said = new TableTests(sedge).of(fault);
      assertEquals("", new TableTests(tussock).of(fault), fault.id());
      told += said.isEmpty() ? 0 : 1;
      boolean tick = fault.advice().contains("a tick");
      assertTrue(!tick || said.contains("mono-rated") || said.contains("earth-bond"), fault.id());
    }
    assertEquals(13, told);
  }

  /** A row that is left out is never a pass. */
  @ParameterizedTest
  @ValueSource(strings = {"keen", "thin", "loose", SEDGE, TUSSOCK})
  void everythingCatchesWhatIsLeftOut(String name) {
    assertEquals(Set.of(Outcome.CAUGHT), outcomes(name, "P05"));
  }

  /** Every entry has an effect, a source and a test of its own here. */
  @Test
  void theCatalogueIsWhole() {
    Set<String> ids = new LinkedHashSet<>();
    for (Fault fault : Fault.all()) {
      assertTrue(ids.add(fault.id()), fault.id());
      assertNotEquals("", fault.source(), fault.id());
      assertFalse(fault.sizes().isEmpty(), fault.id());
    }
    assertEquals(46, ids.size());
  }

  /**
   * Draws and quadrature agree on every instance of the demo: within four standard errors where it
   * is open, exactly where it is sure.
   */
  @ParameterizedTest
  @ValueSource(strings = {TUSSOCK, SEDGE, "keen", "thin", "worked", "worked-guarded"})
  void drawsAgreeOnEveryFault(String name) {
    Kernel kernel = new Kernel();
    int open = 0;
    for (Instance one : Instances.of(SheetLines.of(plan(name)))) {
      if (one.chance() != Instance.JOINTLY || one.changes().isEmpty()) {
        continue;
      }
      Chance power = one.failing(kernel);
      boolean sure = power.proof() == Chance.Proof.CERTAIN;
      int visits = sure ? 500 : 40_000;
      Visit visit = one.visit();
      double drawn = Simulation.failing(visit.readings(), visit.reckonings(), visits, 7);
      double error = Math.sqrt(power.value() * power.passing() / visits);
      assertEquals(
          power.value(), drawn, sure ? 0 : 4.5 * error + 2e-5, one.fault().id() + one.where());
      open += sure ? 0 : 1;
    }
    assertTrue(
        open > (name.equals("thin") ? -1 : name.startsWith("worked") ? 2 : 4), open + " open");
  }
}
